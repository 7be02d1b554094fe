// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/drive_line.h"

#include <QApplication>
#include <QButtonGroup>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/charts/contrast.h"
#include "ui/editors/flow_layout.h"
#include "ui/editors/pin_menu.h"
#include "ui/editors/refusal_bubble.h"
#include "ui/editors/typed_ratio.h"
#include "ui/editors/whole_in_view.h"
#include "ui/words/field_table.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

/// Calls `edited` when the user has changed what an editor holds.
void whenEdited(QWidget* editor, const std::function<void()>& edited) {
  if (auto* whole = qobject_cast<QSpinBox*>(editor))
    QObject::connect(whole, &QSpinBox::valueChanged, editor, edited);
  else if (auto* decimal = qobject_cast<QDoubleSpinBox*>(editor))
    QObject::connect(decimal, &QDoubleSpinBox::valueChanged, editor, edited);
  else if (auto* choice = qobject_cast<QComboBox*>(editor))
    QObject::connect(choice, &QComboBox::activated, editor, edited);
  else if (auto* tyre = qobject_cast<TyreField*>(editor))
    QObject::connect(tyre, &TyreField::tyreTyped, editor, edited);
}

/// Calls `work` with the number box that an editor is, if it is one.
template <class Work>
void withNumberBox(QWidget* editor, const Work& work) {
  if (auto* whole = dynamic_cast<WholeBox*>(editor)) work(*whole);
  if (auto* decimal = dynamic_cast<DecimalBox*>(editor)) work(*decimal);
}

}  // namespace

DriveLine::DriveLine(Document& document, QWidget* parent)
    : QWidget(parent),
      strip_{.document = document,
             .report = [this](const std::optional<Problem>& problem) { report(problem); },
             .refuse = [this](QWidget& editor, const QString& why) { refuseSoon(editor, why); }} {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 4, 10, 4);
  column->setSpacing(2);
  stripWidget_ = new QWidget;
  flow_ = new FlowLayout(stripWidget_);
  flow_->setContentsMargins(0, 0, 0, 0);
  flow_->setSpacing(8);
  for (Section (*section)(Strip&) : {engineSection, gearboxSection, finalDriveSection, wheelSection})
    addGroup(section(strip_));
  stripScroll_ = new QScrollArea;
  stripScroll_->setFrameShape(QFrame::NoFrame);
  stripScroll_->setFocusPolicy(Qt::NoFocus);
  stripScroll_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  stripScroll_->setWidget(stripWidget_);
  stripScroll_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  stripWidget_->installEventFilter(this);
  connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
    if (now && stripWidget_->isAncestorOf(now)) showWhole(*stripScroll_, *now);
  });
  // Whatever else changes the bike, undo above all, is not to be taken back with what is being typed.
  connect(&strip_.document, &Document::changed, this, [this] {
    if (!editing_) forgetTyping();
  });
  column->addWidget(stripScroll_);
  column->addWidget(buildFoot());
  dressForSide();
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

bool DriveLine::event(QEvent* event) {
  if (event->type() == QEvent::LayoutRequest) fitStrip();
  if (event->type() == QEvent::ApplicationPaletteChange) dressForSide();
  return QWidget::event(event);
}

bool DriveLine::eventFilter(QObject* watched, QEvent* event) {
  // A station came, went or changed its size: the rows may break elsewhere.
  if (watched == stripWidget_ && event->type() == QEvent::LayoutRequest) fitStrip();
  return QWidget::eventFilter(watched, event);
}

void DriveLine::setOneRow(bool on) {
  if (std::exchange(oneRow_, on) != on) fitStrip();
}

void DriveLine::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fitStrip();
  if (QWidget* focused = stripWidget_->focusWidget(); focused && stripWidget_->isAncestorOf(focused))
    showWhole(*stripScroll_, *focused);
}

