// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/samples.h"

#include <QDir>
#include <QFile>

#include "core/profile_file.h"

static void initialiseResources() {
  Q_INIT_RESOURCE(layshaft);
}

namespace layshaft::ui {

const std::vector<std::pair<QString, Profile>>& samples() {
  static const auto all = [] {
    initialiseResources();
    std::vector<std::pair<QString, Profile>> list;
    const QDir folder(QStringLiteral(":/sample-profiles"));
    QStringList names = folder.entryList({QStringLiteral("*.bike.json")});
    // The worked example opens first: it is what the documentation shows.
    const QString first = QStringLiteral("club-600.bike.json");
    if (names.removeOne(first)) names.prepend(first);
    for (const QString& name : names) {
      QFile file(folder.filePath(name));
      if (!file.open(QIODevice::ReadOnly)) continue;
      auto profile = readProfile(file.readAll().toStdString());
      if (profile) list.emplace_back(QString::fromStdString(profile->name), std::move(profile).value());
    }
    return list;
  }();
  return all;
}

}  // namespace layshaft::ui
