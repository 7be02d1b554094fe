// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QString>
#include <QUndoStack>
#include <functional>
#include <optional>

#include "core/bike/profile.h"
#include "core/file.h"
#include "core/problem.h"

namespace layshaft::ui {

/// What an edit is called in the Edit menu: "Undo proposed rear teeth 43 → 45".
struct EditName {
  QString field;  ///< identifies the field: neighbouring edits of one field become one undo step
  QString title;  ///< "proposed rear teeth"
  std::function<QString(const Profile&)> shown;  ///< the field's value as people read it; may be empty
};

/// The open profile and its history. The only writer of the profile: every change is an edit with a name, an
/// edit that changes nothing leaves no trace, and one that would break a rule between values is refused.
class Document : public QObject {
  Q_OBJECT
 public:
  /// The history keeps at most so many steps, and of them only the newest that fit in so much memory.
  static constexpr int kMostSteps = 1000;
  static constexpr std::size_t kMostHistoryBytes = std::size_t{32} << 20;

  explicit Document(Profile profile, QObject* parent = nullptr);
  ~Document() override;

  const Profile& profile() const { return profile_; }
  QUndoStack& undoStack() { return undo_; }
  std::size_t historyBytes() const;

  /// Applies `change` to a copy of the profile and makes it the profile. Returns what is wrong if that is
  /// refused.
  std::optional<Problem> edit(const EditName& name, const std::function<void(Profile&)>& change);

  /// Goes back to the profile from before the edits of one field that were made last, as part of their step:
  /// a step that then changes nothing leaves the history.
  void takeBack(const Profile& before);
  /// Replaces everything, as one step of the history after which nothing is unsaved. `mark` is how the file
  /// was when it was read.
  void revert(const Profile& profile, const std::optional<FileMark>& mark);

  /// Whether the file is no longer as it was when it was loaded or saved here. A file that is gone is not
  /// changed.
  bool changedOutside() const;

  /// Empty while the document has never been saved. A name as `nameOf` makes it.
  const QString& file() const { return file_; }
  /// How the file was when it was loaded or saved here.
  const std::optional<FileMark>& fileMark() const { return mark_; }
  QString title() const;  ///< the bike's name
  bool isModified() const { return refilling_ || !undo_.isClean(); }

  /// Writes to `file` and makes it the document's file; nothing if it worked. Else the old file is as it was,
  /// and the document stays modified.
  std::optional<Problem> save(const QString& file);

  /// Replaces everything, with an empty history. `mark` is how the file was when it was read; now, if none is
  /// given.
  void load(Profile profile, const QString& file);
  void load(Profile profile, const QString& file, const std::optional<FileMark>& mark);

  /// Takes over work that was never saved: modified from the start. `mark` is how its file was when that work
  /// began: if it is otherwise by now, saving will ask.
  void recover(Profile profile, const QString& file, const std::optional<FileMark>& mark);

 signals:
  void loading();  ///< another profile is about to take the place of this one: what is half typed goes
  void changed();
  void titleChanged();

 private:
  friend class ProfileEdit;
  void set(Profile profile);
  void rememberFile(const QString& file);
  void boundHistory();

  Profile profile_;
  QUndoStack undo_;
  QString file_;
  std::optional<FileMark> mark_;
  bool refilling_ = false;  ///< steps that are put on the stack anew change nothing, nor what is saved
};

}  // namespace layshaft::ui
