// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gmock/gmock.h>

#include <QApplication>
#include <QByteArray>
#include <QFileDialog>
#include <QLineEdit>
#include <QMessageBox>
#include <QProgressBar>
#include <QRect>
#include <QSettings>
#include <QString>
#include <QTest>
#include <QTimer>
#include <QWheelEvent>
#include <QWidget>
#include <algorithm>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <ostream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "core/bike/profile.h"
#include "tests/core/support.h"
#include "ui/document/document.h"
#include "ui/window/main_window.h"

inline void PrintTo(const QRect& rect, std::ostream* out) {
  *out << rect.width() << " x " << rect.height() << " at " << rect.x() << ", " << rect.y();
}
inline void PrintTo(const QByteArray& text, std::ostream* out) {
  *out << '"' << text.left(400).toStdString() << '"';
}
inline void PrintTo(const QString& text, std::ostream* out) {
  *out << '"' << text.toStdString() << '"';
}

namespace layshaft {

inline void PrintTo(const Profile& profile, std::ostream* out) {
  *out << "profile of " << profile.name;
}

}  // namespace layshaft

namespace layshaft::ui {

inline void PrintTo(const AxisRange& range, std::ostream* out) {
  *out << range.low << " to " << range.high << " by " << range.step;
}

}  // namespace layshaft::ui

