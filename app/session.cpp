#include "app/session.h"

#include "app/ask.h"
#include "app/messages.h"
#include "core/document/bound_tiers.h"

#include <QApplication>

#include <algorithm>

namespace stemwright {

struct Session::Private {
    explicit Private(Plan plan) : history(plan), reckoner(std::move(plan)) {}

    History history;
    /// Asking it what an edit would do changes nothing that shows, so const callers may.
    mutable Reckoner reckoner;
    std::optional<std::vector<Finding>> findings;
    std::optional<Offer> offer;
    QString path;
    /// The plan was never the one on disk: saving alone makes it clean, no undo does.
    bool neverSaved = false;
};

Session::Session(Plan plan, QObject* parent) : QObject(parent), d(std::make_unique<Private>(std::move(plan))) {}
Session::~Session() = default;

const Plan& Session::plan() const {
    return d->history.plan();
}
const Figures& Session::figures() const {
    return d->reckoner.figures();
}

const std::vector<Finding>& Session::findings() const {
    if (!d->findings)
        d->findings = stemwright::findings(plan(), figures());
    return *d->findings;
}

Result<WhatIf> Session::whatIf(const Edit& edit) const {
    return d->reckoner.whatIf(edit);
}

std::optional<Edit> Session::agreed(const Edit& edit) const {
    const std::vector<BoundTier> touched = boundTouched(plan(), edit);
    if (touched.empty())
        return edit;
    switch (ask::aboutBoundTiers(QApplication::activeWindow(), boundTiersQuestion(plan(), touched))) {
    case ask::Answer::bindAgain: {
        Batch both = std::holds_alternative<Batch>(edit.what) ? std::get<Batch>(edit.what)
                                                              : Batch{Deed::several, {edit}};
        if (Plan after = plan(); apply(after, edit))
            for (Edit& mark : unbound(plan(), after))
                both.edits.push_back(std::move(mark));
        return Edit(std::move(both));
    }
    case ask::Answer::recordOnly:
        return edit;
    default:
        return std::nullopt;
    }
}

bool Session::make(const Edit& wanted) {
    const std::optional<Edit> asked = agreed(wanted);
    if (!asked) {
        Q_EMIT declined();
        return false;
    }
    const Edit& edit = *asked;
    const bool wasUnsaved = unsaved();
    const std::size_t before = d->history.steps();
    if (auto problem = d->history.make(edit)) {
        Q_EMIT failed(*problem);
        return false;
    }
    // An edit that changed nothing is not in the history, and nobody needs to hear of it.
    if (d->history.steps() == before)
        return true;
    Q_EMIT applied(edit);
    follow({reachOf(edit), false});
    if (wasUnsaved != unsaved() || std::holds_alternative<Set<About>>(edit.what))
        Q_EMIT documentChanged();
    return true;
}

bool Session::canUndo() const {
    return d->history.canUndo();
}
bool Session::canRedo() const {
    return d->history.canRedo();
}
const Edit* Session::toUndo() const {
    return canUndo() ? &d->history.toUndo() : nullptr;
}
const Edit* Session::toRedo() const {
    return canRedo() ? &d->history.toRedo() : nullptr;
}

void Session::undo() {
    if (!canUndo())
        return;
    Change change{reachOf(*toUndo()), false};
    const Edit& back = d->history.undo();
    Q_EMIT applied(back);
    follow(std::move(change));
    Q_EMIT documentChanged();
}

void Session::redo() {
    if (!canRedo())
        return;
    Change change{reachOf(*toRedo()), false};
    const Edit& forward = d->history.redo();
    Q_EMIT applied(forward);
    follow(std::move(change));
    Q_EMIT documentChanged();
}

void Session::open(Plan plan, const QString& path, bool saved) {
    d->history = History(std::move(plan));
    d->path = path;
    d->neverSaved = !saved;
    follow({{true, {}}, true});
    Q_EMIT documentChanged();
}

QString Session::path() const {
    return d->path;
}
bool Session::unsaved() const {
    return d->neverSaved || !d->history.clean();
}

void Session::markSaved(const QString& path) {
    d->path = path;
    d->neverSaved = false;
    d->history.markClean();
    Q_EMIT documentChanged();
}

const std::optional<Offer>& Session::offer() const {
    return d->offer;
}

void Session::showOffer(Offer offer) {
    d->offer = std::move(offer);
    Q_EMIT offerChanged();
}

void Session::takeOffer() {
    if (!d->offer)
        return;
    const Edit edit = d->offer->edit;
    make(edit); // drops the offer, as every edit does
}

void Session::dropOffer() {
    if (!d->offer)
        return;
    d->offer.reset();
    Q_EMIT offerChanged();
}

void Session::follow(Change change) {
    d->reckoner.follow(d->history.plan(), change.reach);
    d->findings.reset();
    dropOffer();
    Q_EMIT changed(change);
}

} // namespace stemwright
