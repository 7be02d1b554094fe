// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/profile_file/access.h"

#include "core/bike/typical_bike.h"
#include "core/profile_file/accessor.h"

namespace layshaft {
namespace profile_file {
namespace {

void visit(Asked& asked, Profile& profile) {
  Access io(asked, asked.key);
  io.needText("name", profile.name, limits::kLongestName);
  io.optionalText("notes", profile.notes, limits::kLongestNotes);
  io.optionalText("customer", profile.customer, limits::kLongestName);
  io.needObject("bike", profile.bike);
  io.part("stock", profile.stock, true, [](Access& part, Setup& stock) { setupFields(part, stock); });
  io.part("proposed", profile.proposed, false,
          [](Access& part, SetupChange& proposed) { setupFields(part, proposed); });
  lists(io, profile);
}

}  // namespace
}  // namespace profile_file

std::optional<FieldRule> fieldRule(std::string_view key) {
  // Any bike will do: what is allowed does not depend on what is there.
  Profile any{.name = {},
              .notes = {},
              .bike = {},
              .stock = {*Teeth::front(16),
                        *Teeth::rear(43),
                        *TyreSize::parse("180/55-17"),
                        1.0,
                        *GearRatios::make({1.0}),
                        {}}};
  profile_file::Asked asked{.key = key};
  profile_file::visit(asked, any);
  return asked.rule;
}

FieldValue fieldValue(const Profile& profile, std::string_view key) {
  profile_file::Asked asked{.key = key};
  // The field list is shared with the reader, which fills what it is given; asking only looks.
  profile_file::visit(asked, const_cast<Profile&>(profile));
  return asked.value;
}

std::optional<Problem> setField(Profile& profile, std::string_view key, const FieldValue& value) {
  profile_file::Asked asked{.key = key, .put = &value};
  profile_file::visit(asked, profile);
  if (!asked.rule) return Problem{.kind = Problem::Kind::MissingKey, .path = std::string(key)};
  if (!asked.problem) forgetTypical(profile, key);
  return asked.problem;
}

}  // namespace layshaft
