// The words for the numbers that go into figures: termText() of app/explanations.h.
#include "app/explanations.h"

#include <QCoreApplication>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Explanations", source);
}

} // namespace

QString termText(Term term) {
    switch (term) {
    case Term::tail:
        return tr("tail");
    case Term::plantingDepth:
        return tr("planted in the clay");
    case Term::spacings:
        return tr("spacings between the tiers");
    case Term::reach:
        return tr("reach of the highest leaf");
    case Term::tiersOfStem:
        return tr("tiers");
    case Term::placesATier:
        return tr("places a full tier");
    case Term::leavesOfStem:
        return tr("leaves");
    case Term::leavesOfKindOnStem:
        return tr("leaves of the kind on this stem");
    case Term::leavesOfMix:
        return tr("leaves of the mix on the board");
    case Term::leavesOfKind:
        return tr("leaves of the kind on the board");
    case Term::heldLeaves:
        return tr("leaves held");
    case Term::fairLeaves:
        return tr("fair share");
    case Term::beadsOfStem:
        return tr("beads of the stem");
    case Term::beadsOfPot:
        return tr("beads on all stems");
    case Term::coloursCompared:
        return tr("colours compared");
    case Term::beadsALeaf:
        return tr("of this colour in one leaf");
    case Term::wireALeaf:
        return tr("wire for one leaf");
    case Term::wiresALeaf:
        return tr("wires at one leaf's base");
    case Term::orderedLeaves:
        return tr("leaves compared");
    case Term::wiresInBundle:
        return tr("wires");
    case Term::wireDiameter:
        return tr("wire diameter");
    case Term::packing:
        return tr("bundle over wire, from the table");
    case Term::coreDiameter:
        return tr("core wire");
    case Term::widthLaid:
        return tr("width laid");
    case Term::overlap:
        return tr("overlap");
    case Term::stretch:
        return tr("stretch, times");
    case Term::thickness:
        return tr("thickness");
    case Term::bundleAtFoot:
        return tr("bundle at the foot");
    case Term::lengthWrapped:
        return tr("length of stem wrapped");
    case Term::startTail:
        return tr("tail laid in");
    case Term::finish:
        return tr("finish");
    case Term::used:
        return tr("length");
    case Term::handHold:
        return tr("held in the hand");
    case Term::leafMasses:
        return tr("leaves");
    case Term::coreMass:
        return tr("core wire above the clay");
    case Term::bindingMass:
        return tr("binding above the clay");
    case Term::stemMass:
        return tr("mass above the clay");
    case Term::centreHeight:
        return tr("height of the centre");
    case Term::gravityTerm:
        return tr("gravity, m/s²");
    case Term::momentOfWeight:
        return tr("moment of the weight");
    case Term::plasticMomentOfWires:
        return tr("what the leaf wires bear");
    case Term::plasticMomentOfCore:
        return tr("what the core bears");
    case Term::bareLength:
        return tr("from the clay to the topmost joint");
    case Term::stems:
        return tr("stems");
    case Term::standardDeviation:
        return tr("standard deviation");
    case Term::meanHeight:
        return tr("mean height");
    case Term::twinDistance:
        return tr("told apart from");
    case Term::stock:
        return tr("leaves in stock");
    case Term::placed:
        return tr("leaves on stems");
    case Term::topDiameter:
        return tr("inside, at the rim");
    case Term::topBreadth:
        return tr("inside, from front to back");
    case Term::bottomDiameter:
        return tr("inside, at the floor");
    case Term::depth:
        return tr("depth");
    case Term::volume:
        return tr("volume");
    case Term::density:
        return tr("density");
    case Term::potMassTerm:
        return tr("empty pot");
    case Term::clayMass:
        return tr("clay");
    case Term::coverMass:
        return tr("cover");
    case Term::aside:
        return tr("centre stands aside by");
    case Term::foot:
        return tr("middle to the edge it stands on");
    case Term::wantedTilt:
        return tr("tilt to bear");
    case Term::clayDepth:
        return tr("clay's depth");
    case Term::stakeOverlap:
        return tr("bound to the stem");
    case Term::toMake:
        return tr("leaves to make");
    case Term::neededBeads:
        return tr("beads in the leaves to make");
    case Term::spare:
        return tr("to spare");
    case Term::beadMass:
        return tr("mass of one bead, mg");
    case Term::beadPitch:
        return tr("one bead on the wire");
    case Term::sold:
        return tr("in one as it is sold");
    case Term::price:
        return tr("price of one");
    case Term::packs:
        return tr("to buy");
    case Term::pieces:
        return tr("pieces");
    case Term::barsCut:
        return tr("lengths to buy");
    case Term::fewestBars:
        return tr("no plan has fewer than");
    case Term::waste:
        return tr("left over");
    case Term::minutesOfLeaves:
        return tr("leaves to make");
    case Term::tiersToBind:
        return tr("tiers to bind");
    case Term::minutesATier:
        return tr("a tier so far");
    case Term::placesOfStem:
        return tr("places");
    case Term::driftOfStem:
        return tr("drift, ΔE00");
    case Term::unevennessOfStem:
        return tr("unevenness");
    case Term::heightOfStem:
        return tr("height");
    case Term::beadsCost:
        return tr("beads");
    case Term::leafWireCost:
        return tr("leaf wire");
    case Term::bindingCost:
        return tr("binding");
    case Term::barsCost:
        return tr("straight wire");
    case Term::fillingCost:
        return tr("clay and cover");
    case Term::standsOn:
        return tr("across its feet");
    case Term::feet:
        return tr("feet");
    case Term::beadsUnweighed:
        return tr("left out, since nobody knows their weight: beads");
    }
    return {};
}

} // namespace stemwright
