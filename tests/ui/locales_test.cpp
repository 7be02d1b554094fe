// SPDX-License-Identifier: GPL-3.0-or-later
//
// The window's editors where numbers are written in another way: each types as the locale's people do.
#include <QComboBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTabWidget>

#include "tests/ui/drive_line.h"
#include "tests/ui/support.h"
#include "ui/editors/bike_details.h"
#include "ui/editors/curve_editor.h"
#include "ui/editors/new_bike_dialog.h"

namespace layshaft::test {
namespace {

struct LocaleCase {
  const char* name;
  QLocale locale;
};

/// The locale holds while a test runs; what is made in the fixture is made in it.
class UnderLocale {
 public:
  explicit UnderLocale(const QLocale& locale) { QLocale::setDefault(locale); }
  ~UnderLocale() { QLocale::setDefault(before_); }

 private:
  QLocale before_;
};

/// Types any characters, also those that stand on no key.
void typeWritten(QWidget& field, const QString& text) {
  typeInto(field, QString());
  QTest::keyClick(&field, Qt::Key_Delete);
  for (const QChar c : text) {
    QKeyEvent press(QEvent::KeyPress, 0, Qt::NoModifier, QString(c));
    QApplication::sendEvent(&field, &press);
  }
}

class Locales : public testing::TestWithParam<LocaleCase> {
 protected:
  /// A number as people of the locale write it: with their decimal sign, and with their group sign or a
  /// blank.
  QString written(double x, int decimals) const { return QLocale().toString(x, 'f', decimals); }
  QString plain(double x) const { return QLocale().toString(x, 'g', 10).remove(QLocale().groupSeparator()); }
  void enter(ui::BikeDetails& details, const char* name, const QString& text) {
    auto& box = control<QDoubleSpinBox>(details, name);
    auto* tabs = details.findChild<QTabWidget*>();
    for (int i = 0; i < tabs->count(); ++i)
      if (tabs->widget(i)->isAncestorOf(&box)) tabs->setCurrentIndex(i);
    typeWritten(box, text);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    QTest::qWait(5);
  }
  void paste(QWidget& in, const char* table, const QString& text) {
    auto& view = static_cast<ui::ColumnsTable&>(control<QTableWidget>(in, table));
    view.setCurrentCell(0, 0);
    view.pasteText(text);
  }

