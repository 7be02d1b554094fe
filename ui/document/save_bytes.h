// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QString>
#include <optional>

namespace layshaft::ui {

/// Writes a file in one go; says what went wrong.
std::optional<QString> saveBytes(const QString& file, const QByteArray& bytes);

}  // namespace layshaft::ui
