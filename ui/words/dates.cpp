// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/dates.h"

#include <QLocale>

namespace layshaft::ui {

Date coreDate(const QDate& day) {
  return Date::make(day.year(), day.month(), day.day()).value_or(Date());
}

QDate calendarDate(const Date& date) {
  return {date.year(), date.month(), date.day()};
}

QString shownDate(const Date& date) {
  QString form = QLocale().dateFormat(QLocale::ShortFormat);
  if (!form.contains(QLatin1String("yyyy"))) form.replace(QLatin1String("yy"), QLatin1String("yyyy"));
  return QLocale().toString(calendarDate(date), form);
}

}  // namespace layshaft::ui
