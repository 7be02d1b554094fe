// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFormLayout>
#include <QLabel>
#include <QWidget>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "core/limits.h"
#include "ui/document/document.h"
#include "ui/words/field_table.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// A form of labelled fields bound to the document: each edit is one undoable step, each change of the
/// document shows. What a field is called, how it is read, where it lives and what is allowed comes from its
/// key.
class FieldForm : public QWidget {
  Q_OBJECT
 public:
  explicit FieldForm(Document& document, QWidget* parent = nullptr);

  /// Adds the editor for a key of the field table.
  void addField(const char* key);
  void addFields(std::initializer_list<const char*> keys);
  /// Adds an editor of another kind, with the label and the help of its key.
  void addEditor(const char* key, QWidget* editor);
  void addHeading(const QString& text);
  /// Words that must be read before acting: as plain to see as the fields.
  void addCaution(const QString& text);

  /// The editor of a key; null if the form has none.
  QWidget* editorOf(std::string_view key) const;
  /// Shows the field of a key from now on, also if it does not apply to the bike.
  void reveal(std::string_view key);

  void refresh(const UnitsShown& units);

 signals:
  void refused(const QString& why);  ///< empty when the last edit was taken

 private:
  /// A field of the form: its row, what is allowed for it, and the key it has in the profile.
  struct Bound {
    const Field& field;
    FieldRule rule;

    std::string key(const Profile& profile) const;
    FieldValue value(const Profile& profile) const;
    QString label() const { return fieldLabel(field.key); }
  };

  QWidget* addNumber(const Bound& bound);
  QWidget* addChoice(const Bound& bound);
  QWidget* addList(const Bound& bound);
  QWidget* addLine(const Bound& bound);
  QWidget* addText(const Bound& bound);
  QLabel* addWords(const QString& text);
  void addRow(const Bound& bound, QWidget* editor);
  /// What is said below the editor of a field while its value is typical, not measured.
  QWidget* withTypicalMark(const Bound& bound, QWidget* row);
  void refuse(QWidget* editor, const QString& why);
  void apply(const Bound& bound, const FieldValue& value);
  void showWhatApplies();

  Document& document_;
  QFormLayout* layout_;
  UnitsShown units_;
  std::vector<std::function<void()>> refreshers_;
  std::map<std::string, QWidget*, std::less<>> editors_;
  std::map<std::string, QWidget*, std::less<>> rows_;  ///< what stands beside the label: editor and sketch
  std::set<std::string, std::less<>> revealed_;
};

}  // namespace layshaft::ui
