// SPDX-License-Identifier: GPL-3.0-or-later
//
// The numbers of every page as other programs read them: the same in every locale.
#include <QRegularExpression>
#include <QTabWidget>

#include "core/ladder_csv.h"
#include "core/report.h"
#include "tests/ui/support.h"
#include "ui/pages/ladder_page.h"
#include "ui/words/compare_table.h"
#include "ui/words/csv_units.h"

namespace layshaft::test {
namespace {

/// Fields of comma-separated values, quoted ones without their quotes.
std::vector<QStringList> fieldsOf(const QString& csv) {
  std::vector<QStringList> rows;
  for (const QString& line : csv.split('\n', Qt::SkipEmptyParts)) {
    QStringList fields{QString()};
    bool quoted = false;
    for (const QChar c : line) {
      if (c == '"')
        quoted = !quoted;
      else if (c == ',' && !quoted)
        fields << QString();
      else
        fields.back() += c;
    }
    rows.push_back(fields);
  }
  return rows;
}

/// In a country that writes a comma before decimals and a point between thousands.
class PageCsv : public testing::TestWithParam<QLocale>, FreshSettings {
 protected:
  PageCsv() {
    QLocale::setDefault(GetParam());
    Profile profile = sampleBike("club-600");
    profile.aims = {{.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 13400}};
    profile.pins = {{"\"A\", the long one", {.rearTeeth = rear(41)}}};
    window_ = std::make_unique<Window>(profile);
  }
  ~PageCsv() override {
    window_.reset();
    QLocale::setDefault(before_);
  }

  ui::Page& open(const QString& name) {
    auto* tabs = (*window_)->findChild<QTabWidget*>();
    for (int i = 0; i < tabs->count(); ++i)
      if (tabs->tabText(i) == name) tabs->setCurrentIndex(i);
    EXPECT_TRUE(soon([&] { return !(*window_)->session().ladder().running(); }));
    return dynamic_cast<ui::Page&>(*tabs->currentWidget());
  }

  const QLocale before_;
  std::unique_ptr<Window> window_;
};

TEST_P(PageCsv, EveryRowHasACellForEachTitleAndPlainNumbers) {
  static const QRegularExpression number(QStringLiteral("^-?\\d+(\\.\\d+)?(e[-+]?\\d+)?$"));
  static const QRegularExpression key(QStringLiteral("^[a-z][a-z0-9_]*$"));
  for (const char* name : {"Sawtooth", "Pull", "Acceleration", "Chain", "Lap", "Ladder", "Compare"}) {
    const auto rows = fieldsOf(open(QString::fromUtf8(name)).csv());
    ASSERT_GT(rows.size(), 3U) << name;
    for (const QString& title : rows[0]) EXPECT_TRUE(key.match(title).hasMatch()) << title.toStdString();
    int numbers = 0;
    for (const QStringList& row : rows) {
      ASSERT_EQ(row.size(), rows[0].size()) << name << ": " << row.join(" | ").toStdString();
      for (qsizetype c = 0; c < row.size(); ++c) {
        const QString& title = rows[0][c];
        const bool words = title == "setup" || title == "run" || title == "rollout_source" ||
                           title == "links_that_fit" || row[c] == "true" || row[c] == "false";
        if (&row == &rows[0] || words || row[c].isEmpty()) continue;
        EXPECT_TRUE(number.match(row[c]).hasMatch())
            << name << ", " << title.toStdString() << ": " << row[c].toStdString();
        ++numbers;
      }
    }
    EXPECT_GT(numbers, 20) << name;
  }
}

TEST_P(PageCsv, IsWhatTheCoreSaysInTheUnitsShown) {
  const Plan planned = plan(window_->profile());
  const ui::UnitsShown& units = (*window_)->units();
  EXPECT_EQ(open("Sawtooth").csv().toStdString(), ui::csvInUnits(reportCsv(planned), units));
  EXPECT_EQ(open("Pull").csv().toStdString(), ui::csvInUnits(pullCsv(planned), units));
  EXPECT_EQ(open("Acceleration").csv().toStdString(), ui::csvInUnits(runCsv(planned), units));
  EXPECT_EQ(open("Chain").csv().toStdString(), ui::csvInUnits(chainRunCsv(planned), units));
  EXPECT_EQ(open("Compare").csv(),
            ui::compareCsv(ui::compareTable(planned, units, ui::usualCompareFigures()), planned, units));
}

TEST_P(PageCsv, OfTheLadderHasThePairsInViewInTheirOrder) {
  ui::Page& page = open("Ladder");
  auto& table = control<QTableView>(page, "Ladder");
  table.sortByColumn(ui::LadderModel::Pair, Qt::DescendingOrder);
  for (auto* box : page.findChildren<QCheckBox*>())
    if (box->text() == "Fits this chain") box->click();
  std::vector<LadderRow> wanted;
  const Ladder ladder(ladderInput(window_->profile()));
  for (int r = 0; r < table.model()->rowCount(); ++r) {
    const QStringList teeth = table.model()->index(r, 0).data().toString().section(' ', 0, 0).split('/');
    wanted.push_back(ladder.row(teeth[0].toInt(), teeth[1].toInt()));
  }
  ASSERT_GT(wanted.size(), 2U);
  EXPECT_GT(wanted.front().frontTeeth, wanted.back().frontTeeth);
  EXPECT_EQ(page.csv().toStdString(),
            ui::csvInUnits(ladderCsv(wanted, window_->profile().aims), (*window_)->units()));
}

INSTANTIATE_TEST_SUITE_P(In, PageCsv,
                         testing::Values(QLocale(QLocale::English, QLocale::UnitedKingdom),
                                         QLocale(QLocale::German, QLocale::Germany)),
                         [](const auto& locale) {
                           return QLocale::languageToString(locale.param.language()).toStdString();
                         });

}  // namespace
}  // namespace layshaft::test
