// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAction>
#include <QMenu>
#include <QObject>

#include "ui/document/document.h"

namespace layshaft::ui {

/// Pins the proposal, and takes pins off the charts: for every menu that offers it.
class PinMenu : public QObject {
  Q_OBJECT
 public:
  explicit PinMenu(Document& document, QObject* parent = nullptr);

  /// Pins the proposal, or unpins it where it is pinned; with its key.
  QAction* proposalAction() const { return proposal_; }
  /// Puts a way to unpin each pin into the menu.
  void addUnpinning(QMenu& menu);

 signals:
  void said(const QString& message);

 private:
  void refresh();
  void toggle();
  std::optional<std::size_t> pinOfProposal() const;

  Document& document_;
  QAction* proposal_;
};

}  // namespace layshaft::ui
