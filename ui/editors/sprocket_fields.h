// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/editors/field_form.h"

namespace layshaft::ui {

/// Stock's chain or belt: size and length, wear, pitch.
void addStockLoop(FieldForm& form);

/// What the proposal may have of its own beside size and links.
void addProposedLoop(FieldForm& form);

/// What the four sprockets are cut for, made of and weigh: stock's two, then the proposal's.
void addSprockets(FieldForm& form);

}  // namespace layshaft::ui