void DriveLine::fitStrip() {
  const QMargins margins = layout()->contentsMargins();
  const int room = width() - margins.left() - margins.right();
  const int wide = std::max({room, flow_->minimumSize().width(), oneRow_ ? flow_->rowWidth() : 0});
  const int high = flow_->neededHeight(wide);
  stripWidget_->resize(wide, high);
  stripScroll_->setFixedHeight(high +
                               (wide > room ? stripScroll_->horizontalScrollBar()->sizeHint().height() : 0));
}

void DriveLine::addGroup(Section section) {
  auto* widget = new QWidget;
  auto* column = new QVBoxLayout(widget);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(1);
  auto* row = new QHBoxLayout;
  row->setSpacing(4);
  column->addLayout(row);
  auto* sum = new QLabel;
  sum->setAlignment(Qt::AlignHCenter);
  column->addWidget(new SteadyPlace(sum));
  flow_->addWidget(widget);
  Group group{.section = std::move(section), .row = row, .sum = sum, .placed = {}};
  for (const Stop& stop : group.section.stops) place(group, stop);
  groups_.push_back(std::move(group));
}

void DriveLine::place(Group& group, Stop stop) {
  auto* station = new Station(stop.label, stop.explanation, stop.editor);
  nameAloud(stop);
  group.row->addWidget(station);
  const auto editing = [this, editor = stop.editor](const std::function<void()>& edit) {
    return [this, editor, edit] {
      edited_ = editor;
      editing_ = true;
      // What belonged to the value from before comes back with it.
      if (std::exchange(boxRefused_, false) && untyped_) strip_.document.takeBack(*untyped_);
      edit();
      editing_ = false;
    };
  };
  whenEdited(stop.editor, editing(stop.edit));
  if (auto* ratio = dynamic_cast<RatioBox*>(stop.editor)) ratio->whenTeethTyped(editing(stop.edit));
  if (stop.backToStock) connect(station, &Station::backToStock, this, editing(stop.backToStock));
  withNumberBox(stop.editor, [this, editor = stop.editor, name = stop.name()](auto& box) {
    box.whenBegun([this] {
      boxRefused_ = false;
      untyped_ = strip_.profile();
    });
    box.whenRefused([this, editor, name](const RefusedNumber& refused) {
      boxRefused_ = true;
      refuseSoon(*editor, refusedNumber(name, refused));
    });
  });
  // What was refused does not stay in a box that has been left.
  if (auto* box = qobject_cast<QAbstractSpinBox*>(stop.editor))
    connect(box, &QAbstractSpinBox::editingFinished, this, [this, box] { finishTyping(box); });
  group.placed.push_back({std::move(stop), station});
}

/// Its unit, which the label leaves to the tooltip, is part of the name that is read out.
void DriveLine::nameAloud(const Stop& stop) {
  const QString unit = stop.unit ? stop.unit(strip_.units) : QString();
  withNumberBox(stop.editor, [&unit](auto& box) { box.setUnit(unit); });
  const QString name = nameWithUnit(stop.name(), unit);
  if (stop.editor->accessibleName() != name) stop.editor->setAccessibleName(name);
}

void DriveLine::fitCount(Group& group, std::size_t count) {
  const std::size_t fixed = group.section.stops.size();
  if (group.placed.size() == fixed + count) return;
  while (group.placed.size() > fixed + count) {
    delete group.placed.back().station;
    group.placed.pop_back();
  }
  while (group.placed.size() < fixed + count) place(group, group.section.more(group.placed.size() - fixed));
  setTabOrder();
}

