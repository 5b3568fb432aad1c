#include "app/board/card_tips.h"

#include "app/explanations.h"
#include "app/session.h"

#include <QCoreApplication>

#include <algorithm>

namespace stemwright {

FigureRef cardFigureAt(const QRectF& card, QPointF at, std::size_t stem, std::size_t wraps) {
    const double down = card.height() > 0 ? (at.y() - card.top()) / card.height() : 0;
    if (down < 0.22)
        return {FigureName::height, stem, 0};
    if (down < 0.46)
        return {FigureName::unevenness, stem, 0};
    if (down < 0.64)
        return {FigureName::drift, stem, 0};
    if (wraps == 0)
        return {FigureName::leafWire, stem, 0};
    return {FigureName::wrapToCut, stem, down < 0.82 ? 0 : std::min<std::size_t>(1, wraps - 1)};
}

QString cardTip(const Session& session, const QRectF& card, QPointF at, std::size_t stem) {
    const Plan& plan = session.plan();
    const Figures& all = session.figures();
    if (stem >= all.stems.size())
        return {};
    const FigureRef ref = cardFigureAt(card, at, stem, all.stems[stem].wraps.size());
    const Supplies none;
    QString tip = QStringLiteral("%1: %2\n%3")
                      .arg(figureTitle(plan, all, none, ref), figureValue(plan, all, none, ref),
                           explanationText(explain(plan, all, none, ref), plan.units));
    if (all.stems[stem].hold.moment > 0)
        tip += QStringLiteral("\n\n%1: %2").arg(figureName(FigureName::hold), holdText(all.stems[stem].hold));
    return tip;
}

} // namespace stemwright
