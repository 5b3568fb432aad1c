#pragma once

#include "app/board/board_place.h"
#include "app/session.h"

#include <QString>
#include <QVector>

namespace stemwright {

/// What a drop would do, worked out while the thing is held over a place, and worded.
struct DropPreview {
    Place place;
    /// Nothing where the drop is forbidden; then `title` is the sentence that says why.
    std::optional<Edit> edit;
    std::vector<SlotRef> landed;
    QString title;
    /// Which tiers that are bound it would change, and that it asks first; empty where it changes none.
    QString warning;
    /// "drift 2.1 → 1.9", or "drift 2.1" where it stays.
    struct Figure {
        QString text;
        bool changes = false;
        /// It changes for the better: less drift, less unevenness, fewer faults. Heights are neither.
        bool better = false;
    };
    struct Line {
        QString who;
        QVector<Figure> parts;

        QString figures() const;
    };
    QVector<Line> lines;

    bool allowed() const { return edit.has_value(); }
    /// All of it as text, a line each.
    QString text() const;
};

/// Nothing for a place that takes no leaves.
std::optional<DropPreview> previewDrop(const Session& session, const Held& held, const Place& place);

/// "small leaf, Plum (P)", "tier 4 of Stem 2", "3 leaves".
QString heldText(const Plan& plan, const Held& held);

/// The figures of a what-if as lines: the stems it touches, then the pot.
QVector<DropPreview::Line> whatIfLines(const Plan& plan, const WhatIf& whatIf);

} // namespace stemwright
