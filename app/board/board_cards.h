#pragma once

#include "core/figures/figures.h"
#include "core/plan/plan.h"

#include <QColor>
#include <QRectF>
#include <QString>
#include <QStringList>

#include <vector>

class QPainter;

namespace stemwright {

/// Part of a bar: a colour and how much of it there is.
struct BarPart {
    QColor colour;
    double amount = 0;
};

/// One layer of the binding on a card.
struct CardLength {
    WrapWith with{};
    QString words;  ///< what it is and how much to cut
    QString figure; ///< the same without the word, for a card that has room for a sign alone
};

/// What the card under a stem says, apart from how it is drawn, so that what is read aloud is the same.
struct StemCard {
    QString height;
    QString leaves;
    QString drift;
    QString driftNumber;
    bool driftHigh = false;
    /// A line for each layer of the binding; of the leaves' wire where nothing is bound around.
    std::vector<CardLength> lengths;
    QString lengthWords() const; ///< the lines as one
    std::vector<BarPart> held;
    std::vector<BarPart> fair;
};
StemCard cardOf(const Plan& plan, const StemFigures& figures);

/// The least and the usual size; narrower cards leave out what does not fit.
inline constexpr int cardHeight = 112;
/// Whether the lengths of all cards of that width have room for their words; else all show signs, so that cards
/// that stand side by side read alike.
bool lengthsFit(const std::vector<StemCard>& cards, double width);
void paintCard(QPainter& painter, const QRectF& rect, const StemCard& card, bool lengthsInWords = true);
/// The stem's name over its column; `locked` stems show so.
void paintHead(QPainter& painter, const QRectF& rect, const Stem& stem);

} // namespace stemwright
