// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "core/limits.h"
#include "core/profile_file.h"
#include "tests/core/key_list.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

TEST(ReadProfile, TakesTheRequiredKeysAlone) {
  const Profile profile = profileFrom(minimalProfile().dump());
  EXPECT_EQ(profile.name, "Bare");
  EXPECT_EQ(profile.notes, "");
  EXPECT_EQ(profile.bike.engine.revLimitRpm, 10000);
  EXPECT_EQ(profile.stock.frontTeeth.count(), 16);
  EXPECT_EQ(profile.stock.rearTeeth.count(), 43);
  EXPECT_EQ(profile.stock.rearTyre.text(), "180/55ZR17");
  EXPECT_EQ(profile.stock.primaryRatio, 1.955);
  EXPECT_EQ(profile.stock.gearRatios.values(), (std::vector<double>{2.71, 2.06, 1.24}));
  EXPECT_EQ(profile.stock.options, SetupOptions{});
  EXPECT_TRUE(profile.proposed.changesNothing());
  EXPECT_FALSE(profile.bike.chassis || profile.bike.chainRun || profile.bike.speedometer || profile.ride ||
               profile.sparesBox || profile.cruiseSpeedKmh);
  EXPECT_TRUE(profile.pins.empty() && profile.aims.empty() && profile.extras.empty());
}

// Spot checks: that every key arrives somewhere is what the round trips show.
TEST(ReadProfile, PutsEveryKeyInItsPlace) {
  const Profile profile = profileFrom(everyKeyProfile().dump());
  EXPECT_EQ(profile.name, "Every key – half chain, half belt");
  EXPECT_EQ(profile.bike.engine.shiftRpm, 12800.5);
  ASSERT_TRUE(profile.bike.engine.torqueCurve);
  EXPECT_EQ(profile.bike.engine.torqueCurve->points()[1], (TorquePoint{7000, 98}));
  EXPECT_EQ(profile.bike.engine.curveMeasuredAt, CurvePlace::RearWheel);
  EXPECT_EQ(profile.bike.engine.curveAir->pressureHpa, 990);
  EXPECT_EQ(profile.bike.engine.torqueFollowsAir, false);
  EXPECT_EQ(profile.bike.chassis->rollingResistanceForm, RollingResistanceForm::SpeedDependent);
  EXPECT_EQ(profile.bike.chassis->frontWheelInertiaKgm2, 0.48);
  EXPECT_EQ(profile.bike.chassis->rearWheelInertiaKgm2, 0.64);
  EXPECT_EQ(profile.bike.chainRun->adjusterForwardMm, 11);
  EXPECT_EQ(profile.bike.chainRun->adjusterBackMm, 16.5);
  EXPECT_EQ(profile.bike.chainRun->countershaftAbovePivotMm, -6.5);
  EXPECT_EQ(profile.bike.chainRun->beltLengthsTeeth, (std::vector<int>{128, 130, 133}));
  EXPECT_EQ(profile.bike.speedometer->sensor, SpeedSensor::RearWheel);
  EXPECT_EQ(profile.stock.options.chainSize, chainSize("525"));
  EXPECT_EQ(profile.stock.options.growthPerKmh2, 1.5e-7);
  EXPECT_EQ(profile.proposed.options.finalDrive, FinalDrive::Belt);
  EXPECT_EQ(profile.proposed.options.rearSprocket->material, SprocketMaterial::Steel);
  ASSERT_EQ(profile.pins.size(), 1U);
  EXPECT_EQ(profile.pins[0].name, "Wet, “long” circuit");
  EXPECT_EQ(profile.pins[0].change.rearTyre->kind(), TyreSize::Kind::RacingMetric);
  ASSERT_EQ(profile.aims.size(), 1U);
  EXPECT_EQ(profile.aims[0].want, Aim::Want::RevAtSpeed);
  EXPECT_EQ(profile.aims[0].gear, 6);
  EXPECT_EQ(profile.ride->surface, Surface::WetAsphalt);
  EXPECT_EQ(profile.ride->surfaces.at(Surface::Sand).rollingResistance, 0.15);
  EXPECT_EQ(profile.ride->rollOn->toSpeedKmh, 120);
  EXPECT_EQ(profile.sparesBox->front[0].state, SpareState::Used);
  EXPECT_EQ(profile.sparesBox->chains[0].links, 118);
}

