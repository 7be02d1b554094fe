// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <filesystem>

/// File names between the system, for which they are bytes, and Qt, for which they are text.
namespace layshaft::ui {

/// The name as Qt keeps it. Bytes that are no UTF-8 become lone surrogates, so that nothing is lost.
QString nameOf(const std::filesystem::path& file);

/// The bytes that `nameOf` was made from.
std::filesystem::path pathOf(const QString& name);

/// The name as people read it: what no letter stands for is marked, control characters are gone.
QString shownFile(const QString& name);

}  // namespace layshaft::ui
