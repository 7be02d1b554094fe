// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/bike_details.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QTabWidget>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/bike/typical_bike.h"
#include "ui/editors/class_chooser.h"
#include "ui/editors/curve_editor.h"
#include "ui/editors/refusal_bubble.h"
#include "ui/editors/ride_fields.h"
#include "ui/editors/spares_editor.h"
#include "ui/words/cautions.h"
#include "ui/words/field_table.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {

namespace {

/// Whether what is being typed has a step of its own to take back, or to do again.
bool hasStep(const QObject& text, bool undo) {
  if (const auto* line = qobject_cast<const QLineEdit*>(&text))
    return undo ? line->isUndoAvailable() : line->isRedoAvailable();
  if (const auto* lines = qobject_cast<const QPlainTextEdit*>(&text))
    return undo ? lines->document()->isUndoAvailable() : lines->document()->isRedoAvailable();
  return false;
}

/// By how many tabs a key turns: one on, one back, or none.
int turnOf(const QKeyEvent& key) {
  if (!key.modifiers().testFlag(Qt::ControlModifier)) return 0;
  return key.key() == Qt::Key_PageDown || key.key() == Qt::Key_Tab     ? 1
         : key.key() == Qt::Key_PageUp || key.key() == Qt::Key_Backtab ? -1
                                                                       : 0;
}

}  // namespace

BikeDetails::BikeDetails(Document& document, QWidget* parent)
    : QDockWidget(parent), document_(document), tabs_(new QTabWidget), message_(new QLabel) {
  setWindowTitle(tr("Bike Details"));
  setObjectName(QStringLiteral("bike_details"));  // its place is remembered by that
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);  // it quotes what was typed
  message_->hide();                        // takes room only when there is something to say
  tabs_->setUsesScrollButtons(true);
  tabs_->setDocumentMode(true);
  auto* content = new QWidget;
  auto* column = new QVBoxLayout(content);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(tabs_, 1);
  column->addWidget(message_);
  setWidget(content);
  buildBikeAndEngine();
  buildChassisAndTyre();
  buildChainRun();
  buildSprockets();
  buildRide();
  buildSparesBox();
  addList();
  connect(&document_, &Document::changed, this, [this] {
    if (isVisible()) refresh(units_);
  });
  for (QWidget* text : findChildren<QWidget*>())
    if (qobject_cast<QPlainTextEdit*>(text) ||
        (qobject_cast<QLineEdit*>(text) && !qobject_cast<QAbstractSpinBox*>(text->parent())))
      text->installEventFilter(this);
  // When things have settled: a page that is turned away hands the focus on before the next one takes it.
  connect(
      qApp, &QApplication::focusChanged, this, [this] { noteFocus(); }, Qt::QueuedConnection);
  connect(this, &QDockWidget::topLevelChanged, this, &BikeDetails::keepFocus);
  resize(840, 620);
}

/// Of all the tabs, which a narrow dock has no room for.
void BikeDetails::addList() {
  auto* list = new QToolButton;
  list->setText(tr("All"));
  list->setAutoRaise(true);
  list->setAccessibleName(tr("All parts of Bike Details"));
  list->setToolTip(list->accessibleName());
  list->setPopupMode(QToolButton::InstantPopup);
  auto* menu = new QMenu(list);
  for (int i = 0; i < tabs_->count(); ++i)
    menu->addAction(tabs_->tabText(i), this, [this, i] {
      tabs_->setCurrentIndex(i);
      takeFocus();
    });
  list->setMenu(menu);
  tabs_->setCornerWidget(list);
}

void BikeDetails::addPage(QWidget* page, const QString& title) {
  auto* scroll = new QScrollArea;
  scroll->setWidget(page);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  tabs_->addTab(scroll, title);
}