QWidget* DriveLine::buildFoot() {
  auto* foot = new QWidget;
  auto* row = new QHBoxLayout(foot);
  row->setContentsMargins(0, 0, 0, 0);
  title_ = new QLabel;
  QFont bold = title_->font();
  bold.setBold(true);
  title_->setFont(bold);
  auto* joined = new QHBoxLayout;
  joined->setSpacing(0);
  sides_ = new QButtonGroup(this);
  QPushButton* proposed = addSide(*joined, Side::Proposed, tr("Proposed"));
  proposed->setAccessibleName(tr("Edit the proposal"));
  proposed->setToolTip(tr("The drive line shows and changes the proposal; stock stays as it is."));
  proposed->setChecked(true);
  QPushButton* stock = addSide(*joined, Side::Stock, tr("Stock"));
  stock->setAccessibleName(tr("Edit stock"));
  stock->setToolTip(
      tr("The drive line shows and changes the stock setup, which proposals are compared with."));
  allBack_ = new QPushButton(tr("All Back to Stock"));
  allBack_->setToolTip(tr("Puts every proposed part back to stock."));
  connect(allBack_, &QPushButton::clicked, this, [this] { SetupEdits::clearProposal(strip_.document); });
  pins_ = new PinMenu(strip_.document, this);
  connect(pins_, &PinMenu::said, this, &DriveLine::say);
  auto* pins = new QPushButton(tr("Pins"));
  pins->setToolTip(tr("Keeps the proposal on the charts, or takes a pin off them."));
  auto* pinMenu = new QMenu(pins);
  connect(pinMenu, &QMenu::aboutToShow, this, [this, pinMenu] {
    pinMenu->clear();
    pinMenu->addAction(pins_->proposalAction());
    pinMenu->addSeparator();
    pins_->addUnpinning(*pinMenu);
  });
  pins->setMenu(pinMenu);
  message_ = new QLabel;
  message_->setWordWrap(false);
  message_->setTextFormat(Qt::PlainText);  // it may quote what a file holds
  message_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  message_->setAccessibleName(tr("Message"));
  row->addLayout(joined);
  row->addWidget(title_);
  row->addWidget(message_, 1);
  row->addWidget(pins);
  row->addWidget(allBack_);
  return foot;
}

QPushButton* DriveLine::addSide(QHBoxLayout& row, Side side, const QString& text) {
  auto* button = new QPushButton(text);
  button->setCheckable(true);
  sides_->addButton(button, static_cast<int>(side));
  row.addWidget(button);
  connect(button, &QPushButton::toggled, this, [this, side](bool on) {
    if (on) setSide(side);
  });
  return button;
}

/// Whoever edits stock sees it at the whole strip: title, ground and border. On the tinted ground what is
/// muted keeps its contrast by being less so.
void DriveLine::dressForSide() {
  const bool stock = strip_.side == Side::Stock;
  title_->setText(stock ? tr("Editing Stock") : tr("Editing the Proposal"));
  QPalette dress;  // nothing of its own: the program's
  if (stock) {
    const QPalette palette = QApplication::palette();
    const QColor ground = markedGround(palette);
    dress.setColor(QPalette::Window, ground);
    dress.setColor(QPalette::PlaceholderText, mutedText(palette.color(QPalette::WindowText), {ground}));
  }
  setPalette(dress);
  setAutoFillBackground(stock);
  update();
}

