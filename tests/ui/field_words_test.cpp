// SPDX-License-Identifier: GPL-3.0-or-later
#include <QTabWidget>
#include <QTranslator>

#include "core/profile_file/access.h"
#include "tests/core/key_list.h"
#include "tests/ui/support.h"
#include "ui/document/setup_edits.h"
#include "ui/editors/bike_details.h"
#include "ui/editors/drive_line.h"
#include "ui/words/choice_words.h"
#include "ui/words/field_rows.h"
#include "ui/words/field_table.h"
#include "ui/words/problem_words.h"

namespace layshaft::test {
namespace {

/// A language in which every word of a context is marked: what is looked up elsewhere stays English.
class Marked : public QTranslator {
 public:
  explicit Marked(const char* context) : context_(context) { QCoreApplication::installTranslator(this); }
  ~Marked() override { QCoreApplication::removeTranslator(this); }
  bool isEmpty() const override { return false; }
  QString translate(const char* context, const char* text, const char*, int) const override {
    return qstrcmp(context, context_) == 0 ? QStringLiteral("«%1»").arg(QString::fromUtf8(text)) : QString();
  }

 private:
  const char* context_;
};

/// Where the words of fields are edited in the drive line instead of a form, or as a table.
bool hasAnEditorOfItsOwn(const std::string& key) {
  for (const char* own : {"bike.engine.rev_limit_rpm", "bike.engine.shift_rpm", "front_teeth", "rear_teeth",
                          "rear_tyre", "primary_ratio", "prices.currency", "ride.track"})
    if (key.ends_with(own)) return true;
  return key.find("[0]") != std::string::npos;
}

TEST(FieldWords, EveryKeyOfTheProfileHasALabelAndAName) {
  for (const auto& [pointer, key] : keysOfTheCore()) {
    const std::string path = keyPath(pointer);
    EXPECT_FALSE(ui::fieldLabel(path).isEmpty()) << path;
    EXPECT_FALSE(ui::fieldName(path).isEmpty()) << path;
    EXPECT_FALSE(ui::fieldLabel(path).contains('%')) << path;
    const QString spoken = ui::spokenSentence({.kind = Kind::MissingKey, .path = path});
    EXPECT_FALSE(spoken.contains('_') || spoken.contains('[')) << spoken.toStdString();
  }
  for (const char* key : {"format", "version"}) EXPECT_FALSE(ui::fieldLabel(key).isEmpty());
  EXPECT_TRUE(ui::fieldLabel("a.b").isEmpty());
}

TEST(FieldWords, EveryRowIsOfAKeyAndNoneTwice) {
  QStringList keys;
  for (const auto& rows : {ui::field_rows::bike(), ui::field_rows::setup(), ui::field_rows::ride(),
                           ui::field_rows::tracks(), ui::field_rows::records()})
    for (const ui::Field& field : rows) {
      keys << QString::fromUtf8(field.key.data());
      QString path = keys.back();
      path.replace("[]", "[0]").replace("*", "sand");
      if (path == "format" || path == "version" || path.endsWith(']') || path.contains("torque_curve["))
        continue;
      EXPECT_TRUE(fieldRule(path.toStdString())) << path.toStdString();
    }
  EXPECT_EQ(keys.removeDuplicates(), 0);
}

TEST(FieldWords, WhatIsUsualAndTypicalIsAllowed) {
  int usual = 0, typical = 0;
  for (const auto& rows : {ui::field_rows::bike(), ui::field_rows::setup(), ui::field_rows::ride(),
                           ui::field_rows::tracks(), ui::field_rows::records()})
    for (const ui::Field& field : rows) {
      std::string key(field.key);
      if (const auto at = key.find('*'); at != std::string::npos) key.replace(at, 1, "sand");
      for (auto at = key.find("[]"); at != std::string::npos; at = key.find("[]")) key.insert(at + 1, "0");
      const auto rule = fieldRule(key);
      if (!field.measure.usual && !field.measure.typical) continue;
      ASSERT_TRUE(rule) << key;
      if (field.measure.usual) {
        ++usual;
        EXPECT_TRUE(rule->limit.contains(*field.measure.usual)) << key;
      }
      if (field.measure.typical) {
        ++typical;
        EXPECT_TRUE(rule->limit.contains(field.measure.typical->low)) << key;
        EXPECT_TRUE(rule->limit.contains(field.measure.typical->high)) << key;
        EXPECT_LT(field.measure.typical->low, field.measure.typical->high) << key;
      }
    }
  EXPECT_GE(usual, 15);
  EXPECT_GE(typical, 40);
}

TEST(FieldWords, TheSchemasDefaultIsTheUsualValue) {
  const Json root = Json::parse(contentsOf(sourceFolder() / "resources/bike.schema.json"));
  const auto defaultOf = [&](const char* block, const char* key) {
    return root["$defs"][block]["properties"][key].value("default", Json());
  };
  const struct {
    const char *block, *path;
  } blocks[] = {{"engine", "bike.engine."},   {"curve_air", "bike.engine.curve_air."},
                {"chassis", "bike.chassis."}, {"change", "stock."},
                {"roll_on", "ride.roll_on."}, {"ride", "ride."}};
  int seen = 0;
  for (const auto& [block, path] : blocks)
    for (const auto& item : root["$defs"][block]["properties"].items()) {
      const Json wanted = defaultOf(block, item.key().c_str());
      if (!wanted.is_number()) continue;
      ++seen;
      const ui::Field* row = ui::fieldRow(path + item.key());
      ASSERT_TRUE(row && row->measure.usual) << path << item.key();
      EXPECT_EQ(*row->measure.usual, wanted.get<double>()) << path << item.key();
    }
  EXPECT_GE(seen, 14);
}

TEST(FieldWords, EveryFieldCanBeTyped) {
  ui::Document document(bike());
  ui::BikeDetails details(document);
  for (const auto& [pointer, key] : keysOfTheCore()) {
    const std::string path = keyPath(pointer);
    const auto rule = fieldRule(path);
    if (!rule || rule->type == FieldRule::Type::Block || hasAnEditorOfItsOwn(path)) continue;
    QString label = ui::fieldLabel(path);
    bool found = false;
    for (auto* widget : details.findChildren<QWidget*>()) found = found || isNamed(*widget, label);
    EXPECT_TRUE(found) << path << " has no editor named " << label.toStdString();
  }
}

TEST(FieldWords, AreFoundWhereATranslationFilesThem) {
  const Marked language("FieldTable");
  for (const auto& [pointer, key] : keysOfTheCore()) {
    const std::string path = keyPath(pointer);
    EXPECT_TRUE(ui::fieldLabel(path).contains("«")) << path;
    EXPECT_TRUE(ui::fieldName(path).startsWith("«")) << path;
    const auto rule = fieldRule(path);
    const QString unit = rule ? ui::fileUnitWord(rule->limit.unit) : QString();
    EXPECT_TRUE(unit.isEmpty() || unit.startsWith("«")) << path;
  }
  const ui::Field* row = ui::fieldRow("bike.chassis.wheelbase_mm");
  EXPECT_TRUE(ui::fieldHelp(*row, *fieldRule(row->key), ui::UnitsShown()).startsWith("«Axle to axle"));
}

TEST(DriveLineWords, AreFoundWhereATranslationFilesThem) {
  for (const char* context : {"EngineStops", "GearboxStops", "FinalDriveStops", "WheelStops"}) {
    const Marked language(context);
    ui::Document document(bike());
    ui::DriveLine line(document);
    line.show(std::make_shared<const Plan>(plan(document.profile())), ui::UnitsShown());
    int marked = 0;
    for (auto* station : line.findChildren<ui::Station*>())
      marked += station->editor()->toolTip().startsWith("«") ? 1 : 0;
    EXPECT_GE(marked, 2) << context;
  }
}

TEST(EditWords, AreTheSameEditInEveryLanguage) {
  ui::Document document(bike());
  ui::SetupEdits edits(document, ui::Side::Proposed);
  edits.setRearTeeth(44);
  {
    const Marked language("SetupEdits");
    edits.setRearTeeth(45);
  }
  EXPECT_EQ(document.undoStack().count(), 1) << "a field is known by what it is, not by what it is called";
  const Marked language("SetupEdits");
  edits.setFrontTeeth(15);
  EXPECT_TRUE(document.undoStack().undoText().startsWith("«proposed «front teeth»»"))
      << document.undoStack().undoText().toStdString();
}

TEST(ChoiceWords, EveryChoiceOfTheFileHasAWordOfTheUsers) {
  const Marked language("ChoiceWords");
  for (const auto& [pointer, key] : keysOfTheCore())
    for (const std::string& word : key.words) {
      if (chainSize(word)) continue;  // a number is the same in every language
      EXPECT_TRUE(ui::choiceWord(word).startsWith("«")) << word;
      EXPECT_FALSE(ui::choiceWord(word).contains('_')) << word;
    }
}

TEST(ChoiceWords, AreTypedInTheUsersWordsOrTheFiles) {
  EXPECT_EQ(ui::typedChoice(" Aluminium ", kMaterialWords), SprocketMaterial::Aluminium);
  EXPECT_EQ(ui::typedChoice("wet asphalt", kSurfaceWords), Surface::WetAsphalt);
  EXPECT_EQ(ui::typedChoice("gold", kMaterialWords), std::nullopt);
  EXPECT_EQ(ui::typedChoice("", kMaterialWords), std::nullopt);
  const Marked language("ChoiceWords");
  EXPECT_EQ(ui::typedChoice("«STEEL»", kMaterialWords), SprocketMaterial::Steel);
  EXPECT_EQ(ui::typedChoice("steel", kMaterialWords), SprocketMaterial::Steel) << "the file's word too";
}

TEST(ChoiceWords, OfSparesAreShownAndTypedInTheLanguage) {
  const Marked language("ChoiceWords");
  ui::Document document(
      bike({{"/spares_box/rear", {{{"teeth", 45}, {"material", "steel"}, {"state", "used"}}}}}));
  ui::BikeDetails details(document);
  details.refresh(ui::UnitsShown());
  auto& table = control<QTableWidget>(details, "Rear sprockets or pulleys");
  EXPECT_EQ(table.item(0, 2)->text(), "«steel»");
  EXPECT_EQ(table.item(0, 4)->text(), "«used»");
  table.item(0, 2)->setText("«aluminium»");
  EXPECT_EQ(document.profile().sparesBox->rear.at(0).material, SprocketMaterial::Aluminium);
}

}  // namespace
}  // namespace layshaft::test