TEST(ReadProfile, NullIsNotGiven) {
  for (const auto& [pointer, key] : keysWhereFilled()) {
    if (key.needed || keyPath(pointer).find('[') != std::string::npos) continue;
    Json profile = everyKeyProfile();
    if (pointer == "/tracks") profile["ride"].erase("track");  // it would name none of them
    if (pointer.ends_with("_ratio") || pointer.ends_with("_ratios"))
      for (const char* teeth : {"primary_teeth", "gear_teeth"})  // they would have to make stock's ratio
        profile["proposed"].erase(teeth);
    if (pointer == "/stock/gear_ratios")  // without them no other setup has any
      for (Json* setup : {&profile["stock"], &profile["proposed"], &profile["pins"][0]})
        for (const char* gears : {"gear_ratios", "gear_teeth"}) setup->erase(gears);
    EXPECT_TRUE(readProfile(with(pointer, nullptr, profile))) << pointer;
  }
  EXPECT_FALSE(profileFrom(with("/bike/chassis", nullptr)).bike.chassis);
  EXPECT_FALSE(profileFrom(with("/stock/rollout_mm", nullptr)).stock.options.rolloutMm);
}

TEST(ReadProfile, TheRevLimitAndTheGearRatiosMayBeUnknown) {
  EXPECT_EQ(profileFrom(without("/bike/engine/rev_limit_rpm")).bike.engine.revLimitRpm, std::nullopt);
  const Json bare = Json::parse(without("/stock/gear_ratios"));
  EXPECT_TRUE(profileFrom(bare.dump()).stock.gearRatios.empty());
  // What differs from something unknown says nothing.
  const Problem expected{.kind = Kind::MissingKey, .path = "stock.gear_ratios"};
  EXPECT_EQ(problemOf(with("/proposed/gear_ratios", {2, 1}, bare)), expected);
  EXPECT_EQ(problemOf(with("/pins", {{{"name", "One"}, {"gear_ratios", {2, 1}}}}, bare)), expected);
}

TEST(ReadProfile, SaysWhichNeededKeyIsMissing) {
  for (const char* pointer : {"/format", "/version"}) {
    EXPECT_EQ(problemOf(without(pointer)), (Problem{.kind = Kind::MissingKey, .path = keyPath(pointer)}));
    EXPECT_EQ(problemOf(with(pointer, nullptr)),
              (Problem{.kind = Kind::MissingKey, .path = keyPath(pointer)}));
  }
  int needed = 0;
  for (const auto& [pointer, key] : keysWhereFilled()) {
    if (!key.needed) continue;
    ++needed;
    const Problem expected{.kind = Kind::MissingKey, .path = keyPath(pointer)};
    EXPECT_EQ(problemOf(without(pointer, everyKeyProfile())), expected);
    EXPECT_EQ(problemOf(with(pointer, nullptr, everyKeyProfile())), expected);
  }
  EXPECT_GE(needed, 15);
}

/// A value of another type than the key's, and how a problem quotes it.
struct Other {
  Json value;
  const char* given;
};

std::vector<Other> otherTypes(Key::Type type) {
  std::vector<Other> others{{true, "true"},
                            {"seven", "\"seven\""},
                            {7, "7"},
                            {Json::array(), "a list"},
                            {Json::object(), "an object"}};
  const auto drop = [&](std::size_t index) {
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(index));
  };
  switch (type) {
    case Key::Type::Flag:
      drop(0);
      break;
    case Key::Type::Text:
    case Key::Type::TyreSize:
      drop(1);
      break;
    case Key::Type::Number:
    case Key::Type::Whole:
      drop(2);
      break;
    case Key::Type::List:
      drop(3);
      break;
    case Key::Type::Object:
      drop(4);
      break;
    case Key::Type::Word:
      break;
  }
  return others;
}

Problem wrongType(const std::string& pointer, const Key& key, const char* given) {
  Problem problem{.kind = Kind::WrongType, .path = keyPath(pointer), .given = given};
  switch (key.type) {
    case Key::Type::Number:
      problem.allowed = {"number"};
      break;
    case Key::Type::Whole:
      problem.allowed = {"whole number"};
      break;
    case Key::Type::Flag:
      problem.allowed = {"true or false"};
      break;
    case Key::Type::Text:
    case Key::Type::TyreSize:
      problem.allowed = {"text"};
      break;
    case Key::Type::Object:
      problem.allowed = {"object"};
      break;
    case Key::Type::List:
      problem.allowed = {"list"};
      break;
    case Key::Type::Word:
      problem.kind = Kind::NotOneOf;
      problem.allowed = key.words;
      break;
  }
  return problem;
}

TEST(ReadProfile, RefusesTheWrongTypeForEveryKey) {
  const Json full = everyKeyProfile();
  for (const auto& [pointer, key] : keysWhereFilled())
    for (const Other& other : otherTypes(key.type))
      EXPECT_EQ(problemOf(with(pointer, other.value, full)), wrongType(pointer, key, other.given));
}

