// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/bike/track.h"
#include "ui/document/document.h"
#include "ui/editors/columns_table.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// The segments of a track as a table that is typed row by row or pasted from a spreadsheet, in the units
/// shown. Every row that can be read is taken. One that cannot is named and stays in the table, to be mended,
/// also while another track is looked at; until then the segment that was in its place stays in the track.
class SegmentsEditor : public QWidget {
  Q_OBJECT
 public:
  explicit SegmentsEditor(Document& document, QWidget* parent = nullptr);

  /// Shows the segments of this track of the profile; none for no track.
  void edit(std::optional<std::size_t> track);
  void refresh(const UnitsShown& units);

  const QString& complaint() const { return complaint_; }  ///< what was said last
  ColumnsTable& table() { return *table_; }

 signals:
  void said(const QString& why);  ///< what is not understood, a line for each row; empty when all is

 private:
  /// Rows that could not be read yet, with the track as it was when they were typed.
  struct Draft {
    std::vector<QStringList> rows;
    std::vector<std::optional<TrackSegment>> inRow;
    std::vector<TrackSegment> written;
    UnitsShown units;
  };

  const Track* track() const;
  void nameColumns();
  PastedColumns arrange(const QString& text, int firstColumn);
  void read();
  void write(const std::vector<TrackSegment>& segments);
  void keepDraft();
  void forget();
  void say(const QStringList& lines);

  Document& document_;
  UnitsShown units_;
  ColumnsTable* table_;
  std::optional<std::size_t> track_;
  std::string name_;                                ///< of the track that is shown
  std::vector<std::optional<TrackSegment>> inRow_;  ///< what of the track each row stands for
  std::vector<TrackSegment> written_;               ///< the track as it was read last
  std::map<std::string, Draft> drafts_;             ///< of the tracks that are not shown, by name
  QString complaint_;
  QStringList pasteNotes_;  ///< what was passed over
  bool pasted_ = false;
  bool pending_ = false;  ///< the table holds rows that could not be read
  bool reading_ = false;  ///< what the user is typing stays as it is
  int step_ = 0;          ///< each edit of the table is a step of its own
};

}  // namespace layshaft::ui
