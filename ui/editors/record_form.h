// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QDateEdit>
#include <QDialog>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <optional>

#include "core/bike/records.h"
#include "core/limits.h"
#include "core/problem.h"

class QDialogButtonBox;
class QFormLayout;
class QLabel;

namespace layshaft::ui {

/// A small form for one entry of the records: says what is wrong under its fields, and cannot be accepted
/// until nothing is.
class RecordForm : public QDialog {
  Q_OBJECT
 protected:
  RecordForm(const QString& title, const QString& accept, QWidget* parent);

  QDateEdit* addDay(const QString& label, const Date& day);
  QLineEdit* addLine(const QString& label, const QString& text, const QString& tip = QString());
  QPlainTextEdit* addText(const QString& label, const QString& text, const QString& tip = QString());
  QComboBox* addChoice(const QString& label, const QStringList& choices, int chosen);
  /// A line of words without a field.
  QLabel* addWords(const QString& label, const QString& words);
  void addRow(const QString& label, QWidget* field);

  static Date dayOf(const QDateEdit& field);
  static std::string textOf(const QLineEdit& field);
  static std::string textOf(const QPlainTextEdit& field);
  /// The number in a field; nothing where it is empty, or where it is wrong, which `complaint` then says.
  std::optional<double> numberOf(const QLineEdit& field, const Limit& limit, QString& complaint) const;
  /// The same of a whole number.
  std::optional<int> wholeOf(const QLineEdit& field, const Limit& limit, QString& complaint) const;
  /// What a field is called in front of a complaint.
  QString nameOf(const QWidget& field) const;
  void say(QString& complaint, const QWidget& field, const QString& what) const;

  /// What is wrong with what is in the fields; empty if nothing is.
  virtual QString complaint() const = 0;
  /// To be called once all fields are there.
  void begin();

 private:
  void check();

  QFormLayout* form_;
  QLabel* message_;
  QDialogButtonBox* buttons_;
};

}  // namespace layshaft::ui