TEST(ReadProfile, RefusesOutOfRangeForEveryNumber) {
  const Json full = everyKeyProfile();
  for (const auto& [pointer, key] : keysWhereFilled()) {
    if (key.type != Key::Type::Number && key.type != Key::Type::Whole) continue;
    Problem expected{.kind = Kind::OutOfRange,
                     .path = keyPath(pointer),
                     .given = {},
                     .low = key.limit.low,
                     .high = key.limit.high,
                     .unit = key.limit.unit};
    for (const double outside : {key.limit.low - 1, key.limit.high + 1}) {
      const Json value = key.type == Key::Type::Whole ? Json(static_cast<int>(outside)) : Json(outside);
      expected.given = value.dump();
      EXPECT_EQ(problemOf(with(pointer, value, full)), expected);
    }
  }
}

TEST(ReadProfile, RefusesHugeNumbersWithTheSameLimits) {
  const Json full = everyKeyProfile();
  for (const auto& [pointer, key] : keysWhereFilled()) {
    if (key.type != Key::Type::Number && key.type != Key::Type::Whole) continue;
    for (const Json& value :
         {Json(1e12), Json(-1e12), Json(1e300), Json(-1e300), Json(18446744073709551615ULL)}) {
      const Problem problem = problemOf(with(pointer, value, full));
      EXPECT_EQ(problem.kind, Kind::OutOfRange) << pointer;
      EXPECT_EQ(problem.given, value.dump()) << pointer;
      EXPECT_EQ(problem.low, key.limit.low) << pointer << ' ' << value;
      EXPECT_EQ(problem.high, key.limit.high) << pointer << ' ' << value;
    }
  }
}

TEST(ReadProfile, RefusesFractionsWhereOnlyWholeNumbersMakeSense) {
  const Json full = everyKeyProfile();
  int wholes = 0;
  for (const auto& [pointer, key] : keysWhereFilled()) {
    if (key.type != Key::Type::Whole) continue;
    ++wholes;
    const double half = key.limit.low + 0.5;
    EXPECT_EQ(problemOf(with(pointer, half, full)),
              (Problem{.kind = Kind::NotWhole, .path = keyPath(pointer), .given = Json(half).dump()}));
  }
  EXPECT_GE(wholes, 20);
  EXPECT_EQ(problemOf(with("/stock/front_teeth", 15.999999)).kind, Kind::NotWhole);
  // 16.0 is whole, however it is written.
  EXPECT_EQ(profileFrom(withRaw("/stock/front_teeth", "16.0")).stock.frontTeeth.count(), 16);
  EXPECT_EQ(profileFrom(withRaw("/stock/front_teeth", "1.6e1")).stock.frontTeeth.count(), 16);
}

TEST(ReadProfile, RefusesUnknownWords) {
  for (const auto& [pointer, key] : keysWhereFilled()) {
    if (key.type != Key::Type::Word) continue;
    for (const std::string& word : {std::string("plutonium"), std::string(), key.words[0] + " "})
      EXPECT_EQ(problemOf(with(pointer, word, everyKeyProfile())), (Problem{.kind = Kind::NotOneOf,
                                                                            .path = keyPath(pointer),
                                                                            .given = Json(word).dump(),
                                                                            .allowed = key.words}));
    for (const std::string& word : key.words)
      EXPECT_TRUE(readProfile(with(pointer, word, everyKeyProfile()))) << pointer << ' ' << word;
  }
  EXPECT_EQ(problemOf(with("/stock/chain_size", "521")).allowed,
            (std::vector<std::string>{"415", "420", "428", "520", "525", "530"}));
}

TEST(ReadProfile, RefusesListsThatAreTooShortOrTooLong) {
  for (const auto& [pointer, key] : keysWhereFilled()) {
    if (key.type != Key::Type::List) continue;
    const Json entry = everyKeyProfile().at(Json::json_pointer(pointer + "/0"));
    const auto count = static_cast<std::size_t>(key.limit.high) + 1;
    EXPECT_EQ(problemOf(with(pointer, Json::array_t(count, entry), everyKeyProfile())),
              (Problem{.kind = Kind::WrongCount,
                       .path = keyPath(pointer),
                       .given = std::to_string(count),
                       .low = key.limit.low,
                       .high = key.limit.high}));
  }
  EXPECT_EQ(
      problemOf(with("/stock/gear_ratios", Json::array())),
      (Problem{.kind = Kind::WrongCount, .path = "stock.gear_ratios", .given = "0", .low = 1, .high = 10}));
  EXPECT_EQ(problemOf(with("/bike/engine/torque_curve", {{{"rpm", 1}, {"torque_nm", 1}}})).kind,
            Kind::WrongCount);
}

