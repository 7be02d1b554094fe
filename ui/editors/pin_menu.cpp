// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/pin_menu.h"

#include "core/bike/pair.h"
#include "ui/document/setup_edits.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {

PinMenu::PinMenu(Document& document, QObject* parent)
    : QObject(parent), document_(document), proposal_(new QAction(this)) {
  proposal_->setShortcut(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P));
  connect(proposal_, &QAction::triggered, this, &PinMenu::toggle);
  connect(&document_, &Document::changed, this, &PinMenu::refresh);
  refresh();
}

std::optional<std::size_t> PinMenu::pinOfProposal() const {
  const Profile& profile = document_.profile();
  const Setup proposed = applied(profile.proposed, profile.stock);
  const auto pins = pinnedPairs(profile);
  const auto pin = pinOn(pins, proposed.frontTeeth.count(), proposed.rearTeeth.count());
  return pin && pins[*pin].asProposed ? pin : std::nullopt;
}

void PinMenu::refresh() {
  const auto pin = pinOfProposal();
  proposal_->setText(pin ? tr("&Unpin the Proposal") : tr("&Pin the Proposal"));
  // Stock is on every chart as it is.
  proposal_->setEnabled(pin || !document_.profile().proposed.changesNothing());
}

void PinMenu::toggle() {
  if (const auto pin = pinOfProposal()) {
    SetupEdits::removePin(document_, *pin);
    return;
  }
  const Profile& profile = document_.profile();
  const Setup proposed = applied(profile.proposed, profile.stock);
  const int front = proposed.frontTeeth.count(), rear = proposed.rearTeeth.count();
  const QString name = pairText(front, rear);
  const auto why = SetupEdits::pin(document_, name, front, rear);
  emit said(why.value_or(tr("%1 is pinned to the charts.").arg(name)));
}

void PinMenu::addUnpinning(QMenu& menu) {
  const auto& pins = document_.profile().pins;
  for (std::size_t i = 0; i < pins.size(); ++i) {
    QString name = shownName(pins[i].name);
    menu.addAction(tr("Unpin %1").arg(name.replace(QLatin1Char('&'), QStringLiteral("&&"))), this,
                   [this, i] { SetupEdits::removePin(document_, i); });
  }
}

}  // namespace layshaft::ui
