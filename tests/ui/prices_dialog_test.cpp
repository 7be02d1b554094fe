// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/prices_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "tests/ui/support.h"
#include "ui/document/price_edits.h"

namespace layshaft::test {
namespace {

QLineEdit& priceField(ui::PricesDialog& dialog, const QString& label) {
  for (auto* text : dialog.findChildren<QLabel*>())
    if (text->text().remove('&') == label && text->buddy()) return dynamic_cast<QLineEdit&>(*text->buddy());
  throw std::runtime_error("no field " + label.toStdString());
}

bool pricesMayBeAccepted(ui::PricesDialog& dialog) {
  return dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->isEnabled();
}

TEST(PriceEdits, AreOneStepOfTheHistoryAndKeepWhatTheyDoNotKnow) {
  Profile profile = workedExample();
  profile.prices = Prices{.currency = "£", .parts = {{"kit", 100.0, {}}, {"valve", 3.0, {}}}, .extras = {}};
  ui::Document document(profile);
  ui::TypedPrices typed = ui::typedPrices(profile);
  EXPECT_EQ(typed.currency, "£");
  EXPECT_EQ(typed.parts.at(PricedPart::Kit), 100.0);
  typed.parts = {{PricedPart::RearSteel, 45.0}};
  ASSERT_EQ(ui::setPrices(document, typed), std::nullopt);
  ASSERT_EQ(document.profile().prices->parts.size(), 2u);
  EXPECT_EQ(document.profile().prices->parts[0].part, "valve");
  EXPECT_EQ(priceOf(document.profile(), PricedPart::RearSteel), 45.0);
  EXPECT_EQ(priceOf(document.profile(), PricedPart::Kit), std::nullopt);
  EXPECT_EQ(document.undoStack().count(), 1);
  EXPECT_EQ(document.undoStack().undoText(), "prices");
  document.undoStack().undo();
  EXPECT_TRUE(same(document.profile(), profile));
}

TEST(PriceEdits, NoPricesAreNoKey) {
  ui::Document document(workedExample());
  ASSERT_EQ(ui::setPrices(document, {}), std::nullopt);
  EXPECT_FALSE(document.profile().prices);
  EXPECT_EQ(document.undoStack().count(), 0) << "nothing has changed";
}

TEST(PriceEdits, APriceThatIsNoneIsRefused) {
  ui::Document document(workedExample());
  const auto problem = ui::setPrices(document, {.currency = "EUR", .parts = {{PricedPart::Kit, -1.0}}});
  ASSERT_TRUE(problem);
  EXPECT_EQ(problem->kind, Problem::Kind::OutOfRange);
  EXPECT_FALSE(document.profile().prices);
}

TEST(PricesDialog, TakesNumbersOrNothing) {
  ui::PricesDialog dialog({.currency = "EUR", .parts = {{PricedPart::Kit, 165.125}}});
  EXPECT_EQ(priceField(dialog, "Currency").text(), "EUR");
  EXPECT_TRUE(pricesMayBeAccepted(dialog));
  ASSERT_TRUE(dialog.prices());
  EXPECT_EQ(dialog.prices()->parts.at(PricedPart::Kit), 165.125) << "what nobody touched stays exact";
  priceField(dialog, "Joining link").setText("7.50");
  EXPECT_EQ(dialog.prices()->parts.at(PricedPart::JoiningLink), 7.5);
  for (const char* bad : {"cheap", "-3", "1e99"}) {
    priceField(dialog, "Front sprocket").setText(bad);
    EXPECT_FALSE(pricesMayBeAccepted(dialog)) << bad;
    EXPECT_FALSE(control<QLabel>(dialog, "Message").text().isEmpty()) << bad;
  }
  priceField(dialog, "Front sprocket").clear();
  priceField(dialog, "Kit: chain and both sprockets").clear();
  ASSERT_TRUE(pricesMayBeAccepted(dialog));
  EXPECT_EQ(dialog.prices()->parts.size(), 1u);
}

}  // namespace
}  // namespace layshaft::test