TEST(ReadProfile, RefusesTextsThatAreTooShortOrTooLong) {
  const auto times = [](int count, const std::string& piece) {
    std::string text;
    for (int i = 0; i < count; ++i) text += piece;
    return text;
  };
  for (const char* pointer : {"/name", "/pins/0/name"}) {
    EXPECT_EQ(problemOf(with(pointer, "", everyKeyProfile())), (Problem{.kind = Kind::OutOfRange,
                                                                        .path = keyPath(pointer),
                                                                        .given = "0",
                                                                        .low = 1,
                                                                        .high = 200,
                                                                        .unit = "characters"}));
    EXPECT_EQ(problemOf(with(pointer, times(201, "n"), everyKeyProfile())).given, "201");
    // Characters, not bytes.
    EXPECT_TRUE(readProfile(with(pointer, times(200, "ü"), everyKeyProfile())));
    EXPECT_EQ(problemOf(with(pointer, times(201, "ü"), everyKeyProfile())).given, "201");
  }
  EXPECT_TRUE(readProfile(with("/notes", "")));
  EXPECT_TRUE(readProfile(with("/notes", times(20000, "€"))));
}

TEST(ReadProfile, SaysThatNotesMayBeEmptyButNotEndless) {
  EXPECT_EQ(problemOf(with("/notes", std::string(20001, 'n'))), (Problem{.kind = Kind::OutOfRange,
                                                                         .path = "notes",
                                                                         .given = "20001",
                                                                         .low = 0,
                                                                         .high = 20000,
                                                                         .unit = "characters"}));
}

TEST(ReadProfile, RefusesNumbersThatAreNotFinite) {
  for (const char* word : {"NaN", "nan", "-NaN", "Infinity", "-Infinity", "+Infinity", "inf", "-inf"})
    EXPECT_EQ(problemOf(withRaw("/bike/engine/rev_limit_rpm", word)),
              (Problem{.kind = Kind::NotFinite, .path = "bike.engine.rev_limit_rpm", .given = word}))
        << word;
  for (const char* number : {"1e999", "-1e999", "1.8e308"}) {
    const Problem problem = problemOf(withRaw("/stock/primary_ratio", number));
    EXPECT_EQ(problem.kind, Kind::NotFinite) << number;
    EXPECT_EQ(problem.path, "stock.primary_ratio") << number;
  }
  EXPECT_EQ(problemOf(withRaw("/stock/gear_ratios/1", "NaN")).path, "stock.gear_ratios[1]");
  EXPECT_EQ(problemOf(withRaw("/stock/gear_ratios/1", "1e999")).path, "stock.gear_ratios[1]");
  EXPECT_EQ(problemOf(withRaw("/bike/engine/torque_curve/2/rpm", "Infinity", everyKeyProfile())).path,
            "bike.engine.torque_curve[2].rpm");
  // Also where nobody looks.
  EXPECT_EQ(problemOf(withRaw("/unknown", "NaN")).path, "unknown");
  EXPECT_EQ(problemOf(withRaw("/unknown", "[1, 1e999]")).path, "unknown[1]");
  EXPECT_EQ(problemOf(withRaw("/stock/primary_ratio", "1" + std::string(400, '0'))).kind, Kind::NotFinite);
}

TEST(ReadProfile, RefusesDuplicateKeys) {
  struct Row {
    const char* pointer;
    const char* raw;
    const char* path;
  };
  for (const Row& row : {
           Row{"/bike/engine", R"({"rev_limit_rpm": 9000, "rev_limit_rpm": 9000})",
               "bike.engine.rev_limit_rpm"},
           Row{"/bike/engine", R"({"rev_limit_rpm": 9000, "rev\u005flimit_rpm": 1})",
               "bike.engine.rev_limit_rpm"},
           Row{"/stock/front_sprocket", R"({"mass_kg": 1, "material": "steel", "mass_kg": 2})",
               "stock.front_sprocket.mass_kg"},
           Row{"/bike/engine/torque_curve",
               R"([{"rpm": 1, "torque_nm": 2}, {"rpm": 3, "torque_nm": 4, "rpm": 5}])",
               "bike.engine.torque_curve[1].rpm"},
           Row{"/unknown", R"({"a": [0, [{"b": 1}, {"b": 1, "b": 1}]]})", "unknown.a[1][1].b"},
           Row{"/pins", R"([{"name": "A"}, {"name": "B", "name": "B"}])", "pins[1].name"},
       })
    EXPECT_EQ(problemOf(withRaw(row.pointer, row.raw)),
              (Problem{.kind = Kind::DuplicateKey, .path = row.path}));
  EXPECT_EQ(problemOf(R"({"format": "layshaft-bike", "name": "A", "name": "B"})"),
            (Problem{.kind = Kind::DuplicateKey, .path = "name"}));
}

TEST(ReadProfile, QuotesLongKeysWhole) {
  std::string key = "a";
  for (int i = 0; i < 60; ++i) key += "ü";
  const Problem problem = problemOf("{\"" + key + "\": 1, \"" + key + "\": 2}");
  EXPECT_EQ(problem.kind, Kind::DuplicateKey);
  EXPECT_NO_THROW(Json(problem.path).dump()) << "cut inside a character";
}

