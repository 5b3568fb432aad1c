#include "app/deed_text.h"

#include <QCoreApplication>

#include <variant>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Messages", source);
}

QString changeBinding() {
    return tr("change binding");
}

} // namespace

QString deedText(const Edit& edit) {
    if (const auto* batch = std::get_if<Batch>(&edit.what))
        switch (batch->deed) {
        case Deed::several:
            return tr("several changes");
        case Deed::moveLeaf:
            return tr("move leaf");
        case Deed::moveLeaves:
            return tr("move leaves");
        case Deed::moveTiers:
            return tr("move tiers");
        case Deed::swapLeaves:
            return tr("swap leaves");
        case Deed::emptySlots:
            return tr("return to the tray");
        case Deed::openTier:
            return tr("open tier");
        case Deed::closeTiers:
            return tr("remove tiers");
        case Deed::turnTiers:
            return tr("turn tiers");
        case Deed::pinSlots:
            return tr("pin or unpin");
        case Deed::fillFromTray:
            return tr("fill from the tray");
        case Deed::changeArrangement:
            return tr("change arrangement");
        case Deed::copyStem:
            return tr("copy stem");
        case Deed::removeStem:
            return tr("remove stem");
        case Deed::changeStock:
            return tr("change stock");
        case Deed::removePart:
            return tr("remove");
        case Deed::remedy:
            return tr("remedy");
        case Deed::suggestion:
            return tr("suggestion");
        case Deed::paste:
            return tr("paste");
        case Deed::benchStep:
            return tr("step at the bench");
        case Deed::calibrate:
            return tr("measured binding");
        case Deed::changeBinding:
            return changeBinding();
        }
    struct Namer {
        QString operator()(const FillSlot& e) const {
            return e.leaf.mix ? tr("place leaf") : tr("return to the tray");
        }
        QString operator()(const SwapSlots&) const { return tr("swap leaves"); }
        QString operator()(const PinSlot& e) const { return e.pinned ? tr("pin") : tr("unpin"); }
        QString operator()(const OpenTier&) const { return tr("open tier"); }
        QString operator()(const CloseTier&) const { return tr("remove tier"); }
        QString operator()(const MoveTiers&) const { return tr("move tiers"); }
        QString operator()(const TurnTier&) const { return tr("turn tier"); }
        QString operator()(const SpaceTier&) const { return tr("change spacing"); }
        QString operator()(const MarkTier& e) const {
            return e.progress.bound ? tr("tier %1 is bound").arg(e.index + 1)
                                    : tr("tier %1 is not bound").arg(e.index + 1);
        }
        QString operator()(const ReformStem&) const { return tr("change stem"); }
        QString operator()(const ReformKind&) const { return tr("change kind"); }
        QString operator()(const SetStock&) const { return tr("change stock"); }
        QString operator()(const Insert<Colour>&) const { return tr("add colour"); }
        QString operator()(const Insert<Mix>&) const { return tr("add mix"); }
        QString operator()(const Insert<Kind>&) const { return tr("add kind"); }
        QString operator()(const Insert<Stem>&) const { return tr("add stem"); }
        QString operator()(const Remove<ColourId>&) const { return tr("remove colour"); }
        QString operator()(const Remove<MixId>&) const { return tr("remove mix"); }
        QString operator()(const Remove<KindId>&) const { return tr("remove kind"); }
        QString operator()(const Remove<StemId>&) const { return tr("remove stem"); }
        QString operator()(const Move<ColourId>&) const { return tr("move colour"); }
        QString operator()(const Move<MixId>&) const { return tr("move mix"); }
        QString operator()(const Move<KindId>&) const { return tr("move kind"); }
        QString operator()(const Move<StemId>&) const { return tr("move stem"); }
        QString operator()(const Replace<Colour>&) const { return tr("change colour"); }
        QString operator()(const Replace<Mix>&) const { return tr("change mix"); }
        QString operator()(const Set<About>&) const { return tr("change title"); }
        QString operator()(const Set<Units>&) const { return tr("change units"); }
        QString operator()(const Set<Binding>&) const { return changeBinding(); }
        QString operator()(const Set<Pot>&) const { return tr("change pot"); }
        QString operator()(const Set<Buying>&) const { return tr("change what is bought"); }
        QString operator()(const Set<OwnTables>&) const { return tr("change own tables"); }
        QString operator()(const Batch&) const { return {}; }
    };
    return std::visit(Namer{}, edit.what);
}

} // namespace stemwright
