// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/bike_folder.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <system_error>

#include "core/bike/setup.h"
#include "core/profile_file.h"
#include "ui/document/file_name.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

constexpr std::size_t kBatch = 20;  // files read before the list is told
constexpr int kDelayMs = 300;
constexpr std::string_view kEnding = ".bike.json";

/// The bike with what its file says, or what is wrong with that.
FolderBike readBike(FolderBike bike) {
  const auto profile = loadProfile(pathOf(bike.file));
  if (!profile) {
    bike.state = FolderBike::State::Broken;
    bike.problem = sentence(profile.problem());
    return bike;
  }
  const Setup proposed = applied(profile->proposed, profile->stock);
  bike.state = FolderBike::State::Read;
  bike.problem.clear();
  bike.name = shownName(profile->name);
  bike.customer = shownName(profile->customer);
  bike.pair = teethPair(profile->stock);
  if (const QString to = teethPair(proposed); to != bike.pair) bike.pair += QStringLiteral(" → ") + to;
  return bike;
}

bool sameFiles(const std::vector<FolderBike>& a, const std::vector<FolderBike>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const FolderBike& x, const FolderBike& y) { return x.file == y.file; });
}

}  // namespace

QDateTime FolderBike::changed() const {
  constexpr std::int64_t kNsPerMs = 1'000'000;
  return mark ? QDateTime::fromMSecsSinceEpoch(mark->modifiedNs / kNsPerMs) : QDateTime();
}

BikeFolder::BikeFolder(QObject* parent) : QObject(parent) {
  delay_.setSingleShot(true);
  delay_.setInterval(kDelayMs);
  connect(&delay_, &QTimer::timeout, this, &BikeFolder::refresh);
  connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, [this] {
    if (!delay_.isActive()) delay_.start();
  });
  connect(&work_, &BackgroundWork::finished, this, &BikeFolder::settled);
}

void BikeFolder::open(const QString& folder) {
  if (!watcher_.directories().isEmpty()) watcher_.removePaths(watcher_.directories());
  folder_ = folder;
  refresh();
}

/// In the order of their names; what is known of a file stays until it is read again.
std::vector<FolderBike> BikeFolder::look() {
  std::map<QString, const FolderBike*> known;
  for (const FolderBike& bike : bikes_) known.emplace(bike.file, &bike);
  std::vector<FolderBike> found;
  std::error_code error;
  for (std::filesystem::directory_iterator entry(pathOf(folder_), error), end; !error && entry != end;
       entry.increment(error)) {
    std::error_code unknown;
    if (!entry->path().native().ends_with(kEnding) || entry->is_directory(unknown)) continue;
    FolderBike bike{.file = nameOf(entry->path())};
    if (const auto before = known.find(bike.file); before != known.end()) bike = *before->second;
    if (const auto mark = markOf(entry->path()); mark != bike.mark) {
      bike.mark = mark;
      bike.state = FolderBike::State::Waiting;
    }
    found.push_back(std::move(bike));
  }
  trouble_ = error ? QString::fromLocal8Bit(error.message().c_str()) : QString();
  std::sort(found.begin(), found.end(),
            [](const FolderBike& a, const FolderBike& b) { return a.file < b.file; });
  return found;
}

void BikeFolder::refresh() {
  // A folder that was gone for a while is watched anew.
  if (!watcher_.directories().contains(folder_)) watcher_.addPath(folder_);
  std::vector<FolderBike> now = look();
  if (sameFiles(now, bikes_)) {
    bikes_ = std::move(now);
    if (!bikes_.empty()) emit bikesChanged(0, static_cast<int>(bikes_.size()) - 1);
  } else {
    emit listing();
    bikes_ = std::move(now);
    emit listed();
  }
  read();
}

void BikeFolder::read() {
  std::vector<BackgroundWork::Part> parts;
  for (std::size_t first = 0; first < bikes_.size(); first += kBatch) {
    const std::size_t last = std::min(first + kBatch, bikes_.size()) - 1;
    std::vector<FolderBike> batch(bikes_.begin() + static_cast<std::ptrdiff_t>(first),
                                  bikes_.begin() + static_cast<std::ptrdiff_t>(last) + 1);
    const auto waits = [](const FolderBike& bike) { return bike.state == FolderBike::State::Waiting; };
    if (std::none_of(batch.begin(), batch.end(), waits)) continue;
    parts.push_back([this, first, last, waits, batch](const BackgroundWork::Stopped& stopped) {
      std::vector<FolderBike> filled = batch;
      for (FolderBike& bike : filled)
        if (waits(bike) && !stopped()) bike = readBike(std::move(bike));
      return [this, first, last, filled = std::move(filled)] {
        std::copy(filled.begin(), filled.end(), bikes_.begin() + static_cast<std::ptrdiff_t>(first));
        emit bikesChanged(static_cast<int>(first), static_cast<int>(last));
      };
    });
  }
  work_.start(parts);
}

}  // namespace layshaft::ui
