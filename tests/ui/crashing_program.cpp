// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/crashing_program.h"

#include <cstdio>
#include <cstdlib>

#include "tests/ui/support.h"
#include "ui/document/recovery.h"

namespace layshaft::test {

std::optional<int> crashingProgram(const QStringList& arguments) {
  if (arguments.value(1) != QLatin1String(kCrashAfterInput)) return std::nullopt;
  ui::Document document(bike());
  ui::RecoveryCopy copy(document, arguments.value(2));
  document.edit({.field = "name", .title = "name", .shown = {}}, [](Profile& p) { p.name = "Unsaved"; });
  copy.writeNow();
  std::puts("ready");
  std::fflush(stdout);
  while (std::getchar() != EOF) {
  }
  std::_Exit(3);
}

}  // namespace layshaft::test
