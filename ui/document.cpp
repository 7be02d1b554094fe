// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QSaveFile>
#include <QUndoCommand>

#include "core/profile_file.h"

namespace layshaft::ui {

/// One step of the history. A profile is a small plain value, so each step simply holds it before and after.
class ProfileEdit : public QUndoCommand {
 public:
  ProfileEdit(Document& document, EditName name, Profile after)
      : document_(document), name_(std::move(name)), before_(document.profile_), after_(std::move(after)) {
    describe();
  }

  void undo() override { document_.set(before_); }
  void redo() override { document_.set(after_); }

  // Any edit may meet any other; the field decides whether they are one.
  int id() const override { return 1; }
  bool mergeWith(const QUndoCommand* other) override {
    const auto* next = static_cast<const ProfileEdit*>(other);
    if (next->name_.field != name_.field) return false;
    after_ = next->after_;
    setObsolete(before_ == after_);
    describe();
    return true;
  }

 private:
  void describe() {
    const QString from = name_.shown ? name_.shown(before_) : QString();
    const QString to = name_.shown ? name_.shown(after_) : QString();
    setText(from == to ? name_.title : QStringLiteral("%1 %2 → %3").arg(name_.title, from, to));
  }

  Document& document_;
  EditName name_;
  Profile before_;
  Profile after_;
};

Document::Document(Profile profile, QObject* parent) : QObject(parent), profile_(std::move(profile)) {
  connect(&undo_, &QUndoStack::cleanChanged, this, &Document::titleChanged);
}

std::optional<Problem> Document::edit(const EditName& name, const std::function<void(Profile&)>& change) {
  Profile after = profile_;
  change(after);
  if (after == profile_) return std::nullopt;
  if (auto problem = conflictIn(after)) return problem;
  undo_.push(new ProfileEdit(*this, name, std::move(after)));
  return std::nullopt;
}

QString Document::title() const {
  const QString name = QString::fromStdString(profile_.name);
  return name.isEmpty() ? QFileInfo(file_).fileName() : name;
}

std::optional<QString> Document::save(const QString& file) {
  // Keep what a link points at, not the link.
  const QFileInfo info(file);
  if (info.exists() && !info.isFile()) return tr("is not a plain file");
  QSaveFile out(info.exists() ? info.canonicalFilePath() : info.isSymLink() ? info.symLinkTarget() : file);
  const std::string text = writeProfile(profile_);
  if (!out.open(QIODevice::WriteOnly) || out.write(text.data(), static_cast<qint64>(text.size())) < 0 ||
      !out.commit())
    return out.errorString();
  rememberFile(file);
  undo_.setClean();
  emit titleChanged();
  return std::nullopt;
}

bool Document::changedOutside() const {
  const QFileInfo now(file_);
  return !file_.isEmpty() && now.exists() && (now.lastModified() != fileTime_ || now.size() != fileSize_);
}

void Document::rememberFile(const QString& file) {
  file_ = file;
  const QFileInfo now(file);
  fileTime_ = now.lastModified();
  fileSize_ = now.size();
}

void Document::load(Profile profile, const QString& file) {
  rememberFile(file);
  undo_.clear();
  set(profile);
  emit titleChanged();
}

void Document::recover(Profile profile, const QString& file) {
  load(std::move(profile), file);
  undo_.resetClean();
  emit titleChanged();
}

void Document::set(const Profile& profile) {
  const bool renamed = profile.name != profile_.name;
  profile_ = profile;
  emit changed();
  if (renamed) emit titleChanged();
}

}  // namespace layshaft::ui
