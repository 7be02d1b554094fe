// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDateTime>
#include <QObject>
#include <QString>
#include <QUndoStack>
#include <functional>
#include <optional>

#include "core/bike/profile.h"
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
  explicit Document(Profile profile, QObject* parent = nullptr);

  const Profile& profile() const { return profile_; }
  QUndoStack& undoStack() { return undo_; }

  /// Applies `change` to a copy of the profile and makes it the profile. Returns what is wrong if that is
  /// refused.
  std::optional<Problem> edit(const EditName& name, const std::function<void(Profile&)>& change);

  /// Whether the file is no longer as it was when it was loaded or saved here. A file that is gone is not
  /// changed.
  bool changedOutside() const;

  /// Empty while the document has never been saved.
  const QString& file() const { return file_; }
  QString title() const;  ///< the bike's name
  bool isModified() const { return !undo_.isClean(); }

  /// Writes to `file` and makes it the document's file; nothing if it worked, else what the system said. The
  /// old file stays whole until the new one is.
  std::optional<QString> save(const QString& file);

  /// Replaces everything, with an empty history.
  void load(Profile profile, const QString& file);

  /// Takes over work that was never saved: modified from the start.
  void recover(Profile profile, const QString& file);

 signals:
  void changed();
  void titleChanged();

 private:
  friend class ProfileEdit;
  void set(const Profile& profile);
  void rememberFile(const QString& file);

  Profile profile_;
  QUndoStack undo_;
  QString file_;
  QDateTime fileTime_;
  qint64 fileSize_ = 0;
};

}  // namespace layshaft::ui
