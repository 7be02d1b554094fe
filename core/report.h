// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/plan.h"

/// A plan as numbers for other programs. Sentences and pictures are made elsewhere.
namespace layshaft {

/// The JSON report: full precision, unit in every key, null for what the profile lacks the data for.
std::string reportJson(const Plan& plan);

/// Comma-separated values (RFC 4180 with plain line feeds): one row per setup and gear, a point in every
/// number.
std::string reportCsv(const Plan& plan);

/// A field for a comma-separated file: quoted only where it must be, and never read as a formula by a
/// spreadsheet.
std::string csvField(const std::string& text);

}  // namespace layshaft