  UnderLocale here_{GetParam().locale};
};

TEST_P(Locales, TheDriveLineTakesNumbersAsTheyAreWritten) {
  ui::Document document(bike());
  ui::Planner planner(document);
  ui::DriveLine line(document);
  line.show(planner.shared(), ui::UnitsShown());
  showActive(line);
  auto& primary = control<QDoubleSpinBox>(line, "Primary");
  typeWritten(primary, plain(2.0255));
  EXPECT_EQ(proposedSetup(document).primaryRatio, 2.0255);
  typeWritten(primary, "1.975");
  EXPECT_EQ(proposedSetup(document).primaryRatio, 1.975) << "a ratio has no thousands";
  typeWritten(primary, "1,9");
  EXPECT_EQ(proposedSetup(document).primaryRatio, 1.9);
  auto& revLimit = control<QSpinBox>(line, "Rev limit");
  typeWritten(revLimit, "12500");
  EXPECT_EQ(document.profile().bike.engine.revLimitRpm, 12500);
  typeWritten(revLimit, written(11250, 0));
  EXPECT_EQ(document.profile().bike.engine.revLimitRpm, 11250) << "grouped, as the box shows it itself";
  auto& rollout = control<QDoubleSpinBox>(line, "Rollout");
  typeWritten(rollout, written(1950.5, 1));
  EXPECT_EQ(proposedSetup(document).options.rolloutMm, 1950.5) << written(1950.5, 1).toStdString();
  if (QLocale().groupSeparator().at(0).isSpace()) {
    for (const QChar blank : {QChar(QLatin1Char(' ')), QChar(QChar::Nbsp), QChar(0x202f)}) {
      typeWritten(revLimit, QStringLiteral("10500").insert(2, blank));
      EXPECT_EQ(document.profile().bike.engine.revLimitRpm, 10500) << static_cast<int>(blank.unicode());
      typeWritten(rollout, QStringLiteral("1960,5").insert(1, blank));
      EXPECT_EQ(proposedSetup(document).options.rolloutMm, 1960.5) << static_cast<int>(blank.unicode());
      typeWritten(revLimit, "12000");
      typeWritten(rollout, "1950");
    }
  }
  line.hide();
}

TEST_P(Locales, ANumberIsUnderstoodWithAnyBlankThatTheLocaleGroupsBy) {
  if (!QLocale().groupSeparator().at(0).isSpace()) GTEST_SKIP() << "groups by a sign";
  for (const QChar blank : {QChar(QLatin1Char(' ')), QChar(QChar::Nbsp), QChar(0x202f)}) {
    EXPECT_EQ(ui::typedNumber(QStringLiteral("12500").insert(2, blank)), 12500)
        << static_cast<int>(blank.unicode());
    EXPECT_EQ(ui::columnNumbers({QStringLiteral("12500,5").insert(2, blank)}, 30000).at(0), 12500.5)
        << static_cast<int>(blank.unicode());
  }
}

TEST_P(Locales, ANumberTooHighWithABlankIsRefusedInsteadOfLosingADigit) {
  ui::Document document(workedExample());
  ui::BikeDetails details(document);
  details.refresh(ui::UnitsShown());
  showActive(details);
  enter(details, "Wheelbase", plain(13850));
  EXPECT_EQ(document.profile().bike.chassis->wheelbaseMm, 1385);
  if (QLocale().groupSeparator().at(0).isSpace()) {
    enter(details, "Wheelbase", "13 850");
    EXPECT_EQ(document.profile().bike.chassis->wheelbaseMm, 1385);
  }
}

TEST_P(Locales, ANumberOutsideItsLimitsIsRefusedInTheWritingOfTheLocale) {
  ui::Document document(workedExample());
  ui::BikeDetails details(document);
  details.refresh(ui::UnitsShown());
  showActive(details);
  enter(details, "Wheelbase", written(13850, 0));
  EXPECT_EQ(document.profile().bike.chassis->wheelbaseMm, 1385);
  bool said = false;
  for (auto* label : details.findChildren<QLabel*>()) said = said || label->text().contains(written(3000, 0));
  EXPECT_TRUE(said);
}

TEST_P(Locales, TheDetailsTakeNumbersAsTheyAreWritten) {
  ui::Document document(bike());
  ui::BikeDetails details(document);
  details.refresh(ui::UnitsShown());
  showActive(details);
  enter(details, "Drag area", plain(0.345));
  EXPECT_EQ(document.profile().bike.chassis.value_or(Chassis{}).dragAreaM2, 0.345);
  enter(details, "Drag area", "0.355");
  EXPECT_EQ(document.profile().bike.chassis->dragAreaM2, 0.355);
  enter(details, "Wheelbase", written(1385, 0));
  EXPECT_EQ(document.profile().bike.chassis->wheelbaseMm, 1385);
  enter(details, "Rider", plain(81.5));
  EXPECT_EQ(document.profile().bike.chassis->riderMassKg, 81.5);
}

TEST_P(Locales, ShowingABikeInAllItsFieldsChangesNothing) {
  const Profile sample = sampleBike("adventure-twin");
  ui::Document document(sample);
  ui::BikeDetails details(document);
  for (const auto system : {ui::UnitSystem::Imperial, ui::UnitSystem::Metric}) {
    details.refresh(ui::UnitsShown(system));
    showActive(details);
    auto* tabs = details.findChild<QTabWidget*>();
    for (auto* box : details.findChildren<QAbstractSpinBox*>()) {
      for (int i = 0; i < tabs->count(); ++i)
        if (tabs->widget(i)->isAncestorOf(box)) tabs->setCurrentIndex(i);
      box->setFocus(Qt::TabFocusReason);
      QTest::keyClick(box, Qt::Key_Tab);
    }
    EXPECT_TRUE(same(document.profile(), sample));
  }
}

TEST_P(Locales, ACurveIsPastedAsASpreadsheetOfTheLocaleWritesIt) {
  ui::Document document(bike());
  ui::CurveEditor editor(document);
  editor.refresh(ui::UnitsShown());
  const auto points = [&] {
    std::vector<std::pair<double, double>> all;
    if (const auto& curve = document.profile().bike.engine.torqueCurve)
      for (const TorquePoint& point : curve->points()) all.emplace_back(point.rpm, point.torqueNm);
    return all;
  };
  const std::vector<std::pair<double, double>> wanted{{4000, 41.5}, {8000, 57.125}, {12000, 50}};
  QString grouped, ungrouped;
  for (const auto& [rpm, torque] : wanted) {
    grouped += written(rpm, 0) + '\t' + plain(torque) + '\n';
    ungrouped += plain(rpm) + '\t' + plain(torque) + '\n';
  }
  paste(editor, "Torque curve", ungrouped);
  EXPECT_EQ(points(), wanted);
  paste(editor, "Torque curve", "1000\t1\n2000\t2");
  paste(editor, "Torque curve", grouped);
  EXPECT_EQ(points(), wanted) << grouped.toStdString();
  paste(editor, "Torque curve", "1000\t1\n2000\t2");
  paste(editor, "Torque curve", "4000\t41.5\n8000\t57.125\n12000\t50");
  EXPECT_EQ(points(), wanted) << "with a point, as an instrument writes it";
  const Profile before = document.profile();
  emit control<ui::ColumnsTable>(editor, "Torque curve").edited();
  EXPECT_TRUE(same(document.profile(), before)) << "what is shown reads back";
  // Shown again it is written as the locale writes it, and read as it was.
  editor.refresh(ui::UnitsShown(ui::UnitSystem::Metric));
  auto& table = control<ui::ColumnsTable>(editor, "Torque curve");
  EXPECT_EQ(table.item(2, 0)->text(), written(12000, 0));
  emit table.edited();
  EXPECT_EQ(points(), wanted);
}

TEST_P(Locales, SparesAreTypedAndReadBack) {
  ui::Document document(bike());
  ui::BikeDetails details(document);
  details.refresh(ui::UnitsShown());
  paste(details, "Rear sprockets or pulleys",
        QStringLiteral("45\t520\taluminium\t%1\tused\n47\t520\tsteel\t%2\tnew")
            .arg(plain(0.415), QStringLiteral("1.125")));
  ASSERT_TRUE(document.profile().sparesBox);
  ASSERT_EQ(document.profile().sparesBox->rear.size(), 2u);
  EXPECT_EQ(document.profile().sparesBox->rear[0].massKg, 0.415);
  EXPECT_EQ(document.profile().sparesBox->rear[1].massKg, 1.125) << "no sprocket weighs a ton";
  const Profile before = document.profile();
  details.refresh(ui::UnitsShown());
  emit static_cast<ui::ColumnsTable&>(control<QTableWidget>(details, "Rear sprockets or pulleys")).edited();
  EXPECT_TRUE(same(document.profile(), before)) << "what is shown reads back";
}

TEST_P(Locales, ANewBikeIsTypedAsTheLocaleWrites) {
  ui::NewBikeDialog dialog({});
  const auto line = [&](const QString& label) -> QLineEdit& {
    for (auto* caption : dialog.findChildren<QLabel*>())
      if (caption->buddy() && caption->text().remove('&').startsWith(label))
        return dynamic_cast<QLineEdit&>(*caption->buddy());
    throw std::runtime_error("no line");
  };
  line("Name").setText("Nipper");
  line("Rev limit").setText(written(12500, 0));
  line("Primary").setText(plain(1.955));
  line("Gear ratios").setText(plain(2.714) + ' ' + plain(2.059) + " 1.737 1.524");
  line("Front").setText("15");
  line("Rear teeth").setText("45");
  line("Rear tyre").setText("180/55ZR17");
  auto made = dialog.profile();
  ASSERT_TRUE(made);
  EXPECT_EQ(made->bike.engine.revLimitRpm, 12500);
  EXPECT_EQ(made->stock.primaryRatio, 1.955);
  EXPECT_THAT(made->stock.gearRatios.values(), testing::ElementsAre(2.714, 2.059, 1.737, 1.524));
  line("Primary").setText("1.955");
  line("Gear ratios").setText("2,714 2,059 1,737 1,524");
  made = dialog.profile();
  ASSERT_TRUE(made);
  EXPECT_EQ(made->stock.primaryRatio, 1.955) << "either sign is understood";
  EXPECT_THAT(made->stock.gearRatios.values(), testing::ElementsAre(2.714, 2.059, 1.737, 1.524));
}

TEST_P(Locales, ASampleFillsTheNewBikeWithWhatReadsBack) {
  const Profile sample = workedExample();
  ui::NewBikeDialog dialog({{QStringLiteral("sample"), sample}});
  dialog.findChild<QComboBox*>()->setCurrentIndex(1);
  ASSERT_TRUE(dialog.profile());
  EXPECT_EQ(dialog.profile()->stock, sample.stock);
  EXPECT_EQ(dialog.profile()->bike, sample.bike);
}

INSTANTIATE_TEST_SUITE_P(Of, Locales,
                         testing::Values(LocaleCase{"C", QLocale::c()},
                                         LocaleCase{"English",
                                                    QLocale(QLocale::English, QLocale::UnitedKingdom)},
                                         LocaleCase{"German", QLocale(QLocale::German, QLocale::Germany)},
                                         LocaleCase{"French", QLocale(QLocale::French, QLocale::France)}),
                         [](const auto& one) { return std::string(one.param.name); });

}  // namespace
}  // namespace layshaft::test
