// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file.h"
#include "core/profile_file.h"
#include "core/profile_file/fields.h"
#include "core/profile_file/json_text.h"
#include "core/profile_file/writer.h"

namespace layshaft {

std::string writeProfile(const Profile& profile) {
  using profile_file::Json;
  using profile_file::Writer;
  Profile copy = profile;  // the field list is shared with the reader, which fills what it is given
  Json root;
  Writer writer(root);
  root["format"] = std::string(kProfileFormat);
  root["version"] = kProfileVersion;
  writer.needText("name", copy.name, limits::kLongestName);
  writer.optionalText("notes", copy.notes, limits::kLongestNotes);
  writer.optionalText("customer", copy.customer, limits::kLongestName);
  writer.needObject("bike", copy.bike);
  SetupChange stock{.frontTeeth = copy.stock.frontTeeth,
                    .rearTeeth = copy.stock.rearTeeth,
                    .rearTyre = copy.stock.rearTyre,
                    .primaryRatio = copy.stock.primaryRatio,
                    .options = copy.stock.options};
  if (!copy.stock.gearRatios.empty()) stock.gearRatios = copy.stock.gearRatios;
  writer.needObject("stock", stock);
  if (copy.proposed != SetupChange{}) writer.needObject("proposed", copy.proposed);
  profile_file::lists(writer, copy);
  return profile_file::prettyJson(root);
}

std::optional<Problem> saveProfile(const Profile& profile, const std::filesystem::path& file) {
  const std::string text = writeProfile(profile);
  if (const auto again = readProfile(text); !again) return again.problem();
  return saveFile(file, text);
}

}  // namespace layshaft