TEST(ReadProfile, QuotesLongValuesShortAndWhole) {
  std::string word;
  for (int i = 0; i < 200; ++i) word += "ü";
  const Problem problem = problemOf(with("/stock/chain_size", word));
  EXPECT_LE(problem.given.size(), 70U);
  EXPECT_NO_THROW(Json(problem.given).dump()) << "cut inside a character";
}

TEST(ReadProfile, RefusesWhatIsNotUtf8) {
  const std::string before = R"({"name": ")";
  const std::string position = std::to_string(before.size());
  struct Row {
    const char* what;
    std::string bytes;
  };
  for (const Row& row : {
           Row{"continuation byte alone", "\x80"},
           Row{"continuation byte alone, the last", "\xbf"},
           Row{"overlong in two bytes", "\xc0\xaf"},
           Row{"overlong in two bytes, the last", "\xc1\xbf"},
           Row{"overlong in three bytes", "\xe0\x9f\xbf"},
           Row{"overlong in four bytes", "\xf0\x8f\xbf\xbf"},
           Row{"first surrogate", "\xed\xa0\x80"},
           Row{"last surrogate", "\xed\xbf\xbf"},
           Row{"beyond U+10FFFF", "\xf4\x90\x80\x80"},
           Row{"lead byte of five", "\xf8\x88\x80\x80\x80"},
           Row{"byte FE", "\xfe"},
           Row{"byte FF", "\xff"},
           Row{"two bytes, one there", "\xc3"},
           Row{"three bytes, two there", "\xe2\x82"},
           Row{"four bytes, three there", "\xf0\x9f\x8f"},
           Row{"Latin-1", "B\xfc"},
       }) {
    const std::size_t good = row.bytes[0] == 'B' ? 1 : 0;
    const Problem expected{.kind = Kind::NotUtf8, .given = std::to_string(before.size() + good)};
    EXPECT_EQ(problemOf(before + row.bytes + "\"}"), expected) << row.what;
    EXPECT_EQ(problemOf(before + row.bytes), expected) << row.what << ", cut off there";
  }
  EXPECT_EQ(problemOf(std::string(R"({"f": "x)") + "\xff\"}").given, "8");
}

TEST(ReadProfile, TakesEveryCornerOfUtf8) {
  for (const std::string text : {"\x7f", "\u0080", "\u07ff", "\u0800", "\ud7ff", "\ue000", "\uffff",
                                 "\U00010000", "\U0010ffff", "Café №5 🏍"})
    EXPECT_EQ(profileFrom(with("/name", text)).name, text);
  EXPECT_EQ(profileFrom(withRaw("/name", R"("\ud83c\udfcd")")).name, "🏍");
  EXPECT_EQ(problemOf(withRaw("/name", R"("\ud83c")")).kind, Kind::NotJson);
  EXPECT_EQ(problemOf(withRaw("/name", R"("\udfcd\ud83c")")).kind, Kind::NotJson);
}

TEST(ReadProfile, RefusesWhatIsNotJson) {
  struct Row {
    const char* text;
    const char* given;
  };
  for (const Row& row : {
           Row{"", "line 1, column 1"},
           Row{"{", "line 1, column 1"},
           Row{"{\n  \"name\": \"A\",\n}", "line 3, column 1"},
           Row{"{\n  \"name\": [1, 2,]\n}", "line 2, column 17"},
           Row{"{\"name\": 'A'}", "line 1, column 10"},
           Row{"{bike: \"A\"}", "line 1, column 2"},
           Row{"{} {}", "line 1, column 4"},
           Row{"// bike\n{}", "line 1, column 1"},
           Row{"{\"a\": 01}", "line 1, column 8"},
           Row{"{\"a\": +1}", "line 1, column 7"},
           Row{"{\"a\": .5}", "line 1, column 7"},
           Row{"{\"a\": 1,5}", "line 1, column 9"},
           Row{"{\"a\": True}", "line 1, column 7"},
       })
    EXPECT_EQ(problemOf(row.text), (Problem{.kind = Kind::NotJson, .given = row.given})) << row.text;
  for (const std::string& text : {std::string(" \n\t"), std::string("bike"), std::string("{\"a\": \"x\ny\"}"),
                                  std::string("{\"a\": \"\\x\"}"), std::string("{\"a\" 1}"),
                                  std::string("[1, 2"), std::string(1000, '\0'),
                                  std::string("\x7f"
                                              "ELF\x02\x01\x01")})
    EXPECT_EQ(problemOf(text).kind, Kind::NotJson) << text.substr(0, 20);
  // Every proper beginning of a good file is a bad one.
  const std::string whole = minimalProfile().dump();
  for (std::size_t length = 0; length < whole.size(); ++length)
    EXPECT_EQ(problemOf(whole.substr(0, length)).kind, Kind::NotJson) << length;
}

