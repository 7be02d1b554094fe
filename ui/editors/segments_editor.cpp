// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/segments_editor.h"

#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "core/limits.h"
#include "ui/document/track_list_edits.h"
#include "ui/editors/segment_rows.h"
#include "ui/words/problem_words.h"
#include "ui/words/segment_words.h"

namespace layshaft::ui {
namespace {

constexpr int kMostLines = 4;  // of complaints; the others come when these are mended

/// How the rows that have something are counted for the user, from 1.
std::vector<int> numbersOf(const ColumnsTable& table) {
  std::vector<int> numbers;
  for (int r = 0; r < table.rowCount(); ++r)
    for (int c = 0; c < table.columnCount(); ++c)
      if (const QTableWidgetItem* cell = table.item(r, c); cell && !cell->text().trimmed().isEmpty()) {
        numbers.push_back(r + 1);
        break;
      }
  return numbers;
}

}  // namespace

SegmentsEditor::SegmentsEditor(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      table_(new ColumnsTable(segmentTitles(units_), limits::kMostSegments)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(table_);
  table_->setAccessibleName(tr("Segments"));
  table_->horizontalHeader()->setMinimumSectionSize(6 * fontMetrics().averageCharWidth());
  table_->arrangePastesBy(
      [this](const QString& text, int firstColumn) { return arrange(text, firstColumn); });
  nameColumns();
  connect(table_, &ColumnsTable::refused, this, [this](const QString& why) { emit said(why); });
  connect(table_, &ColumnsTable::pasted, this, [this] { pasted_ = true; });
  connect(table_, &ColumnsTable::edited, this, &SegmentsEditor::read);
  connect(&document_, &Document::loading, this, [this] {
    drafts_.clear();
    forget();
  });
}

const Track* SegmentsEditor::track() const {
  const auto& tracks = document_.profile().tracks;
  return track_ && *track_ < tracks.size() ? &tracks[*track_] : nullptr;
}

void SegmentsEditor::nameColumns() {
  table_->setHorizontalHeaderLabels(segmentTitles(units_));
  constexpr int kAir = 14;  // px, beside the words
  QHeaderView& header = *table_->horizontalHeader();
  for (int c = 0; c < table_->columnCount(); ++c) {
    const auto column = static_cast<std::size_t>(c);
    table_->horizontalHeaderItem(c)->setToolTip(segmentHelp(column, units_));
    // Names take what is left.
    header.setSectionResizeMode(c, c == 0 ? QHeaderView::Stretch : QHeaderView::Interactive);
    if (c > 0)
      header.resizeSection(c, fontMetrics().horizontalAdvance(widestInSegments(column, units_)) + kAir);
  }
}

PastedColumns SegmentsEditor::arrange(const QString& text, int firstColumn) {
  ArrangedPaste paste = arrangedPaste(text, firstColumn, units_);
  pasteNotes_ = paste.notes;
  if (paste.columns.rows.empty())
    emit said(tr("Nothing that was pasted makes a row; the table is as it was."));
  return paste.columns;
}

void SegmentsEditor::read() {
  const bool pasted = std::exchange(pasted_, false);
  const QStringList notes = std::exchange(pasteNotes_, {});
  if (!track()) return;
  const auto rows = table_->rows();
  // What was pasted stands in no old segment's place.
  if (pasted && rows.size() != inRow_.size()) inRow_.clear();
  const auto read = readSegmentRows(rows, numbersOf(*table_), track()->segments, units_);
  std::vector<TrackSegment> segments;
  std::vector<std::optional<TrackSegment>> inRow;
  QStringList complaints;
  for (std::size_t r = 0; r < read.size(); ++r) {
    auto segment = read[r].segment;
    if (!segment) {
      segment = r < inRow_.size() ? inRow_[r] : std::nullopt;
      complaints << (segment
                         ? tr("%1; the track keeps what was there until corrected.").arg(read[r].complaint)
                         : tr("%1; left out until corrected.").arg(read[r].complaint));
    }
    if (segment) segments.push_back(*segment);
    inRow.push_back(std::move(segment));
  }
  inRow_ = std::move(inRow);
  pending_ = !complaints.isEmpty();
  write(segments);
  say(notes + complaints);
}

void SegmentsEditor::write(const std::vector<TrackSegment>& segments) {
  written_ = segments;
  reading_ = true;
  const auto problem = TrackListEdits(document_).setSegments(*track_, segments, ++step_);
  reading_ = false;
  if (!problem) return;
  pending_ = true;
  written_ = track()->segments;
  emit said(spokenSentence(*problem));
}

void SegmentsEditor::say(const QStringList& lines) {
  QStringList first = lines.mid(0, kMostLines);
  if (const auto more = static_cast<int>(lines.size() - first.size()); more > 0)
    first << tr("%n more rows are not understood.", nullptr, more);
  complaint_ = first.join(QLatin1Char('\n'));
  emit said(complaint_);
}

/// Nothing of what was typed is to be mended any more.
void SegmentsEditor::forget() {
  pending_ = false;
  if (!complaint_.isEmpty()) say({});
}

/// What is still to be mended of the track that is shown waits until it is shown again.
void SegmentsEditor::keepDraft() {
  if (pending_) drafts_[name_] = {table_->rows(), inRow_, written_, units_};
}

void SegmentsEditor::edit(std::optional<std::size_t> track) {
  const auto& tracks = document_.profile().tracks;
  const std::string name = track && *track < tracks.size() ? tracks[*track].name : std::string();
  if (track_ == track && name_ == name) return;
  // The same track under another name, or another one?
  const bool renamed = track_ == track && pending_ && this->track() && this->track()->segments == written_;
  track_ = track;
  if (renamed) {
    name_ = name;
    return;
  }
  keepDraft();
  name_ = name;
  forget();
  const auto draft = drafts_.find(name);
  if (draft != drafts_.end() && this->track() && this->track()->segments == draft->second.written) {
    units_ = draft->second.units;
    inRow_ = draft->second.inRow;
    written_ = draft->second.written;
    nameColumns();
    table_->showRows(draft->second.rows);
    drafts_.erase(draft);
    return read();
  }
  drafts_.erase(name);
  written_ = this->track() ? this->track()->segments : std::vector<TrackSegment>();
}

void SegmentsEditor::refresh(const UnitsShown& units) {
  if (reading_) return;
  const std::vector<TrackSegment> segments = track() ? track()->segments : std::vector<TrackSegment>();
  if (segments != written_) {  // undone
    forget();
    written_ = segments;
  }
  if (pending_)
    return;  // what is still to be mended is not written over, and stays in the unit it was typed in
  if (!(units == units_)) {
    units_ = units;
    nameColumns();
  }
  std::vector<QStringList> rows;
  for (const TrackSegment& segment : segments) rows.push_back(segmentCells(segment, units_));
  inRow_.assign(segments.begin(), segments.end());
  table_->showRows(rows);
}

}  // namespace layshaft::ui
