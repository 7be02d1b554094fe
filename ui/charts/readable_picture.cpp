// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/readable_picture.h"

#include <QAccessible>
#include <QAccessibleWidget>

namespace layshaft::ui {
namespace {

/// One thing without parts: what a chart's view is made of is of no use to who listens.
class ReadPicture : public QAccessibleWidget, public QAccessibleValueInterface {
 public:
  ReadPicture(QWidget* widget, const ReadablePicture& picture)
      : QAccessibleWidget(widget, picture.crosshairSpan() ? QAccessible::Chart : QAccessible::Graphic) {}

  void* interface_cast(QAccessible::InterfaceType type) override {
    if (type == QAccessible::ValueInterface && picture().crosshairSpan())
      return static_cast<QAccessibleValueInterface*>(this);
    return QAccessibleWidget::interface_cast(type);
  }
  int childCount() const override { return 0; }
  QAccessibleInterface* child(int) const override { return nullptr; }
  int indexOfChild(const QAccessibleInterface*) const override { return -1; }
  QAccessibleInterface* childAt(int, int) const override { return nullptr; }
  QString text(QAccessible::Text part) const override {
    return part == QAccessible::Value ? picture().crosshairWords() : QAccessibleWidget::text(part);
  }

  QVariant currentValue() const override {
    const auto at = picture().crosshairAt();
    return at ? QVariant(*at) : minimumValue();
  }
  void setCurrentValue(const QVariant& value) override { picture().moveCrosshair(value.toDouble()); }
  QVariant minimumValue() const override { return span().low; }
  QVariant maximumValue() const override { return span().high; }
  QVariant minimumStepSize() const override { return span().step; }

 private:
  ReadablePicture& picture() const { return dynamic_cast<ReadablePicture&>(*widget()); }
  ReadablePicture::CrosshairSpan span() const {
    return picture().crosshairSpan().value_or(ReadablePicture::CrosshairSpan{});
  }
};

QAccessibleInterface* readPictureOf(const QString&, QObject* object) {
  const auto* picture = dynamic_cast<ReadablePicture*>(object);
  return picture ? new ReadPicture(static_cast<QWidget*>(object), *picture) : nullptr;
}

}  // namespace

void exposeReadablePictures() {
  QAccessible::installFactory(readPictureOf);  // the same one twice is installed once
}

void tellMovedCrosshair(QWidget& picture) {
  const auto* read = dynamic_cast<ReadablePicture*>(&picture);
  if (!QAccessible::isActive() || !read || !read->crosshairAt()) return;
  QAccessibleValueChangeEvent event(&picture, *read->crosshairAt());
  QAccessible::updateAccessibility(&event);
}

}  // namespace layshaft::ui
