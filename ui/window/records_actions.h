// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>

#include "core/bike/record_list.h"
#include "core/study/parts_list.h"

namespace layshaft::ui {

class MainWindow;
class RecordsPage;

/// What the Records page asks for: forms, files, and the entries that come of them.
class RecordsActions : public QObject {
  Q_OBJECT
 public:
  RecordsActions(MainWindow& window, RecordsPage& page);

 private:
  void newService();
  void newTrackNote();
  void propose(std::size_t trackNote);
  void read();
  void write();

  MainWindow& window_;
};

/// Strikes an entry through, once a reason is given.
void strikeRecord(MainWindow& window, const RecordRef& entry);

/// After a proposal has become stock: offers to write down the work, with the parts that it took.
void offerServiceEntry(MainWindow& window, const PartsList& fitted);

}  // namespace layshaft::ui
