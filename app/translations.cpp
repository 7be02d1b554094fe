// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/translations.h"

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>

#include "ui/words/english.h"

namespace layshaft::app {

void installTranslations(QCoreApplication& application) {
  const auto install = [&](const QString& name, const QString& folder) {
    auto* translator = new QTranslator(&application);
    if (translator->load(QLocale(), name, QStringLiteral("_"), folder))
      QCoreApplication::installTranslator(translator);
    else
      delete translator;
  };
  install(QStringLiteral("qtbase"), QLibraryInfo::path(QLibraryInfo::TranslationsPath));
  ui::installEnglish(application);
  install(QStringLiteral("layshaft"), QStringLiteral(":/translations"));
}

}  // namespace layshaft::app
