// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <QString>

class QLabel;
class QLineEdit;
class QPushButton;

namespace layshaft::ui {

/// Asks for the line and the logo at the head of the user's sheets. A file that is no picture is refused at
/// once.
class ShopDialog : public QDialog {
  Q_OBJECT
 public:
  explicit ShopDialog(QWidget* parent = nullptr);

  /// Keeps what is typed and chosen.
  void accept() override;
  /// Takes that file as the logo, or says why not; empty: no logo.
  void useLogo(const QString& file);

 private:
  void choose();

  QLineEdit* line_;
  QLabel* picture_;
  QLabel* message_;
  QPushButton* remove_;
  QString logo_;
};

}  // namespace layshaft::ui