// A text does not end at a NUL byte: what stands behind it must not get lost in silence.
TEST(ReadProfile, RefusesNulBytesBehindTheEnd) {
  for (const std::size_t count : {std::size_t{1}, std::size_t{4096}})
    EXPECT_FALSE(readProfile(minimalProfile().dump() + std::string(count, '\0'))) << count;
  EXPECT_FALSE(readProfile(minimalProfile().dump() + '\0' + R"({"name": "another"})"));
}

TEST(ReadProfile, RefusesJsonThatIsNoObject) {
  for (const char* text : {"[]", "[{}]", "7", "\"layshaft-bike\"", "true", "null"}) {
    const Problem problem = problemOf(text);
    EXPECT_EQ(problem.kind, Kind::WrongType) << text;
    EXPECT_EQ(problem.path, "") << text;
    EXPECT_EQ(problem.allowed, std::vector<std::string>{"object"}) << text;
  }
}

TEST(ReadProfile, RefusesDeepNestingWithoutFallingOver) {
  const Problem tooDeep{.kind = Kind::TooDeep, .high = 64};
  const auto nested = [](int depth) {
    const auto n = static_cast<std::size_t>(depth);
    return std::string(n, '[') + std::string(n, ']');
  };
  EXPECT_TRUE(readProfile(withRaw("/unknown", nested(63))));
  EXPECT_EQ(problemOf(withRaw("/unknown", nested(64))), tooDeep);
  EXPECT_EQ(problemOf(withRaw("/unknown", nested(100000))), tooDeep);
  EXPECT_EQ(problemOf(std::string(100000, '[')), tooDeep);
  std::string objects;
  for (int i = 0; i < 100000; ++i) objects += "{\"a\":";
  EXPECT_EQ(problemOf(objects), tooDeep);
}

TEST(ReadProfile, RefusesMoreThanEightMegabytes) {
  std::string text = minimalProfile().dump();
  text.resize(kLargestProfileBytes, ' ');
  EXPECT_TRUE(readProfile(text));
  text += ' ';
  EXPECT_EQ(problemOf(text), (Problem{.kind = Kind::FileTooLarge, .high = 8388608}));
}

TEST(ReadProfile, RefusesOtherFormatsAndNewerVersions) {
  EXPECT_EQ(problemOf(with("/format", "layshaft-report")), (Problem{.kind = Kind::WrongFormat,
                                                                    .path = "format",
                                                                    .given = "\"layshaft-report\"",
                                                                    .allowed = {"layshaft-bike"}}));
  EXPECT_EQ(problemOf(with("/format", 1)).kind, Kind::WrongFormat);
  EXPECT_EQ(problemOf(with("/version", 2)),
            (Problem{.kind = Kind::NewerVersion, .path = "version", .given = "2", .high = 1}));
  EXPECT_EQ(problemOf(with("/version", 1000000)).kind, Kind::NewerVersion);
  EXPECT_EQ(problemOf(with("/version", 0)).kind, Kind::OutOfRange);
  EXPECT_EQ(problemOf(with("/version", -1)).kind, Kind::OutOfRange);
  EXPECT_EQ(problemOf(with("/version", 1.5)).kind, Kind::NotWhole);
  EXPECT_EQ(problemOf(with("/version", "1")).kind, Kind::WrongType);
  // A newer file is refused as newer, whatever else has changed in it.
  Json newer = minimalProfile();
  newer["version"] = 2;
  newer["name"] = {"now", "a list"};
  newer.erase("stock");
  EXPECT_EQ(problemOf(newer.dump()).kind, Kind::NewerVersion);
}

TEST(ReadProfile, RefusesGearsThatDoNotFall) {
  EXPECT_EQ(problemOf(with("/stock/gear_ratios", {2.5, 1.8, 1.8})), (Problem{.kind = Kind::NotFalling,
                                                                             .path = "stock.gear_ratios[2]",
                                                                             .given = "1.8",
                                                                             .low = 0.1,
                                                                             .high = 1.8}));
  EXPECT_EQ(problemOf(with("/proposed/gear_ratios", {1, 2}, everyKeyProfile())).path,
            "proposed.gear_ratios[1]");
  EXPECT_EQ(problemOf(with("/pins/0/gear_ratios", {1, 2}, everyKeyProfile())).path, "pins[0].gear_ratios[1]");
}

TEST(ReadProfile, RefusesCurvesOutOfOrder) {
  const auto curve = [](std::vector<std::pair<double, double>> points) {
    Json list = Json::array();
    for (const auto& [rpm, torque] : points) list.push_back({{"rpm", rpm}, {"torque_nm", torque}});
    return with("/bike/engine/torque_curve", list);
  };
  const Problem problem = problemOf(curve({{1000, 10}, {3000, 20}, {2000, 30}}));
  EXPECT_EQ(problem.kind, Kind::NotRising);
  EXPECT_EQ(problem.path, "bike.engine.torque_curve[2].rpm");
  EXPECT_EQ(problem.given, "2000");
  EXPECT_EQ(problem.low, 3000);
  EXPECT_EQ(problemOf(curve({{1000, 10}, {1000, 20}})).kind, Kind::NotRising);
  EXPECT_EQ(problemOf(curve({{1000, 0}, {2000, 0}})),
            (Problem{.kind = Kind::TorqueAllZero, .path = "bike.engine.torque_curve"}));
}

