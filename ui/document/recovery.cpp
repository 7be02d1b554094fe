// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/recovery.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QStandardPaths>
#include <QUuid>
#include <cerrno>

#include "core/profile_file.h"
#include "ui/document/file_name.h"

namespace layshaft::ui {
namespace {

constexpr int kDelayMs = 800;
// Inside a copy the profile's text is quoted, which at most doubles what is no plain letter.
constexpr std::size_t kLargestCopyBytes = 2 * kLargestProfileBytes + (std::size_t{64} << 10);
const QString kSuffix = QStringLiteral(".recovery.json");
const QString kLockSuffix = QStringLiteral(".lock");

namespace key {
const QString kFile = QStringLiteral("file");             // as people read it
const QString kFileBytes = QStringLiteral("file_bytes");  // as the system has it, percent-encoded
const QString kFileModified = QStringLiteral("file_modified_ns");
const QString kFileSize = QStringLiteral("file_size");
const QString kWritten = QStringLiteral("written");
const QString kProfile = QStringLiteral("profile");
}  // namespace key

/// The text of a copy of work on a file, which was as `mark` says when the work began.
QByteArray copyOf(const Profile& profile, const QString& file, const std::optional<FileMark>& mark) {
  const std::string name = pathOf(file).native();
  QJsonObject root{
      {key::kFile, shownFile(file)},
      {key::kFileBytes, QString::fromLatin1(QByteArray::fromStdString(name).toPercentEncoding("/ "))},
      {key::kWritten, QDateTime::currentDateTimeUtc().toString(Qt::ISODateWithMs)},
      {key::kProfile, QString::fromStdString(writeProfile(profile))}};
  if (mark) {
    // As texts: a number in JSON would round nanoseconds away.
    root[key::kFileModified] = QString::number(mark->modifiedNs);
    root[key::kFileSize] = QString::number(mark->size);
  }
  return QJsonDocument(root).toJson(QJsonDocument::Compact);
}

std::optional<FileMark> markIn(const QJsonObject& root) {
  bool time = false, size = false;
  const FileMark mark{root.value(key::kFileModified).toString().toLongLong(&time),
                      root.value(key::kFileSize).toString().toULongLong(&size)};
  return time && size ? std::optional(mark) : std::nullopt;
}

QString fileIn(const QJsonObject& root) {
  const QJsonValue bytes = root.value(key::kFileBytes);
  if (!bytes.isString()) return root.value(key::kFile).toString();
  return nameOf(QByteArray::fromPercentEncoding(bytes.toString().toLatin1()).toStdString());
}

}  // namespace

RecoveryLock::RecoveryLock(const QString& copy)
    : file_(::open(pathOf(copy + kLockSuffix).c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600)) {
  if (file_ < 0)
    state_ = State::Impossible;
  else if (::flock(file_, LOCK_EX | LOCK_NB) == 0)
    state_ = State::Held;
  else
    state_ = errno == EWOULDBLOCK ? State::SomebodyElses : State::Impossible;
}

RecoveryLock::~RecoveryLock() {
  if (file_ >= 0) ::close(file_);
}

RecoveryCopy::RecoveryCopy(const Document& document, const QString& folder, QObject* parent)
    : QObject(parent),
      document_(document),
      path_(QDir(folder).filePath(QUuid::createUuid().toString(QUuid::WithoutBraces) + kSuffix)) {
  writer_.setMaxThreadCount(1);  // one after the other, in the order of the changes
  delay_.setSingleShot(true);
  delay_.setInterval(kDelayMs);
  connect(&delay_, &QTimer::timeout, this, &RecoveryCopy::write);
  const auto onChange = [this] {
    if (!document_.isModified())
      discard();
    else if (!delay_.isActive())
      delay_.start();
  };
  connect(&document_, &Document::changed, this, onChange);
  connect(&document_, &Document::titleChanged, this, onChange);
  // A folder that cannot be written is known before there is anything to lose.
  QDir().mkpath(folder);
  if (::access(pathOf(folder).c_str(), W_OK | X_OK) != 0) wrote(qt_error_string(errno));
}

RecoveryCopy::~RecoveryCopy() {
  discard();
}

void RecoveryCopy::write() {
  if (!document_.isModified()) return;
  QDir().mkpath(QFileInfo(path_).path());
  if (!lock_) lock_ = std::make_unique<RecoveryLock>(path_);
  writer_.clear();  // an older state that still waits for its turn is of no use
  // Also the text is made there: a profile may hold megabytes that this version knows nothing of.
  writer_.start([this, profile = document_.profile(), file = document_.file(), mark = document_.fileMark()] {
    const QByteArray bytes = copyOf(profile, file, mark);
    const auto problem = saveFile(pathOf(path_), {bytes.constData(), static_cast<std::size_t>(bytes.size())});
    onDisk_ = !problem;
    const QString why = problem ? QString::fromStdString(problem->given) : QString();
    QMetaObject::invokeMethod(this, [this, why] { wrote(why); });
  });
}

bool RecoveryCopy::writeNow() {
  delay_.stop();
  onDisk_ = false;
  write();
  writer_.waitForDone();
  return onDisk_;
}

void RecoveryCopy::wrote(const QString& why) {
  if (why == trouble_) return;
  trouble_ = why;
  if (!why.isEmpty()) emit troubled(why);
}

void RecoveryCopy::discard() {
  delay_.stop();
  writer_.clear();
  writer_.waitForDone();
  if (!lock_) return;  // nothing was written
  removeRecovery(path_);
  lock_.reset();
}

std::vector<Recovered> recoverable(const QString& folder) {
  std::vector<Recovered> found;
  const QDir dir(folder);
  for (const QString& name : dir.entryList({QLatin1Char('*') + kSuffix}, QDir::Files, QDir::Time)) {
    const QString path = dir.filePath(name);
    auto claim = std::make_shared<RecoveryLock>(path);
    if (claim->state() == RecoveryLock::State::SomebodyElses) continue;
    const auto text = readFile(pathOf(path), kLargestCopyBytes);
    if (!text) continue;
    const QJsonObject root = QJsonDocument::fromJson(QByteArray::fromStdString(*text)).object();
    auto profile = readProfile(root.value(key::kProfile).toString().toStdString());
    if (!profile) continue;
    found.push_back(
        {.copy = path,
         .originalFile = fileIn(root),
         .mark = markIn(root),
         .written = QDateTime::fromString(root.value(key::kWritten).toString(), Qt::ISODateWithMs),
         .profile = std::move(profile).value(),
         .claim = std::move(claim)});
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
