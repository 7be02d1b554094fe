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

/// Pull over road speed: a row per setup, gear and point of the gear's curve.
std::string pullCsv(const Plan& plan);

/// The runs as they are drawn: a row per setup and point, from a standstill and down the straight.
std::string runCsv(const Plan& plan);

/// The chain run: one row per setup, with the keys of the JSON report.
std::string chainRunCsv(const Plan& plan);

/// A field for a comma-separated file: quoted only where it must be, and never read as a formula by a
/// spreadsheet.
std::string csvField(const std::string& text);

}  // namespace layshaft
