// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/save_bytes.h"

#include <cstddef>

#include "core/file.h"
#include "ui/document/file_name.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {

std::optional<QString> saveBytes(const QString& file, const QByteArray& bytes) {
  const auto problem = saveFile(pathOf(file), {bytes.constData(), static_cast<std::size_t>(bytes.size())});
  return problem ? std::optional(sentence(*problem)) : std::nullopt;
}

}  // namespace layshaft::ui