FieldForm* BikeDetails::addForm(const QString& title, const QString& heading) {
  auto* form = new FieldForm(document_);
  if (!heading.isEmpty()) form->addHeading(heading);
  // Where there is no room for both, a field goes below its label.
  auto* rows = static_cast<QFormLayout*>(form->layout());
  rows->setRowWrapPolicy(QFormLayout::WrapLongRows);
  rows->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
  addPage(form, title);
  connect(form, &FieldForm::refused, this, [this](const QString& why) {
    // What is said beside its field needs no line that makes room for itself.
    say(RefusalBubble::near(*this).isVisible() ? QString() : why);
  });
  forms_.push_back(form);
  return form;
}

void BikeDetails::buildBikeAndEngine() {
  addForm(tr("Bike"), QString())->addFields({"name", "customer", "notes", "cruise_speed_kmh"});
  addForm(tr("Engine"), tr("The torque curve and what belongs to it."))
      ->addFields({"bike.engine.idle_rpm", "bike.engine.rotating_inertia_kgm2",
                   "bike.engine.curve_measured_at", "bike.engine.curve_estimated",
                   "bike.engine.curve_air.temperature_c", "bike.engine.curve_air.pressure_hpa",
                   "bike.engine.curve_air.humidity_percent", "bike.engine.torque_follows_air"});
  curve_ = new CurveEditor(document_);
  addPage(curve_, tr("Torque Curve"));
  connect(curve_, &CurveEditor::said, this, &BikeDetails::say);
}

void BikeDetails::buildChassisAndTyre() {
  FieldForm* chassis = addForm(
      tr("Chassis"),
      tr("Unlocks pull, top speed and acceleration. The centre of gravity is with the rider seated."));
  class_ = new ClassChooser(openWord(*fieldRow("bike.class")));
  chassis->addEditor("bike.class", class_);
  connect(class_, &QComboBox::activated, this, &BikeDetails::takeTypical);
  chassis->addFields({"bike.chassis.mass_kg", "bike.chassis.rider_mass_kg", "bike.chassis.wheelbase_mm",
                      "bike.chassis.cg_height_mm", "bike.chassis.cg_ahead_of_rear_axle_mm",
                      "bike.chassis.drag_area_m2", "bike.chassis.drag_height_mm",
                      "bike.chassis.rolling_resistance", "bike.chassis.rolling_resistance_form",
                      "bike.chassis.tyre_pressure_bar", "bike.chassis.drivetrain_efficiency",
                      "bike.chassis.front_wheel_inertia_kgm2", "bike.chassis.rear_wheel_inertia_kgm2",
                      "bike.chassis.front_rollout_mm", "bike.chassis.tyre_grip",
                      "bike.chassis.shift_time_s"});
  FieldForm* tyre = addForm(tr("Tyre"), tr("The stock setup's tyre, beyond its size."));
  tyre->addFields({"stock.rollout_mm", "stock.rolling_allowance_percent", "stock.tread_wear_mm",
                   "stock.crown_radius_mm", "stock.growth_per_kmh2"});
  tyre->addHeading(tr("Proposed, where it differs."));
  tyre->addFields({"proposed.rollout_mm", "proposed.rolling_allowance_percent", "proposed.tread_wear_mm",
                   "proposed.crown_radius_mm", "proposed.growth_per_kmh2"});
}

void BikeDetails::takeTypical() {
  const auto chosen = class_->chosen();
  const auto before = typicalFields(document_.profile().bike, document_.profile().typical);
  const auto refused = document_.edit(
      {.field = QStringLiteral("bike.class"), .title = tr("Take Over Typical Values"), .shown = {}},
      [&](Profile& profile) { takeTypicalValues(profile, chosen); });
  if (refused) return say(spokenSentence(*refused));
  QStringList taken;
  for (const TypicalField& field : typicalFields(document_.profile().bike, document_.profile().typical))
    taken << fieldName(field.key);
  if (!taken.isEmpty())
    say(tr("Typical values, to be replaced by your own: %1.").arg(taken.join(tr(", ", "between fields"))));
  else if (chosen)
    say(tr("All that is known of the class is given already: nothing was changed."));
  else
    say(before.empty() ? QString() : tr("The typical values are taken out again."));
}