TEST(ReadProfile, RefusesTyresThatAreNone) {
  EXPECT_EQ(problemOf(with("/stock/rear_tyre", "180/5517")),
            (Problem{.kind = Kind::BadTyreSize, .path = "stock.rear_tyre", .given = "180/5517"}));
  EXPECT_EQ(problemOf(with("/pins/0/rear_tyre", "180/55-70", everyKeyProfile())),
            (Problem{.kind = Kind::ImpossibleTyre,
                     .path = "pins[0].rear_tyre",
                     .given = "180/55-70",
                     .low = 6,
                     .high = 30,
                     .unit = "in",
                     .part = "rim"}));
  EXPECT_EQ(problemOf(with("/stock/rear_tyre", "")).kind, Kind::BadTyreSize);
}

struct Conflict {
  const char* first;
  double firstValue;
  const char* second;  ///< the key at fault
  double bad, good;
  double high;
  const char* unit;
};

TEST(ReadProfile, RefusesValuesThatContradictEachOther) {
  for (const Conflict& row : {
           Conflict{"/bike/engine/rev_limit_rpm", 5000, "/bike/engine/idle_rpm", 5000, 4999.5, 5000, "rpm"},
           Conflict{"/bike/engine/rev_limit_rpm", 9000, "/bike/engine/shift_rpm", 9000.5, 9000, 9000, "rpm"},
           Conflict{"/bike/engine/rev_limit_rpm", 9000, "/ride/launch_rpm", 9000.5, 9000, 9000, "rpm"},
           Conflict{"/bike/chassis/wheelbase_mm", 1400, "/bike/chassis/cg_ahead_of_rear_axle_mm", 1400.5,
                    1400, 1400, "mm"},
           Conflict{"/bike/chain_run/largest_front_teeth", 15, "/bike/chain_run/smallest_front_teeth", 16, 15,
                    15, ""},
           Conflict{"/bike/chain_run/largest_rear_teeth", 45, "/bike/chain_run/smallest_rear_teeth", 46, 45,
                    45, ""},
       }) {
    Json profile = minimalProfile();
    profile[Json::json_pointer(row.first)] = row.firstValue;
    EXPECT_TRUE(readProfile(with(row.second, row.good, profile))) << row.second;
    const Problem problem = problemOf(with(row.second, row.bad, profile));
    EXPECT_EQ(problem.kind, Kind::OutOfRange);
    EXPECT_EQ(problem.path, keyPath(row.second));
    EXPECT_EQ(std::stod(problem.given), row.bad);
    EXPECT_EQ(problem.high, row.high);
    EXPECT_EQ(problem.unit, row.unit);
    EXPECT_EQ(problem.below, keyPath(row.first));
  }
}

TEST(ConflictIn, FindsWhatAnEditBroke) {
  Profile profile = profileFrom(everyKeyProfile().dump());
  EXPECT_FALSE(conflictIn(profile));
  profile.bike.engine.revLimitRpm = 9000;
  ASSERT_TRUE(conflictIn(profile));
  EXPECT_EQ(conflictIn(profile)->path, "bike.engine.shift_rpm");
  profile.bike.engine.shiftRpm.reset();
  EXPECT_FALSE(conflictIn(profile));
  profile.bike.chassis->wheelbaseMm = 700;
  EXPECT_EQ(conflictIn(profile)->path, "bike.chassis.cg_ahead_of_rear_axle_mm");
  profile.bike.chassis->wheelbaseMm.reset();
  EXPECT_FALSE(conflictIn(profile));
}

TEST(ReadProfile, TellsTheFirstOfSeveralProblems) {
  Json profile = minimalProfile();
  profile["name"] = 5;
  profile["stock"]["front_teeth"] = 1;
  EXPECT_EQ(problemOf(profile.dump()).path, "name");
  profile["name"] = "A";
  EXPECT_EQ(problemOf(profile.dump()).path, "stock.front_teeth");
}

class LoadProfile : public testing::Test {
 protected:
  LoadProfile() {
    std::string name = (std::filesystem::temp_directory_path() / "layshaft-test-XXXXXX").string();
    if (!mkdtemp(name.data())) throw std::runtime_error("no folder for temporary files");
    folder_ = name;
  }
  ~LoadProfile() override {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }
  std::filesystem::path file(const std::string& text) const {
    const auto path = folder_ / "a b – ü.bike.json";
    std::ofstream(path, std::ios::binary) << text;
    return path;
  }
  std::filesystem::path folder_;
};

