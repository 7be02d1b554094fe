// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/bikes_window.h"

#include <QElapsedTimer>
#include <QInputDialog>
#include <QTemporaryDir>

#include "core/profile_file.h"
#include "tests/ui/support.h"
#include "ui/document/file_name.h"
#include "ui/document/preferences.h"

namespace layshaft::test {
namespace {

using ui::BikeFolder;
using ui::BikesModel;
using ui::BikesWindow;
using ui::FolderBike;
using ui::MainWindow;

class Bikes : public testing::Test, FreshSettings {
 protected:
  ~Bikes() override {
    for (MainWindow* other : MainWindow::all()) {
      if (window_ && other == &**window_) continue;
      delete other;
    }
  }

  QString write(const QString& name, const std::string& text) const {
    const QString path = folder_.filePath(name + ".bike.json");
    if (saveFile(ui::pathOf(path), text)) throw std::runtime_error("cannot write");
    return path;
  }
  static Profile of(const std::string& name, const std::string& customer = {}) {
    Profile profile = bike();
    profile.name = name;
    profile.customer = customer;
    return profile;
  }
  QString write(const QString& file, const Profile& profile) const {
    return write(file, writeProfile(profile));
  }

  /// The list on the folder, everything read.
  BikesWindow* openList() {
    ui::preferences::setBikesFolder(folder_.path());
    window_.emplace(sampleBike("club-600"));
    BikesWindow::open(**window_);
    auto* list = (*window_)->findChild<BikesWindow*>();
    if (!list || !QTest::qWaitForWindowActive(list)) throw std::runtime_error("the list does not open");
    table_ = &control<QTableView>(*list, "Bikes");
    if (!soon([&] { return !status(*list).contains("still being read"); }))
      throw std::runtime_error("not read");
    return list;
  }
  static QString status(const BikesWindow& list) { return control<QLabel>(list, "Message").text(); }
  QStringList column(int column) const {
    QStringList cells;
    for (int row = 0; row < table_->model()->rowCount(); ++row)
      cells << table_->model()->index(row, column).data().toString();
    return cells;
  }

