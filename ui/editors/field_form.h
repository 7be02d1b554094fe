// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFormLayout>
#include <QWidget>
#include <functional>
#include <optional>
#include <vector>

#include "core/limits.h"
#include "ui/document/document.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// The unit a number has in the profile.
enum class FileUnit { Plain, Millimetre, Metre, Kilogram, KilometrePerHour };

/// How a form names a number, and where it lives in the profile. `get` gives nothing where it is not given.
struct NumberField {
  QString label;
  QString explanation;
  FileUnit unit = FileUnit::Plain;
  Limit limit;
  int decimals = 0;
  QString whenMissing;  ///< what is used where it is not given, for example "0.90"
  std::function<std::optional<double>(const Profile&)> get;
  std::function<void(Profile&, std::optional<double>)> set;
};

struct ChoiceField {
  QString label;
  QString explanation;
  QStringList choices;  ///< the first stands for "not given"
  std::function<int(const Profile&)> get;
  std::function<void(Profile&, int)> set;
};

/// A few whole numbers in one line, separated by blanks or commas.
struct ListField {
  QString label;
  QString explanation;
  Limit limit;
  int most = 0;
  std::function<std::vector<int>(const Profile&)> get;
  std::function<void(Profile&, const std::vector<int>&)> set;
};

/// A form of labelled fields bound to the document: each edit is one undoable step, each change of the
/// document shows.
class FieldForm : public QWidget {
  Q_OBJECT
 public:
  explicit FieldForm(Document& document, QWidget* parent = nullptr);

  void addNumber(const NumberField& field);
  void addChoice(const ChoiceField& field);
  void addList(const ListField& field);
  void addHeading(const QString& text);
  void addText(const QString& label, const QString& explanation, bool multiline,
               const std::function<std::string&(Profile&)>& member, int longest);

  void refresh(const UnitsShown& units);

 signals:
  void refused(const QString& why);  ///< empty when the last edit was taken

 private:
  void addRow(const QString& name, const QString& explanation, QWidget* editor);
  void apply(const EditName& name, const std::function<void(Profile&)>& change);
  static std::optional<double> numberFor(const QString& text);

  Document& document_;
  QFormLayout* layout_;
  UnitsShown units_;
  std::vector<std::function<void()>> refreshers_;
};

}  // namespace layshaft::ui
