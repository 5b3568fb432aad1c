#include "app/leaves/leaf_preview.h"

#include "app/leaves/leaf_drawing.h"
#include "app/leaves/leaf_pictures.h"
#include "app/leaves/row_lines.h"
#include "app/look.h"
#include "app/session.h"
#include "app/wording.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stemwright {

LeafPreview::LeafPreview(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
    setObjectName(QStringLiteral("leafPreview"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    connect(&session_, &Session::changed, this, &LeafPreview::refresh);
    refresh();
}

void LeafPreview::setKind(KindId kind) {
    leaf_.kind = kind;
    refresh();
}

void LeafPreview::setMix(MixId mix) {
    leaf_.mix = mix;
    refresh();
}

void LeafPreview::markRow(MarkedRow row) {
    marked_ = row;
    update();
}

LeafLook LeafPreview::shownLook() const {
    const Plan& plan = session_.plan();
    return stemwright::find(plan, leaf_.kind) ? lookOf(plan, leaf_) : lookOfMix(plan, leaf_.mix);
}

void LeafPreview::refresh() {
    const Plan& plan = session_.plan();
    if (!stemwright::find(plan, leaf_.kind))
        leaf_.kind = plan.kinds.empty() ? KindId{} : plan.kinds.front().id;
    if (!stemwright::find(plan, leaf_.mix))
        leaf_.mix = plan.mixes.empty() ? MixId{} : plan.mixes.front().id;
    setAccessibleName(tr("The leaf as it will look: %1").arg(lines().join(QStringLiteral(", "))));
    update();
}

QStringList LeafPreview::lines() const {
    const Plan& plan = session_.plan();
    QStringList all;
    const Kind* kind = stemwright::find(plan, leaf_.kind);
    const Mix* mix = stemwright::find(plan, leaf_.mix);
    all += kind && mix ? tr("%1, %2 (%3)").arg(text(kind->name), text(mix->name), text(mix->code))
           : mix       ? tr("%1 (%2)").arg(text(mix->name), text(mix->code))
           : kind      ? text(kind->name)
                       : tr("No leaf yet");
    if (kind) {
        all += tr("%1 × %2 · %3 beads of %4 · %5", "length, width, number and size of beads, mass")
                   .arg(sizeText(kind->length, plan.units), sizeText(kind->width, plan.units),
                        countText(kind->beads), text(kind->beadSize), leafMassText(plan, *kind));
        all +=
            tr("%1 of wire %2").arg(cutText(kind->wire, plan.units), wireText(kind->wireDiameter, kind->gauge));
    }
    return all;
}

void LeafPreview::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Plan& plan = session_.plan();
    const LeafLook leaf = shownLook();
    const int line = QFontMetrics(look::font(look::Type::text)).height() + look::unit;
    const QStringList said = lines();

    // The words stand below, as many lines as there are, and the leaf has the rest.
    const int below = line * static_cast<int>(said.size()) + 2 * look::unit;
    paintRuledLeaf(painter, QRectF(rect()).adjusted(8, 8, -8, -below), leaf, plan.units, sprites_, marked_);

    int y = height() - below + look::unit;
    for (int i = 0; i < said.size(); ++i, y += line) {
        const QFont font = look::font(i == 0 ? look::Type::strong : look::Type::text);
        painter.setFont(font);
        painter.setPen(i == 0 ? look::ink : look::quiet);
        painter.drawText(QRect(8, y, width() - 16, line), Qt::AlignHCenter | Qt::AlignVCenter,
                         QFontMetrics(font).elidedText(said[i], Qt::ElideRight, width() - 16));
    }
}

} // namespace stemwright
