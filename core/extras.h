// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>

namespace layshaft {

/// Keys that this version does not know, each with its value as JSON text: kept so that saving loses nothing.
using Extras = std::map<std::string, std::string>;

}  // namespace layshaft
