// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/gear_words.h"

#include <QCoreApplication>
#include <array>

#include "core/limits.h"

namespace layshaft::ui {
namespace {

struct GearWords {
  Q_DECLARE_TR_FUNCTIONS(GearWords)
 public:
  static constexpr std::array<const char*, limits::kMostGears> kOrdinals{
      QT_TR_NOOP("1st"), QT_TR_NOOP("2nd"), QT_TR_NOOP("3rd"), QT_TR_NOOP("4th"), QT_TR_NOOP("5th"),
      QT_TR_NOOP("6th"), QT_TR_NOOP("7th"), QT_TR_NOOP("8th"), QT_TR_NOOP("9th"), QT_TR_NOOP("10th")};
};

}  // namespace

QString gearOrdinal(int gear) {
  return GearWords::tr(GearWords::kOrdinals.at(static_cast<std::size_t>(gear - 1)));
}

}  // namespace layshaft::ui