void DriveLine::paintEvent(QPaintEvent* event) {
  QWidget::paintEvent(event);
  if (strip_.side != Side::Stock) return;
  constexpr int kBorder = 2;
  QPainter painter(this);
  painter.setPen(QPen(focusColour(palette()), kBorder));
  painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

/// With the flow of power; the way back to stock comes right after what it takes back.
void DriveLine::setTabOrder() {
  QWidget* before = nullptr;
  for (const Group& group : groups_)
    for (const Placed& placed : group.placed) {
      if (before) QWidget::setTabOrder(before, placed.stop.editor);
      QWidget::setTabOrder(placed.stop.editor, placed.station->backButton());
      before = placed.station->backButton();
    }
}

void DriveLine::setSide(Side side) {
  if (side == strip_.side) return;
  strip_.side = side;
  sides_->button(static_cast<int>(side))->setChecked(true);
  dressForSide();
  refresh();
  emit sideChanged(side);
}

void DriveLine::show(const SharedPlan& plan, const UnitsShown& units) {
  plan_ = plan;
  strip_.units = units;
  refresh();
}

void DriveLine::refresh() {
  if (!plan_) return;
  const bool editsStock = strip_.side == Side::Stock;
  const Setup now = strip_.edits().current();
  const Shown shown{.engine = strip_.profile().bike.engine,
                    .now = now,
                    .stock = strip_.stock(),
                    .plan = *plan_,
                    .nowPlan = editsStock ? plan_->stock : plan_->proposed,
                    .units = strip_.units};
  for (Group& group : groups_) refreshGroup(group, shown);
  const bool proposes = !strip_.profile().proposed.changesNothing();
  if (allBack_->isEnabled() != proposes) allBack_->setEnabled(proposes);
}

void DriveLine::refreshGroup(Group& group, const Shown& shown) {
  if (group.section.moreCount) fitCount(group, group.section.moreCount(shown));
  for (const Placed& placed : group.placed) {
    nameAloud(placed.stop);
    if (placed.stop.editor != halfTyped_) placed.stop.show(shown);  // it stays as it is typed
    if (placed.stop.isThere) placed.station->setVisible(placed.stop.isThere(shown));
    const Under under = placed.stop.under(shown);
    if (under.note)
      placed.station->showNote(under.text);
    else
      placed.station->showStock(under.text, under.difference);
  }
  if (!group.section.sum) return;
  if (const QString sum = group.section.sum(shown.plan); group.sum->text() != sum) group.sum->setText(sum);
}

bool DriveLine::focusField(std::string_view key) {
  for (const Group& group : groups_)
    for (const Placed& placed : group.placed)
      if (key == placed.stop.field) {
        placed.stop.editor->setFocus(Qt::OtherFocusReason);
        return true;
      }
  return false;
}

void DriveLine::focusTeeth() {
  constexpr std::string_view kFrontTeeth = "front_teeth";
  for (const Group& group : groups_)
    for (const Placed& placed : group.placed)
      if (placed.stop.field == kFrontTeeth) placed.station->focusEditor();
}

void DriveLine::report(const std::optional<Problem>& problem) {
  halfTyped_ = nullptr;
  if (!problem) return say(QString());
  const QString why = spokenSentence(*problem);
  // A refused value must not stay in a box that is not being typed into.
  if (!qobject_cast<QAbstractSpinBox*>(focusWidget())) {
    refresh();
  } else {
    halfTyped_ = edited_;
    refusedWhy_ = why;
  }
  if (edited_)
    refuse(*edited_, why);
  else
    say(why);
}

/// What was refused at its end leaves nothing of itself, neither in the box nor in the bike: on the way to it
/// there were digits that had been taken.
void DriveLine::finishTyping(QWidget* editor) {
  const bool refused = halfTyped_ == editor;
  const QString why = refused ? refusedWhy_ : QString();
  const auto before = std::exchange(untyped_, std::nullopt);
  forgetTyping();
  if (refused && before) strip_.document.takeBack(*before);
  refresh();
  // With the value from before in its place, and the focus where it goes, the refusal is still to be read.
  if (!why.isEmpty()) refuseSoon(*editor, why);
}

void DriveLine::forgetTyping() {
  halfTyped_ = nullptr;
  refusedWhy_.clear();
  boxRefused_ = false;
  untyped_.reset();
}

void DriveLine::refuse(QWidget& editor, const QString& why) {
  auto& bubble = RefusalBubble::near(editor);
  bubble.say(editor, why, strip_.document);
  say(why);
  if (refusal_ == &bubble) return;
  refusal_ = &bubble;
  connect(&bubble, &RefusalBubble::dismissed, message_, [this](const QString& over) {
    if (message_->text() == over) say(QString());
  });
}

/// The value from before comes back first, as an edit that is fine.
void DriveLine::refuseSoon(QWidget& editor, const QString& why) {
  QTimer::singleShot(0, &editor, [this, &editor, why] { refuse(editor, why); });
}

void DriveLine::say(const QString& message) {
  message_->setText(message);
  message_->setToolTip(asMarkup(message));
}

}  // namespace layshaft::ui
