// SPDX-License-Identifier: GPL-3.0-or-later
//
// Parts to order and work orders in words.
#include "tests/ui/support.h"
#include "ui/words/cautions.h"
#include "ui/words/parts_words.h"
#include "ui/words/work_order_words.h"

namespace layshaft::test {
namespace {

using testing::Contains;
using testing::HasSubstr;

/// The worked example: 16/43 to 15/43, 114 links, an empty box.
Profile orderExample() {
  Profile profile = workedExample();
  profile.sparesBox = SparesBox{};
  profile.bike.chainRun->adjusterMarkMm = 2.0;
  return profile;
}

std::vector<std::string> orderLines(const QStringList& list) {
  std::vector<std::string> lines;
  for (const QString& line : list) lines.push_back(line.toStdString());
  return lines;
}

std::string orderLinesJoined(const QStringList& list) {
  return list.join('\n').toStdString();
}

void wearOutTheChain(Profile& profile) {
  profile.wear = Wear{};
  WearMeasurement entry;
  entry.lengthsMm = {330.0};
  entry.at = 10;
  profile.wear->measurements.add(entry);
}

ui::WorkOrder workOrderOf(const Profile& profile, const ui::UnitsShown& units = ui::UnitsShown()) {
  return ui::workOrder(profile, plan(profile), units);
}

TEST(PartsWords, APartIsNamedWithWhatOneOrdersItBy) {
  PartLine line{.kind = PartKind::FrontSprocket, .source = PartSource::Buy, .teeth = 15};
  line.size = kChainSizes[3];
  line.material = SprocketMaterial::Steel;
  const QString size = QString::fromUtf8(kChainSizes[3].name.data());
  EXPECT_EQ(ui::partText(line), "Front sprocket, 15 teeth, " + size + ", steel");
  EXPECT_EQ(ui::partSourceText(line), "to buy");
  PartLine chain{.kind = PartKind::Chain, .source = PartSource::Box, .links = 112, .takeOut = 4};
  chain.chainKind = ChainKind::Sealed;
  chain.state = SpareState::Used;
  chain.elongationPercent = 0.6;
  EXPECT_EQ(ui::partText(chain), "Chain, 112 links, sealed");
  EXPECT_EQ(ui::partSourceText(chain), "from the spares box (used, 0.6 % elongation), take 4 links out");
  chain.source = PartSource::Cut;
  chain.takeOut = 2;
  EXPECT_EQ(ui::partSourceText(chain), "take 2 links out of the bike's chain");
}

TEST(PartsWords, WhatTheBoxHasIsCrossedOff) {
  Profile profile = orderExample();
  profile.proposed.rearTeeth = Teeth::rear(45).value();
  profile.sparesBox->front.push_back({.teeth = 15, .state = SpareState::Used});
  const ui::OrderTable table = ui::orderTable(profile, partsList(profile, plan(profile)));
  ASSERT_EQ(table.rows.size(), 3u) << "titles, front and rear sprocket";
  EXPECT_TRUE(table.crossedOff[1]);
  EXPECT_THAT(table.rows[1][1].toStdString(), HasSubstr("(used)"));
  EXPECT_FALSE(table.crossedOff[2]);
  const QString text = ui::orderText(profile, plan(profile), ui::UnitsShown());
  EXPECT_TRUE(text.contains("[x] Front sprocket, 15 teeth")) << text.toStdString();
  EXPECT_TRUE(text.contains("[ ] Rear sprocket, 45 teeth")) << text.toStdString();
  for (const QString& caution : ui::cautionsFor(plan(profile), ui::CautionPlace::Work))
    EXPECT_TRUE(text.contains(caution));
}

TEST(PartsWords, SumsKitAndCostOfUseInTheUnitOfUse) {
  Profile profile = orderExample();
  wearOutTheChain(profile);
  profile.prices = Prices{.currency = "EUR", .parts = {}, .extras = {}};
  for (const auto& [part, price] : {std::pair{"chain_sealed", 120.0},
                                    {"front_sprocket", 25.0},
                                    {"rear_steel", 45.0},
                                    {"rear_aluminium", 55.0},
                                    {"kit", 165.0}})
    profile.prices->parts.push_back({part, price, {}});
  profile.stock.options.rearSprocket = SprocketDetails{.material = SprocketMaterial::Steel};
  profile.records = Records{};
  for (const double at : {0.0, 14.0, 30.0}) {
    Service service;
    service.newChain = true;
    service.at = at;
    profile.records->services.add(service);
  }
  const auto notes = [&](ui::UnitSystem system) {
    return orderLines(ui::orderNotes(profile, partsList(profile, plan(profile)), ui::UnitsShown(system)));
  };
  auto said = notes(ui::UnitSystem::Metric);
  EXPECT_THAT(said, Contains("Worn out: replace chain and both sprockets as a set."));
  EXPECT_THAT(said, Contains("Single parts: 190.00 EUR."));
  EXPECT_THAT(said, Contains("As a kit: 165.00 EUR."));
  EXPECT_THAT(said, Contains("Chain and sprockets then cost 11.00 EUR an hour."));
  profile.wear->useUnit = UseUnit::Km;
  profile.records.reset();
  said = notes(ui::UnitSystem::Metric);
  EXPECT_THAT(said, Contains(HasSubstr("Expected life 32,187 km: a long life on the road, common practice")));
  EXPECT_THAT(said, Contains("Chain and sprockets then cost 5.13 EUR per 1,000 km."));
  said = notes(ui::UnitSystem::Imperial);
  EXPECT_THAT(said, Contains(HasSubstr("Expected life 20,000 miles")));
  EXPECT_THAT(said, Contains("Chain and sprockets then cost 8.25 EUR per 1,000 miles."));
  EXPECT_THAT(orderLines(ui::cautionsFor(plan(profile), ui::CautionPlace::Work)),
              Contains(HasSubstr("Join only with a new joining link")))
      << "a chain is ordered, though no length changes";
}

TEST(PartsWords, NewAndWornPartsTogetherAreTold) {
  Profile profile = orderExample();
  profile.wear = Wear{};
  WearMeasurement entry;
  entry.lengthsMm = {330.0};
  entry.at = 10;
  profile.wear->measurements.add(entry);
  PartsList list;
  list.mixes = {WearMix::NewSprocketUnderWornChain, WearMix::NewChainOverWornSprockets,
                WearMix::FrontSprocketLeftOld};
  EXPECT_THAT(orderLines(ui::orderNotes(profile, list, ui::UnitsShown())),
              testing::IsSupersetOf({HasSubstr("worn chain ruins a new sprocket"),
                                     HasSubstr("Worn sprockets ruin a new chain"),
                                     HasSubstr("on the old front sprocket")}));
}

TEST(PartsWords, SteelStandsAgainstAluminiumAndPlainAgainstSealed) {
  Profile profile = orderExample();
  const auto rows = ui::choiceTable(profile, plan(profile), ui::UnitsShown());
  ASSERT_EQ(rows.size(), 5u);
  EXPECT_TRUE(rows[1][2].startsWith("≈ ")) << rows[1][2].toStdString();
  EXPECT_TRUE(
      ui::choiceTable(sampleBike("tourer-belt"), plan(sampleBike("tourer-belt")), ui::UnitsShown()).empty());
}

TEST(WorkOrderWords, SaysWhatComesOffAndWhatGoesOn) {
  Profile profile = orderExample();
  profile.proposed.options.links = 112;
  const ui::WorkOrder order = workOrderOf(profile);
  ASSERT_EQ(order.remove.size(), 1) << orderLinesJoined(order.remove);
  EXPECT_TRUE(order.remove[0].startsWith("Front sprocket, 16 teeth")) << orderLinesJoined(order.remove);
  EXPECT_THAT(orderLines(order.fit), Contains(testing::StartsWith("Front sprocket, 15 teeth")));
  EXPECT_THAT(orderLines(order.fit), Contains(HasSubstr("112 links")));
  EXPECT_THAT(orderLines(order.fit), Contains(HasSubstr("take 2 links out of the bike's chain")));
  EXPECT_THAT(orderLines(order.fit), Contains(testing::StartsWith("Joining link")));
}

TEST(WorkOrderWords, TheAxleIsExpectedSoFarAndSoManyMarks) {
  const Profile profile = orderExample();
  const Plan planned = plan(profile);
  const double shift = *planned.proposed.chainRun->axleShiftM;
  const QString mm = QLocale().toString(std::abs(shift) * 1000.0, 'f', 1);
  const QString marks = QLocale().toString(std::abs(shift) * 1000.0 / 2.0, 'f', 1);
  const QString text = ui::axleOrderText(planned, ui::UnitsShown());
  EXPECT_EQ(text, QString("Axle expected %1 mm %2, %3 marks %2; slack decides.")
                      .arg(mm, shift > 0 ? "back" : "forward", marks));
  Profile unmarked = profile;
  unmarked.bike.chainRun->adjusterMarkMm.reset();
  EXPECT_FALSE(ui::axleOrderText(plan(unmarked), ui::UnitsShown()).contains("marks"));
  EXPECT_TRUE(ui::axleOrderText(planned, ui::UnitsShown(ui::UnitSystem::Imperial)).contains(" in "));
}

TEST(WorkOrderWords, SlackIsTheManualsOrABlank) {
  Profile profile = orderExample();
  EXPECT_THAT(orderLines(ui::fromTheManual(profile, plan(profile))), Contains("Slack"));
  EXPECT_FALSE(orderLinesJoined(workOrderOf(profile).set).find("Slack") != std::string::npos);
  profile.wear = Wear{};
  profile.wear->slackMm = LengthRange{30, 40};
  profile.wear->slackPosture = "on its side stand";
  EXPECT_THAT(orderLines(workOrderOf(profile).set),
              Contains("Slack 30.0–40.0 mm, as typed from the manual; bike: on its side stand. Measure at "
                       "the tightest point."));
  EXPECT_THAT(orderLines(ui::fromTheManual(profile, plan(profile))), testing::Not(Contains("Slack")));
}

TEST(WorkOrderWords, TorquesAndSpannersAreBlanksAlone) {
  const Profile profile = orderExample();
  for (const QString& blank : ui::fromTheManual(profile, plan(profile)))
    EXPECT_FALSE(blank.contains(QRegularExpression("\\d"))) << blank.toStdString();
  const Profile belt = sampleBike("tourer-belt");
  const std::string text =
      orderLinesJoined(ui::fromTheManual(belt, plan(belt))) + orderLinesJoined(workOrderOf(belt).checks);
  EXPECT_EQ(text.find("procket"), std::string::npos) << text;
  EXPECT_NE(text.find("Belt tension"), std::string::npos) << text;
}

}  // namespace
}  // namespace layshaft::test
