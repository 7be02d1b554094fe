// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/recovery.h"

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>
#include <QStandardPaths>
#include <QUuid>

#include "core/profile_file.h"

namespace layshaft::ui {
namespace {

constexpr int kDelayMs = 800;
const QString kSuffix = QStringLiteral(".recovery.json");
const QString kLockSuffix = QStringLiteral(".lock");

}  // namespace

RecoveryCopy::RecoveryCopy(const Document& document, const QString& folder, QObject* parent)
    : QObject(parent),
      document_(document),
      path_(QDir(folder).filePath(QUuid::createUuid().toString(QUuid::WithoutBraces) + kSuffix)) {
  delay_.setSingleShot(true);
  delay_.setInterval(kDelayMs);
  connect(&delay_, &QTimer::timeout, this, &RecoveryCopy::writeNow);
  const auto onChange = [this] {
    if (!document_.isModified())
      discard();
    else if (!delay_.isActive())
      delay_.start();
  };
  connect(&document_, &Document::changed, this, onChange);
  connect(&document_, &Document::titleChanged, this, onChange);
}

RecoveryCopy::~RecoveryCopy() {
  discard();
}

void RecoveryCopy::writeNow() {
  if (!document_.isModified()) return;
  QDir().mkpath(QFileInfo(path_).path());
  if (!lock_) {
    lock_ = std::make_unique<QLockFile>(path_ + kLockSuffix);
    lock_->setStaleLockTime(0);  // held as long as this program runs, however long that is
    lock_->tryLock(0);
  }
  const QJsonObject root{
      {QStringLiteral("file"), document_.file()},
      {QStringLiteral("profile"), QString::fromStdString(writeProfile(document_.profile()))}};
  QSaveFile out(path_);
  if (!out.open(QIODevice::WriteOnly)) return;
  out.write(QJsonDocument(root).toJson());
  out.commit();
}

void RecoveryCopy::discard() {
  delay_.stop();
  QFile::remove(path_);
  lock_.reset();
}

std::vector<Recovered> recoverable(const QString& folder) {
  std::vector<Recovered> found;
  const QDir dir(folder);
  for (const QString& name : dir.entryList({QLatin1Char('*') + kSuffix}, QDir::Files, QDir::Time)) {
    const QString path = dir.filePath(name);
    QLockFile lock(path + kLockSuffix);
    lock.setStaleLockTime(0);
    if (!lock.tryLock(0)) continue;  // its program still runs
    QFile in(path);
    if (!in.open(QIODevice::ReadOnly)) continue;
    const QJsonObject root = QJsonDocument::fromJson(in.readAll()).object();
    auto profile = readProfile(root.value(QStringLiteral("profile")).toString().toStdString());
    if (!profile) continue;
    found.push_back({path, root.value(QStringLiteral("file")).toString(), std::move(profile).value()});
  }
  return found;
}

void removeRecovery(const QString& copy) {
  QFile::remove(copy);
  QFile::remove(copy + kLockSuffix);
}

QString recoveryFolder() {
  return QDir(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation))
      .filePath(QStringLiteral("recovery"));
}

}  // namespace layshaft::ui