void BikeDetails::buildChainRun() {
  FieldForm* form = addForm(tr("Chain or Belt"), QString());
  form->addCaution(cautionText(Caution::Hands, false));
  form->addFields({"bike.chain_run.centre_distance_mm", "bike.chain_run.adjuster_forward_mm",
                   "bike.chain_run.adjuster_back_mm", "bike.chain_run.adjuster_mark_mm",
                   "bike.chain_run.largest_front_teeth", "bike.chain_run.smallest_front_teeth",
                   "bike.chain_run.largest_rear_teeth", "bike.chain_run.smallest_rear_teeth",
                   "bike.chain_run.tensile_strength_kn", "bike.chain_run.swingarm_length_mm",
                   "bike.chain_run.swingarm_angle_deg", "bike.chain_run.countershaft_ahead_of_pivot_mm",
                   "bike.chain_run.countershaft_above_pivot_mm"});
  form->addFields({"stock.final_drive", "stock.chain_size", "stock.chain_kind", "stock.links",
                   "stock.chain_elongation_percent", "stock.belt_pitch_mm", "stock.belt_teeth",
                   "bike.chain_run.belt_lengths_teeth"});
  form->addHeading(tr("Wear and slack, by the bike's own manual."));
  form->addFields({"wear.limit_percent", "wear.slack_posture", "wear.use_unit", "wear.chain_fitted_at"});
  form->addHeading(tr("Proposed, where it differs."));
  form->addFields({"proposed.final_drive", "proposed.chain_size", "proposed.chain_kind", "proposed.links",
                   "proposed.chain_elongation_percent", "proposed.belt_pitch_mm", "proposed.belt_teeth"});
}

void BikeDetails::buildSprockets() {
  FieldForm* form =
      addForm(tr("Sprockets or Pulleys"),
              tr("Stock. Weighed masses count in pull and acceleration; estimates are only shown."));
  form->addFields({"stock.front_sprocket.size", "stock.front_sprocket.material",
                   "stock.front_sprocket.mass_kg", "stock.rear_sprocket.size", "stock.rear_sprocket.material",
                   "stock.rear_sprocket.mass_kg"});
  form->addHeading(
      tr("Proposed. Once one field of a proposed part is filled in, none of its fields follow stock."));
  form->addFields({"proposed.front_sprocket.size", "proposed.front_sprocket.material",
                   "proposed.front_sprocket.mass_kg", "proposed.rear_sprocket.size",
                   "proposed.rear_sprocket.material", "proposed.rear_sprocket.mass_kg"});
}

void BikeDetails::buildRide() {
  FieldForm* speedometer = addForm(tr("Speedometer"), QString());
  speedometer->addCaution(cautionText(Caution::GearboxSensor, false));
  speedometer->addFields({"bike.speedometer.sensor", "bike.speedometer.reads_high_percent"});
  FieldForm* form = addForm(tr("Ride"), tr("Where and how the bike is ridden."));
  addConditions(*form);
  addLaunchAndLean(*form);
  addDrive(*form);
  addRollOn(*form);
}

void BikeDetails::buildSparesBox() {
  spares_ = new SparesEditor(document_);
  addPage(spares_, tr("Spares Box"));
  connect(spares_, &SparesEditor::said, this, &BikeDetails::say);
}

void BikeDetails::showFieldsFor(std::string_view key) {
  noteFocus();
  if (key == "bike.engine.torque_curve") {
    lead(curve_);
    return curve_->focusFirstCell();
  }
  if (key == "spares_box.gear_pairs") return lead(spares_->gears());
  for (FieldForm* form : forms_)
    if (QWidget* editor = form->editorOf(key)) {
      form->reveal(key);
      return lead(editor);
    }
}

