// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/copy_tracks_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/editors/dialog_body.h"
#include "ui/words/plain_text.h"
#include "ui/words/track_words.h"

namespace layshaft::ui {

CopyTracksDialog::CopyTracksDialog(const std::vector<Track>& tracks, const QString& bike,
                                   const UnitsShown& units, QWidget* parent)
    : QDialog(parent), tracks_(tracks), list_(new QListWidget) {
  setWindowTitle(tr("Tracks From Another Bike"));
  auto* column = new QVBoxLayout(this);
  auto* body = new DialogBody;
  column->addWidget(body, 1);
  auto* label = new QLabel(tr("Tracks of “%1” to copy:").arg(bike));
  label->setTextFormat(Qt::PlainText);
  label->setWordWrap(true);
  label->setBuddy(list_);
  body->column().addWidget(label);
  list_->setAccessibleName(tr("Tracks to copy"));
  for (const Track& track : tracks_) {
    auto* item = new QListWidgetItem(
        tr("%1: %2, %3", "a track, its length and what it is made of")
            .arg(shownName(track.name), trackLengthText(trackLengthM(track), units), trackKindWords(track)),
        list_);
    item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
    item->setCheckState(Qt::Checked);
  }
  list_->setCurrentRow(0);
  body->column().addWidget(list_);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  QPushButton* copy = buttons->button(QDialogButtonBox::Ok);
  copy->setText(tr("Copy Tracks"));
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(list_, &QListWidget::itemChanged, copy, [this, copy] { copy->setEnabled(!chosen().empty()); });
  fitToScreen(*this);
}

std::vector<Track> CopyTracksDialog::chosen() const {
  std::vector<Track> chosen;
  for (std::size_t i = 0; i < tracks_.size(); ++i)
    if (list_->item(static_cast<int>(i))->checkState() == Qt::Checked) chosen.push_back(tracks_[i]);
  return chosen;
}

}  // namespace layshaft::ui
