// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "core/bike/track.h"
#include "core/problem.h"
#include "ui/document/document.h"
#include "ui/words/units_shown.h"

class QBoxLayout;
class QCheckBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QStackedWidget;

namespace layshaft::ui {

class CurvaturePreview;
class DecimalBox;
class SegmentsEditor;
class TrackList;
class TrackPreview;

/// The bike's tracks: a list of them, and of the one that is looked at its name, its segments or its recorded
/// line, and its map.
class TracksEditor : public QWidget {
  Q_OBJECT
 public:
  explicit TracksEditor(Document& document, QWidget* parent = nullptr);

  void refresh(const UnitsShown& units);
  /// Adds tracks, looks at the first of them, and says so.
  void add(const std::vector<Track>& tracks);

  /// As narrow as its parts are one below the other.
  QSize minimumSizeHint() const override;

 signals:
  void importWanted();
  void anotherBikeWanted();
  void exportWanted(std::size_t track);
  void said(const QString& what);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  /// What is in the picture.
  struct Drawn {
    std::optional<Track> track;
    UnitsShown units;
    bool operator==(const Drawn&) const = default;
  };
  void followList();
  QWidget* makeTrack();
  void addFields(QFormLayout& form);
  void added(std::size_t first, const std::optional<Problem>& problem);
  void make();
  void duplicate();
  void remove();
  void ride();
  void rename();
  void setStartSpeed();
  void report(const std::optional<Problem>& problem, const QString& done);
  void showTrack();
  void showStart(const Track& shown);
  void draw(const Track* now);
  std::optional<std::size_t> current() const;
  const Track* track() const;

  Document& document_;
  UnitsShown units_;
  QBoxLayout* parts_;  ///< list and track, side by side where there is room
  TrackList* list_;
  QWidget* shown_ = nullptr;  ///< all of the track that is looked at
  QLineEdit* name_;
  QCheckBox* closed_;
  DecimalBox* startSpeed_;
  QLabel* startLabel_;
  QStackedWidget* made_;  ///< of segments, or of a recorded line
  SegmentsEditor* segments_;
  QLabel* complaints_;
  QLabel* path_;
  CurvaturePreview* curvature_;
  QLabel* shape_;
  TrackPreview* map_;
  std::optional<Drawn> drawn_;
};

}  // namespace layshaft::ui
