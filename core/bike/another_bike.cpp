// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/another_bike.h"

namespace layshaft {

Profile anotherBike(Profile profile) {
  profile.customer.clear();
  profile.records.reset();
  profile.stock.options.chainElongationPercent.reset();
  if (profile.wear) {
    profile.wear->measurements = {};
    profile.wear->chainFittedAt.reset();
  }
  return profile;
}

}  // namespace layshaft