namespace layshaft::test {

/// A profile from a minimal one, 16/43 on 180/55ZR17 with three gears, and values named by JSON pointer.
inline Profile bike(const std::vector<std::pair<std::string, Json>>& values = {}) {
  Json json = minimalProfile();
  for (const auto& [pointer, value] : values) json[Json::json_pointer(pointer)] = value;
  return profileFrom(json.dump());
}

inline Profile sampleBike(const std::string& name) {
  return profileFrom(contentsOf(sourceFolder() / "sample-profiles" / (name + ".bike.json")));
}

/// Whether two profiles are equal; if not, says what would turn the one into the other.
inline testing::AssertionResult same(const Profile& is, const Profile& wanted) {
  if (is == wanted) return testing::AssertionSuccess();
  const auto json = [](const Profile& profile) { return Json::parse(writeProfile(profile)); };
  return testing::AssertionFailure() << "not as wanted; what is missing: "
                                     << Json::diff(json(is), json(wanted));
}

inline Setup proposedSetup(const ui::Document& document) {
  return applied(document.profile().proposed, document.profile().stock);
}

/// Whether a control is called so, apart from the unit that may stand behind its name.
inline bool isNamed(const QWidget& control, const QString& name) {
  return control.accessibleName() == name || control.accessibleName().startsWith(name + ", ");
}

/// The control that screen readers call by that name; its unit may be left out.
template <class Control>
Control& control(const QWidget& parent, const QString& accessibleName) {
  for (auto* candidate : parent.findChildren<Control*>())
    if (candidate->accessibleName() == accessibleName) return *candidate;
  for (auto* candidate : parent.findChildren<Control*>())
    if (isNamed(*candidate, accessibleName)) return *candidate;
  throw std::runtime_error("no control named " + accessibleName.toStdString());
}

/// Shows a widget as the active window, as widgets must be to get keys.
inline void showActive(QWidget& window) {
  window.show();
  window.activateWindow();
  if (!QTest::qWaitForWindowActive(&window)) throw std::runtime_error("the window does not become active");
}

/// Gives the focus, selects what is there as tabbing into a field does, and types.
inline void typeInto(QWidget& field, const QString& text) {
  field.setFocus(Qt::TabFocusReason);
  QTest::keyClick(&field, Qt::Key_A, Qt::ControlModifier);
  QTest::keyClicks(&field, text);
}

/// Turns the wheel over a widget as the window system would: who does not want it passes it up.
inline void turnWheel(QWidget& over, int notches = 1) {
  for (QWidget* widget = &over; widget; widget = widget->isWindow() ? nullptr : widget->parentWidget()) {
    const QPointF middle = QRectF(widget->rect()).center();
    QWheelEvent event(middle, widget->mapToGlobal(middle), QPoint(), QPoint(0, 120 * notches), Qt::NoButton,
                      Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(widget, &event);
    if (event.isAccepted()) return;
  }
}

/// Waits until something is true; for what happens in a later frame.
inline bool soon(const std::function<bool()>& happened, int withinMs = 20000) {
  return QTest::qWaitFor(happened, withinMs);
}

/// Waits until nothing of a window moves any more: what is worked out beside it is there, and all of it has
/// its place. A loaded machine takes some frames for that.
inline void settle(const QWidget& window) {
  constexpr int kFrameMs = 40;
  const auto places = [&] {
    std::vector<QRect> all;
    for (const auto* widget : window.findChildren<QWidget*>())
      if (widget->isVisible()) all.emplace_back(widget->mapTo(&window, QPoint()), widget->size());
    return all;
  };
  const auto works = [&] {
    const auto bars = window.findChildren<QProgressBar*>();
    return std::any_of(bars.begin(), bars.end(), [](const QProgressBar* bar) { return bar->isVisible(); });
  };
  std::vector<QRect> before;
  soon([&] {
    QTest::qWait(kFrameMs);
    std::vector<QRect> now = places();
    const bool same = now == before;
    before = std::move(now);
    return same && !works();
  });
}

/// Answers the next dialog that blocks, and keeps what it said. Must outlive the call that opens the dialog.
class DialogAnswer {
 public:
  explicit DialogAnswer(std::function<void(QDialog&)> answer = [](QDialog& dialog) { dialog.reject(); })
      : answer_(std::move(answer)) {
    poll_.setInterval(5);
    QObject::connect(&poll_, &QTimer::timeout, &poll_, [this] {
      auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
      if (!dialog) return;
      poll_.stop();
      seen_ = true;
      if (auto* box = qobject_cast<QMessageBox*>(dialog)) said_ = box->text();
      answer_(*dialog);
    });
    poll_.start();
  }
  bool seen() const { return seen_; }
  const QString& said() const { return said_; }

 private:
  std::function<void(QDialog&)> answer_;
  QTimer poll_;
  QString said_;
  bool seen_ = false;
};

/// Types the name of a file into a file dialog: its own `selectFile` leaves a field alone that has the focus.
inline void typeFileName(QFileDialog& files, const QString& name) {
  auto* field = files.findChild<QLineEdit*>("fileNameEdit");
  if (!field) throw std::runtime_error("the file dialog has no field for the name");
  field->setText(name);
}

inline std::function<void(QDialog&)> press(QMessageBox::StandardButton button) {
  return [button](QDialog& dialog) { dynamic_cast<QMessageBox&>(dialog).button(button)->click(); };
}

/// A file to be whose name is no text. Qt's temporary folders do not see such a file and would leave it
/// behind.
struct OddFile {
  explicit OddFile(const QString& folder)
      : path(std::filesystem::path(folder.toStdString()) / "odd\xff\xfe.bike.json") {}
  OddFile(const OddFile&) = delete;
  OddFile& operator=(const OddFile&) = delete;
  ~OddFile() { std::filesystem::remove(path); }
  const std::filesystem::path path;
};

/// Forgets what earlier windows made the program remember.
struct FreshSettings {
  FreshSettings() { QSettings().clear(); }
};

/// A window on a bike at the smallest screen that must do, active, closed without questions at the end.
class Window {
 public:
  explicit Window(Profile profile) {
    QSettings().remove("window");  // how an earlier one was left
    window_ = std::make_unique<ui::MainWindow>(std::move(profile));
    window_->resize(1280, 720);
    showActive(*window_);
  }
  ui::MainWindow* operator->() const { return window_.get(); }
  ui::MainWindow& operator*() const { return *window_; }
  const Profile& profile() const { return window_->document().profile(); }

 private:
  std::unique_ptr<ui::MainWindow> window_;
};

}  // namespace layshaft::test
