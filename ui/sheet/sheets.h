// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDate>
#include <QString>
#include <array>
#include <optional>
#include <vector>

#include "core/bike/profile.h"
#include "core/plan.h"
#include "ui/sheet/blocks.h"
#include "ui/sheet/logo.h"
#include "ui/words/key_figures.h"
#include "ui/words/units_shown.h"

/// The sheets of a workshop: one page each, portrait. Need a QApplication, on any platform.
namespace layshaft::ui {

enum class SheetKind { Bench, PitCard, WorkOrder, Parts };
inline constexpr std::array kSheetKinds{SheetKind::Bench, SheetKind::PitCard, SheetKind::WorkOrder,
                                        SheetKind::Parts};

/// What the user's own shop puts at the head of its sheets.
struct Shop {
  QString line;
  std::optional<Logo> logo;
};

/// What all of them are made of.
struct SheetInput {
  Profile profile;
  SharedPlan plan;  ///< of that profile
  UnitsShown units;
  QDate day = {};  ///< none where it is not valid
  Shop shop = {};
  std::vector<Figure> picked = {};  ///< key figures; empty: the usual ones
};

QString sheetName(SheetKind kind);  ///< "Bench sheet"
QString sheetWord(SheetKind kind);  ///< the same in small letters, for the name of a file
BlockSheet makeSheet(SheetKind kind, const SheetInput& input);

/// Each of them, and what stands at the head of all.
Block sheetHead(const SheetInput& input, const QString& title);
Blocks benchSheet(const SheetInput& input);
Blocks pitCard(const SheetInput& input);
Blocks workOrderSheet(const SheetInput& input);
Blocks partsSheet(const SheetInput& input);

enum class PictureFormat { Png, Pdf };

/// Writes a sheet in that format. Nothing if it worked, else what went wrong.
std::optional<QString> writeSheet(const Sheet& sheet, PictureFormat format, const QPageSize& paper,
                                  QIODevice& out);

}  // namespace layshaft::ui