TEST_F(LoadProfile, ReadsAFile) {
  const Result<Profile> loaded = loadProfile(file(everyKeyProfile().dump(2)));
  ASSERT_TRUE(loaded) << testing::PrintToString(loaded.problem());
  EXPECT_EQ(*loaded, profileFrom(everyKeyProfile().dump()));
}

TEST_F(LoadProfile, PassesOnWhatIsWrongInside) {
  EXPECT_EQ(loadProfile(file("")).problem().kind, Kind::NotJson);
  EXPECT_EQ(loadProfile(file(with("/stock/front_teeth", 5))).problem().path, "stock.front_teeth");
}

TEST_F(LoadProfile, RefusesWhatIsNoFile) {
  for (const std::filesystem::path& path :
       {folder_, folder_ / "none.bike.json", folder_ / "none" / "none.bike.json", std::filesystem::path(),
        file("{}") / "below a file", folder_ / std::string(5000, 'x')}) {
    const Result<Profile> loaded = loadProfile(path);
    ASSERT_FALSE(loaded) << path;
    EXPECT_EQ(loaded.problem().kind, Kind::FileUnreadable) << path;
    EXPECT_FALSE(loaded.problem().given.empty()) << path;
    EXPECT_NE(loaded.problem().given, "Success") << path;
  }
}

TEST_F(LoadProfile, RefusesALargeFile) {
  std::string text = minimalProfile().dump();
  text.resize(kLargestProfileBytes, ' ');
  EXPECT_TRUE(loadProfile(file(text)));
  EXPECT_EQ(loadProfile(file(text + " ")).problem(), (Problem{.kind = Kind::FileTooLarge, .high = 8388608}));
}

TEST_F(LoadProfile, RefusesAFileWithoutEndUnread) {
  if (!std::filesystem::exists("/dev/zero")) GTEST_SKIP() << "no /dev/zero here";
  EXPECT_EQ(loadProfile("/dev/zero").problem().kind, Kind::NotAFile);
}

TEST_F(LoadProfile, SaysSoWhenReadingFails) {
  if (!std::filesystem::exists("/proc/self/mem"))
    GTEST_SKIP() << "no file here that opens but cannot be read";
  EXPECT_EQ(loadProfile("/proc/self/mem").problem().kind, Kind::FileUnreadable);
}

TEST(ReadProfile, GearTeethMakeTheirRatio) {
  // 72/35 is 2.05714: printed as 2.057, and as 2.06 by who rounds more.
  const auto primary = [](double ratio, const Json& teeth) {
    Json profile = minimalProfile();
    profile["stock"]["primary_ratio"] = ratio;
    profile["stock"]["primary_teeth"] = teeth;
    return profile.dump();
  };
  EXPECT_TRUE(readProfile(primary(2.057, {35, 72})));
  const Problem problem = problemOf(primary(2.06, {35, 72}));
  EXPECT_EQ(problem.kind, Kind::OtherRatio);
  EXPECT_EQ(problem.path, "stock.primary_teeth");
  EXPECT_EQ(problem.below, "stock.primary_ratio");
  EXPECT_EQ(problem.given, "72/35");
  EXPECT_NEAR(problem.low, 2.05714, 0.00001);
  EXPECT_EQ(problem.high, 2.06);
  EXPECT_EQ(problemOf(primary(2.057, {35})).kind, Kind::WrongCount);
  EXPECT_EQ(problemOf(primary(2.057, {35.5, 72})).path, "stock.primary_teeth[0]");
  EXPECT_EQ(problemOf(primary(2.057, {35, 0})).path, "stock.primary_teeth[1]");
}

TEST(ReadProfile, TeethOfAProposalMakeTheRatioThatCounts) {
  Json profile = minimalProfile();
  profile["stock"]["gear_ratios"] = {2.4, 2, 1};
  profile["proposed"]["gear_teeth"] = {nullptr, {15, 30}};
  EXPECT_TRUE(readProfile(profile.dump()));
  profile["proposed"]["gear_teeth"] = {nullptr, {15, 31}};
  Problem problem = problemOf(profile.dump());
  EXPECT_EQ(problem.path, "proposed.gear_teeth[1]");
  EXPECT_EQ(problem.below, "stock.gear_ratios[1]") << "the proposal follows it";
  profile["proposed"]["gear_teeth"] = {{15, 36}, {15, 30}, nullptr, {1, 1}};
  problem = problemOf(profile.dump());
  EXPECT_EQ(problem.kind, Kind::WrongCount);
  EXPECT_EQ(problem.path, "proposed.gear_teeth");
  profile.erase("proposed");
  profile["pins"] = {{{"name", "One"}, {"gear_ratios", {3, 2}}, {"gear_teeth", {{12, 30}}}}};
  EXPECT_EQ(problemOf(profile.dump()).path, "pins[0].gear_teeth[0]");
}

}  // namespace
}  // namespace layshaft::test
