// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "ui/words/field_table.h"

/// The rows of the field table by subject, in the order of the file. Typical ranges are common practice for
/// motorcycles unless a source stands beside them.
namespace layshaft::ui::field_rows {

std::span<const Field> bike();     ///< name and notes, engine, chassis, chain run, speedometer
std::span<const Field> setup();    ///< stock, proposed and what pins call otherwise
std::span<const Field> ride();     ///< ride, aims and spares box
std::span<const Field> tracks();   ///< tracks, their segments and recorded lines
std::span<const Field> records();  ///< wear, services and track notes, prices

}  // namespace layshaft::ui::field_rows
