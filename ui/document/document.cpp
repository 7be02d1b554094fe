// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/document.h"

#include <QFileInfo>
#include <QUndoCommand>
#include <vector>

#include "core/bike/profile_change.h"
#include "core/profile_file.h"
#include "ui/document/file_name.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {

/// One step of the history: what it changes, and how the field read before and after.
class ProfileEdit : public QUndoCommand {
 public:
  ProfileEdit(Document& document, const EditName& name, const Profile& after)
      : document_(document),
        name_(name),
        change_(document.profile_, after),
        from_(name.shown ? name.shown(document.profile_) : QString()),
        to_(name.shown ? name.shown(after) : QString()) {
    describe();
  }

  void undo() override {
    Profile profile = document_.profile_;
    change_.undo(profile);
    document_.set(std::move(profile));
  }
  void redo() override {
    if (document_.refilling_) return;
    Profile profile = document_.profile_;
    change_.redo(profile);
    document_.set(std::move(profile));
  }

  // Any edit may meet any other; the field decides whether they are one.
  int id() const override { return 1; }
  bool mergeWith(const QUndoCommand* other) override {
    const auto* next = static_cast<const ProfileEdit*>(other);
    if (document_.refilling_ || next->name_.field != name_.field) return false;
    change_ = change_.followedBy(next->change_);
    to_ = next->to_;
    setObsolete(change_.changesNothing());
    describe();
    return true;
  }

  const EditName& name() const { return name_; }
  std::size_t bytes() const { return change_.bytes() + sizeof *this; }
  /// The same step once more, for another stack.
  ProfileEdit* again() const {
    auto* copy = new ProfileEdit(document_, name_, document_.profile_);
    copy->change_ = change_;
    copy->from_ = from_;
    copy->to_ = to_;
    copy->describe();
    return copy;
  }

 private:
  void describe() {
    setText(from_ == to_ ? name_.title : QStringLiteral("%1 %2 → %3").arg(name_.title, from_, to_));
  }

  Document& document_;
  EditName name_;
  ProfileChange change_;
  QString from_, to_;
};

namespace {

const ProfileEdit& editAt(const QUndoStack& stack, int index) {
  return *static_cast<const ProfileEdit*>(stack.command(index));
}

}  // namespace

Document::Document(Profile profile, QObject* parent) : QObject(parent), profile_(std::move(profile)) {
  undo_.setUndoLimit(kMostSteps);
  connect(&undo_, &QUndoStack::cleanChanged, this, &Document::titleChanged);
}

// The history says that it is clean when it goes; by then nobody may ask this any more.
Document::~Document() {
  undo_.disconnect(this);
}

std::optional<Problem> Document::edit(const EditName& name, const std::function<void(Profile&)>& change) {
  Profile after = profile_;
  change(after);
  if (after == profile_) return std::nullopt;
  if (auto problem = conflictIn(after)) return problem;
  undo_.push(new ProfileEdit(*this, name, after));
  boundHistory();
  return std::nullopt;
}

void Document::takeBack(const Profile& before) {
  if (before == profile_ || undo_.index() == 0) return;
  undo_.push(new ProfileEdit(*this, editAt(undo_, undo_.index() - 1).name(), before));
}

void Document::revert(const Profile& profile, const std::optional<FileMark>& mark) {
  if (profile != profile_) {
    emit loading();
    const EditName name{.field = QStringLiteral("revert"), .title = tr("revert to saved"), .shown = {}};
    undo_.push(new ProfileEdit(*this, name, profile));
    boundHistory();
  }
  mark_ = mark;
  undo_.setClean();
  emit titleChanged();
}

std::size_t Document::historyBytes() const {
  std::size_t bytes = 0;
  for (int i = 0; i < undo_.count(); ++i) bytes += editAt(undo_, i).bytes();
  return bytes;
}

void Document::boundHistory() {
  if (historyBytes() <= kMostHistoryBytes) return;
  // The stack cannot drop its oldest steps: the newest half goes on an empty one.
  int first = undo_.count();
  for (std::size_t bytes = 0; first > 1; --first) {
    bytes += editAt(undo_, first - 1).bytes();
    if (bytes > kMostHistoryBytes / 2) break;
  }
  std::vector<QUndoCommand*> kept;
  for (int i = first; i < undo_.count(); ++i) kept.push_back(editAt(undo_, i).again());
  const int clean = undo_.cleanIndex() - first;
  refilling_ = true;
  undo_.clear();
  if (clean != 0) undo_.resetClean();
  for (std::size_t i = 0; i < kept.size(); ++i) {
    undo_.push(kept[i]);
    if (clean == static_cast<int>(i) + 1) undo_.setClean();
  }
  refilling_ = false;
  emit titleChanged();
}

QString Document::title() const {
  const QString name = shownName(profile_.name);
  return name.isEmpty() ? shownFile(QFileInfo(file_).fileName()) : name;
}

std::optional<Problem> Document::save(const QString& file) {
  if (auto problem = saveProfile(profile_, pathOf(file))) return problem;
  rememberFile(file);
  undo_.setClean();
  emit titleChanged();
  return std::nullopt;
}

bool Document::changedOutside() const {
  if (file_.isEmpty()) return false;
  const auto now = markOf(pathOf(file_));
  return now && now != mark_;
}

void Document::rememberFile(const QString& file) {
  file_ = file;
  mark_ = file.isEmpty() ? std::nullopt : markOf(pathOf(file));
}

void Document::load(Profile profile, const QString& file) {
  load(std::move(profile), file, file.isEmpty() ? std::nullopt : markOf(pathOf(file)));
}

void Document::load(Profile profile, const QString& file, const std::optional<FileMark>& mark) {
  file_ = file;
  mark_ = mark;
  undo_.clear();
  undo_.setClean();  // an empty history of recovered work is not clean by itself
  emit loading();
  set(std::move(profile));
  emit titleChanged();
}

void Document::recover(Profile profile, const QString& file, const std::optional<FileMark>& mark) {
  load(std::move(profile), file, mark);
  undo_.resetClean();
  emit titleChanged();
}

void Document::set(Profile profile) {
  const bool renamed = profile.name != profile_.name;
  profile_ = std::move(profile);
  emit changed();
  if (renamed) emit titleChanged();
}

}  // namespace layshaft::ui
