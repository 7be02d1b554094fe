// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/english.h"

#include <QCoreApplication>
#include <QTranslator>

// What is in a static library is only linked, and known, where somebody asks for it; outside every namespace.
static void makeTranslationsKnown() {
  Q_INIT_RESOURCE(translations);
}

namespace layshaft::ui {

void installEnglish(QCoreApplication& application) {
  makeTranslationsKnown();
  auto* english = new QTranslator(&application);
  if (!english->load(QStringLiteral(":/translations/layshaft_en.qm")))
    qFatal("the English catalogue is missing");
  QCoreApplication::installTranslator(english);
}

}  // namespace layshaft::ui
