// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/samples.h"

#include <QDir>
#include <QFile>
#include <algorithm>
#include <optional>

#include "core/profile_file.h"

static void initialiseResources() {
  Q_INIT_RESOURCE(layshaft);
}

namespace layshaft::ui {

namespace {

const QString kFolder = QStringLiteral(":/sample-profiles/");
const QString kFirst = QStringLiteral("club-600.bike.json");

std::optional<Profile> sample(const QString& name) {
  initialiseResources();
  QFile file(kFolder + name);
  if (!file.open(QIODevice::ReadOnly)) return std::nullopt;
  auto profile = readProfile(file.readAll().toStdString());
  return profile ? std::optional(std::move(profile).value()) : std::nullopt;
}

}  // namespace

Profile firstSample() {
  return sample(kFirst).value();
}

const std::vector<std::pair<QString, Profile>>& samples() {
  static const auto all = [] {
    initialiseResources();
    QStringList names = QDir(kFolder).entryList({QStringLiteral("*.bike.json")});
    names.removeOne(kFirst);
    names.prepend(kFirst);
    std::vector<std::pair<QString, Profile>> list;
    for (const QString& name : names)
      if (auto profile = sample(name))
        list.emplace_back(QString::fromStdString(profile->name), std::move(*profile));
    return list;
  }();
  return all;
}

bool isSample(const Profile& profile) {
  const auto& all = samples();
  return std::any_of(all.begin(), all.end(), [&](const auto& entry) { return entry.second == profile; });
}

}  // namespace layshaft::ui
