// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/contrast.h"
#include "tests/ui/drive_line.h"
#include "ui/charts/appearance.h"

namespace layshaft::test {
namespace {

/// The switch between proposal and stock, and the order in which Tab goes.
class DriveLineSides : public DriveLineTest {
 protected:
  QAbstractButton& side(const char* name) { return control<QAbstractButton>(line_, QString::fromUtf8(name)); }
  QColor ground() { return line_.palette().color(QPalette::Window); }
};

TEST_F(DriveLineSides, TheSwitchHasTwoPartsThatArrowKeysMoveBetween) {
  auto &proposal = side("Edit the proposal"), &onStock = side("Edit stock");
  EXPECT_TRUE(proposal.isChecked());
  proposal.setFocus();
  QTest::keyClick(&proposal, Qt::Key_Right);
  EXPECT_TRUE(onStock.isChecked());
  EXPECT_TRUE(onStock.hasFocus());
  EXPECT_EQ(line_.side(), ui::Side::Stock);
  QTest::keyClick(&onStock, Qt::Key_Left);
  EXPECT_EQ(line_.side(), ui::Side::Proposed);
  EXPECT_NE(proposal.toolTip(), onStock.toolTip());
}

TEST_F(DriveLineSides, EditingStockChangesTheWholeStrip) {
  const QColor before = ground();
  line_.setSide(ui::Side::Stock);
  EXPECT_TRUE(side("Edit stock").isChecked());
  EXPECT_NE(ground(), before);
  EXPECT_NE(line_.grab().toImage().pixelColor(0, 0), before) << "the border";
  line_.setSide(ui::Side::Proposed);
  EXPECT_EQ(ground(), before);
}

TEST_F(DriveLineSides, EverythingIsReadableOnTheGroundOfStock) {
  const QPalette desktop = QApplication::palette();
  for (const QPalette& palette : {ui::lightPalette(), ui::darkPalette()}) {
    QApplication::setPalette(palette);
    line_.setSide(ui::Side::Stock);
    EXPECT_GE(contrast(ground(), palette.color(QPalette::Window)), 1.1) << "it is another ground";
    EXPECT_GE(contrast(ground(), line_.palette().color(QPalette::WindowText)), 4.5) << "the title";
    for (auto* label : line_.findChildren<QLabel*>())
      EXPECT_GE(contrast(ground(), label->palette().color(label->foregroundRole())), 4.5)
          << label->text().toStdString();
    line_.setSide(ui::Side::Proposed);
  }
  QApplication::setPalette(desktop);
}

TEST_F(DriveLineSides, TabGoesFromAFieldToItsWayBackToStock) {
  typeInto(box("Front teeth"), "15");
  settle();
  ASSERT_TRUE(backButton("Front teeth").isVisible());
  leave();
  EXPECT_TRUE(backButton("Front teeth").hasFocus());
}

}  // namespace
}  // namespace layshaft::test