  QTemporaryDir folder_;
  std::optional<Window> window_;
  QTableView* table_ = nullptr;
};

TEST_F(Bikes, AreListedWithCustomerAndPair) {
  Profile proposal = of("Two", "Customer B");
  proposal.proposed.rearTeeth = rear(45);
  write("a", of("One", "Customer A"));
  write("b", proposal);
  QFile(folder_.filePath("notes.txt")).open(QIODevice::WriteOnly);
  openList();
  table_->sortByColumn(BikesModel::Name, Qt::AscendingOrder);
  EXPECT_EQ(column(BikesModel::Name), (QStringList{"One", "Two"}));
  EXPECT_EQ(column(BikesModel::Customer), (QStringList{"Customer A", "Customer B"}));
  EXPECT_EQ(column(BikesModel::Pair), (QStringList{"16/43", "16/43 → 16/45"}));
  EXPECT_EQ(column(BikesModel::File), (QStringList{"a.bike.json", "b.bike.json"}));
}

TEST_F(Bikes, AFileThatIsBrokenIsListedWithWhatIsWrong) {
  write("good", of("Good"));
  write("bad", std::string("{\"format\": "));
  write("newer", with("/version", 99));
  std::filesystem::create_symlink("nowhere", ui::pathOf(folder_.filePath("gone.bike.json")));
  const BikesWindow* list = openList();
  const QString names = column(BikesModel::Name).join('\n');
  EXPECT_EQ(column(BikesModel::Name).filter("Cannot be read (").size(), 3) << names.toStdString();
  EXPECT_EQ(column(BikesModel::Name).filter("Good").size(), 1);
  EXPECT_TRUE(status(*list).contains("3 files cannot be read.")) << status(*list).toStdString();
  DialogAnswer answer;
  const auto bad =
      table_->model()->match(table_->model()->index(0, BikesModel::File), Qt::DisplayRole, "bad");
  table_->setCurrentIndex(bad.value(0));
  EXPECT_TRUE(status(*list).contains("bad.bike.json: ")) << "in full: " << status(*list).toStdString();
  QTest::keyClick(table_, Qt::Key_Return);
  EXPECT_TRUE(answer.seen()) << "opening it says why, too";
}

TEST_F(Bikes, AreFoundByAnyWordAndSortedByAnyColumn) {
  write("a", of("Red Twin", "Zimt"));
  write("b", of("Blue Single", "Anis"));
  write("c", of("Blue Twin", "Mohn"));
  BikesWindow* list = openList();
  auto& search = control<QLineEdit>(*list, "Search");
  EXPECT_EQ(QApplication::focusWidget(), &search);
  QTest::keyClicks(&search, "twin BLUE");
  EXPECT_EQ(column(BikesModel::Name), QStringList{"Blue Twin"});
  search.clear();
  table_->sortByColumn(BikesModel::Customer, Qt::AscendingOrder);
  EXPECT_EQ(column(BikesModel::Customer), (QStringList{"Anis", "Mohn", "Zimt"}));
  table_->sortByColumn(BikesModel::Name, Qt::DescendingOrder);
  EXPECT_EQ(column(BikesModel::Name).first(), "Red Twin");
}

TEST_F(Bikes, TheLastChangedComesFirst) {
  const QString old = write("old", of("Old")), fresh = write("fresh", of("Fresh"));
  using namespace std::chrono_literals;
  std::filesystem::last_write_time(ui::pathOf(old), std::filesystem::file_time_type::clock::now() - 48h);
  openList();
  EXPECT_EQ(column(BikesModel::Name), (QStringList{"Fresh", "Old"}));
}

TEST_F(Bikes, EnterOpensTheBikeUnderTheCursor) {
  write("a", of("One"));
  const QString two = write("b", of("Two"));
  BikesWindow* list = openList();
  auto& search = control<QLineEdit>(*list, "Search");
  QTest::keyClicks(&search, "two");
  QTest::keyClick(&search, Qt::Key_Return);
  EXPECT_EQ((*window_)->document().title(), "Two") << "in place of the sample that nobody touched";
  EXPECT_EQ((*window_)->document().file(), two);
}

TEST_F(Bikes, NewFromThisIsAnotherBikeWithoutHistory) {
  Profile pattern = of("Pattern", "Customer A");
  pattern.records.emplace();
  pattern.wear.emplace();
  pattern.wear->limitPercent = 1.2;
  pattern.wear->measurements.add({.date = Date::parse("2026-05-12").value()});
  write("a", pattern);
  BikesWindow* list = openList();
  DialogAnswer answer([](QDialog& dialog) {
    auto& input = dynamic_cast<QInputDialog&>(dialog);
    EXPECT_EQ(input.textValue(), "Pattern");
    input.setTextValue("Another");
    input.accept();
  });
  for (auto* button : list->findChildren<QPushButton*>())
    if (button->text().remove('&') == "New From This…") button->click();
  ASSERT_TRUE(answer.seen());
  MainWindow* made = nullptr;
  for (MainWindow* other : MainWindow::all())
    if (other != &**window_) made = other;
  ASSERT_TRUE(made);
  const Profile& profile = made->document().profile();
  EXPECT_EQ(profile.name, "Another");
  EXPECT_EQ(profile.customer, "");
  EXPECT_FALSE(profile.records);
  EXPECT_TRUE(profile.wear->measurements.empty());
  EXPECT_EQ(profile.wear->limitPercent, 1.2);
  EXPECT_TRUE(made->document().file().isEmpty());
  EXPECT_TRUE(made->document().isModified()) << "closing asks";
}

TEST_F(Bikes, FollowTheFolderAndKeepTheCursorOnItsFile) {
  write("a", of("One"));
  const QString two = write("b", of("Two"));
  openList();
  table_->sortByColumn(BikesModel::Name, Qt::AscendingOrder);
  table_->setCurrentIndex(table_->model()->index(1, 0));
  write("0", of("Five"));
  EXPECT_TRUE(soon([&] {
    return column(BikesModel::Name) == QStringList({"Five", "One", "Two"});
  })) << column(BikesModel::Name).join(", ").toStdString();
  EXPECT_EQ(table_->currentIndex().data(BikesModel::kFileRole).toString(), two);
  write("b", of("Six", "Somebody"));
  EXPECT_TRUE(soon([&] { return column(BikesModel::Customer).contains("Somebody"); }));
  QFile::remove(two);
  EXPECT_TRUE(soon([&] { return column(BikesModel::Name) == QStringList({"Five", "One"}); }));
}

TEST_F(Bikes, TheFolderIsRemembered) {
  write("a", of("One"));
  openList();
  EXPECT_EQ(ui::preferences::bikesFolder(), folder_.path());
}

TEST_F(Bikes, AFolderThatIsGoneSaysSo) {
  ui::preferences::setBikesFolder(folder_.filePath("nowhere"));
  window_.emplace(sampleBike("club-600"));
  BikesWindow::open(**window_);
  const auto* list = (*window_)->findChild<BikesWindow*>();
  EXPECT_TRUE(status(*list).contains("cannot be listed")) << status(*list).toStdString();
}

/// A workshop of many years.
TEST_F(Bikes, TwoThousandFilesBlockNothing) {
  const std::string text = writeProfile(sampleBike("club-600"));
  for (int i = 0; i < 2000; ++i) {
    QFile file(folder_.filePath(QString("%1.bike.json").arg(i)));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(text.c_str());
  }
  BikeFolder folder;
  QElapsedTimer clock;
  clock.start();
  folder.open(folder_.path());
  EXPECT_LT(clock.elapsed(), 500) << "listed";
  EXPECT_EQ(folder.bikes().size(), 2000u);
  qint64 longest = 0;
  QElapsedTimer since;
  since.start();
  EXPECT_TRUE(soon(
      [&] {
        longest = std::max(longest, since.restart());
        return !folder.reading();
      },
      60000));
  EXPECT_LT(longest, 200) << "keys are heard while it reads";
  for (const FolderBike& bike : folder.bikes()) ASSERT_EQ(bike.state, FolderBike::State::Read);
}

TEST_F(Bikes, WhatIsReadIsNotReadAgain) {
  write("a", of("One"));
  BikeFolder folder;
  folder.open(folder_.path());
  ASSERT_TRUE(soon([&] { return !folder.reading(); }));
  folder.refresh();
  EXPECT_FALSE(folder.reading());
  EXPECT_EQ(folder.bikes().front().state, FolderBike::State::Read);
}

}  // namespace
}  // namespace layshaft::test
