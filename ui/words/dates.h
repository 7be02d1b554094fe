// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDate>
#include <QString>

#include "core/date.h"

/// Days as the calendar of the desktop has them, and as they are written for people.
namespace layshaft::ui {

/// The core's day; the first it knows for one that it does not (before 1900, after 2999, none).
Date coreDate(const QDate& day);
QDate calendarDate(const Date& date);

/// In the desktop's short form, with all digits of the year.
QString shownDate(const Date& date);

}  // namespace layshaft::ui