void BikeDetails::lead(QWidget* to) {
  for (int i = 0; i < tabs_->count(); ++i) {
    if (tabs_->widget(i) != to && !tabs_->widget(i)->isAncestorOf(to)) continue;
    tabs_->setCurrentIndex(i);
    if (auto* scroll = qobject_cast<QScrollArea*>(tabs_->widget(i))) {
      scroll->widget()->layout()->activate();
      scroll->ensureWidgetVisible(to);
      // And once more when the form has the height of a row that was hidden, or the dock its size.
      QTimer::singleShot(0, scroll, [scroll, to = QPointer(to)] {
        if (to) scroll->ensureWidgetVisible(to);
      });
    }
  }
  to->setFocus(Qt::OtherFocusReason);
}

void BikeDetails::refresh(const UnitsShown& units) {
  units_ = units;
  for (FieldForm* form : forms_) form->refresh(units);
  class_->show(document_.profile().bike.bikeClass);
  curve_->refresh(units);
  spares_->refresh(units);
}

void BikeDetails::noteFocus() {
  QWidget* focus = QApplication::focusWidget();
  hadFocus_ = focus && isAncestorOf(focus);
  if (focus) (hadFocus_ ? inside_ : outside_) = focus;
}

void BikeDetails::keepFocus() {
  if (!hadFocus_) return;
  QTimer::singleShot(0, this, [this, to = inside_, back = outside_] {
    activateWindow();
    if (to) to->setFocus(Qt::OtherFocusReason);
    outside_ = back;  // not what had the focus on the way
  });
}

bool BikeDetails::holdsFocus() const {
  const QWidget* focus = QApplication::focusWidget();
  return focus && isAncestorOf(focus);
}

void BikeDetails::takeFocus() {
  noteFocus();
  activateWindow();
  if (holdsFocus()) return;
  QWidget* to = inside_ && inside_->isVisibleTo(this) ? inside_.data() : tabs_->currentWidget();
  if (to == tabs_->currentWidget()) {
    const auto inside = to->findChildren<QWidget*>();
    const auto first = std::find_if(inside.begin(), inside.end(), [this](const QWidget* widget) {
      return (widget->focusPolicy() & Qt::TabFocus) && widget->isVisibleTo(this) && widget->isEnabled() &&
             !qobject_cast<const QScrollArea*>(widget);
    });
    if (first != inside.end()) to = *first;
  }
  to->setFocus(Qt::ShortcutFocusReason);
}

void BikeDetails::giveFocusBack() {
  noteFocus();
  if (outside_ && outside_->isVisible()) {
    outside_->activateWindow();
    outside_->setFocus(Qt::ShortcutFocusReason);
  } else {
    emit leftForNowhere();
  }
}

/// The keys that turn the window's pages turn the details' own ones while the focus is here.
bool BikeDetails::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && turnOf(static_cast<QKeyEvent&>(*event))) {
    event->accept();
    return true;
  }
  return QDockWidget::event(event);
}

void BikeDetails::keyPressEvent(QKeyEvent* event) {
  if (const int by = turnOf(*event)) {
    tabs_->setCurrentIndex((tabs_->currentIndex() + by + tabs_->count()) % tabs_->count());
    return takeFocus();
  }
  if (event->key() == Qt::Key_Escape && event->modifiers() == Qt::NoModifier) return giveFocusBack();
  QDockWidget::keyPressEvent(event);
}

bool BikeDetails::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride) {
    const auto& key = static_cast<QKeyEvent&>(*event);
    const bool undo = key.matches(QKeySequence::Undo), redo = key.matches(QKeySequence::Redo);
    // What is being typed comes first; then the document's history, which the window's menu has.
    if ((undo || redo) && !hasStep(*watched, undo)) {
      event->ignore();
      return true;
    }
  }
  return QDockWidget::eventFilter(watched, event);
}

void BikeDetails::closeEvent(QCloseEvent* event) {
  if (holdsFocus()) giveFocusBack();  // before it is lost to whatever comes next
  QDockWidget::closeEvent(event);
}

void BikeDetails::showEvent(QShowEvent* event) {
  QDockWidget::showEvent(event);
  say(spares_->complaint());  // what else was refused last time is not in the fields any more
}

void BikeDetails::say(const QString& message) {
  message_->setText(message);
  message_->setVisible(!message.isEmpty());
}

}  // namespace layshaft::ui
