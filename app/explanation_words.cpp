// The words of app/explanations.h: figures, formulas, terms and sources.
#include "app/explanations.h"

#include <QCoreApplication>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Explanations", source);
}

} // namespace

QString figureName(FigureName figure) {
    switch (figure) {
    case FigureName::height:
        return tr("Height");
    case FigureName::tiers:
        return tr("Tiers");
    case FigureName::slots:
        return tr("Places for leaves");
    case FigureName::leaves:
        return tr("Leaves");
    case FigureName::held:
        return tr("Leaves held");
    case FigureName::fairShare:
        return tr("Fair share");
    case FigureName::unevenness:
        return tr("Unevenness");
    case FigureName::drift:
        return tr("Drift");
    case FigureName::beads:
        return tr("Beads");
    case FigureName::inversions:
        return tr("Steps against the colours' order");
    case FigureName::unmatchedPairs:
        return tr("Unmatched pairs");
    case FigureName::wires:
        return tr("Wires in the foot");
    case FigureName::bundle:
        return tr("Bundle at the foot");
    case FigureName::leafWire:
        return tr("Leaf wire");
    case FigureName::wrapUsed:
        return tr("Binding used");
    case FigureName::wrapToCut:
        return tr("Binding to cut");
    case FigureName::mass:
        return tr("Mass above the clay");
    case FigureName::moment:
        return tr("Moment of its weight");
    case FigureName::plasticMoment:
        return tr("What its wires bear");
    case FigureName::hold:
        return tr("Hold");
    case FigureName::sag:
        return tr("Sag when laid level");
    case FigureName::centre:
        return tr("Centre of its mass");
    case FigureName::potStems:
        return tr("Stems");
    case FigureName::potSlots:
        return tr("Places for leaves, all stems");
    case FigureName::potLeaves:
        return tr("Leaves on stems");
    case FigureName::potInTray:
        return tr("Leaves in the tray");
    case FigureName::potUnevenness:
        return tr("Unevenness of the pot");
    case FigureName::potDrift:
        return tr("Drift of the pot");
    case FigureName::potShortest:
        return tr("Shortest stem");
    case FigureName::potTallest:
        return tr("Tallest stem");
    case FigureName::potMeanHeight:
        return tr("Mean height");
    case FigureName::potHeightVariation:
        return tr("Variation of the heights");
    case FigureName::potNearTwins:
        return tr("Near twins");
    case FigureName::potBeads:
        return tr("Beads on stems");
    case FigureName::potAllBeads:
        return tr("Beads of all leaves");
    case FigureName::potLeafWire:
        return tr("Leaf wire on stems");
    case FigureName::potAllLeafWire:
        return tr("Leaf wire of all leaves");
    case FigureName::potToMake:
        return tr("Leaves still to make");
    case FigureName::potWrapUsed:
        return tr("Binding used, all stems");
    case FigureName::potWrapToCut:
        return tr("Binding to cut, all stems");
    case FigureName::potMass:
        return tr("Mass of the stems");
    case FigureName::potClay:
        return tr("Clay in the pot");
    case FigureName::potCover:
        return tr("Cover on the clay");
    case FigureName::potWhole:
        return tr("Mass of the whole plant");
    case FigureName::potCentre:
        return tr("Centre of the whole, above the table");
    case FigureName::potTilt:
        return tr("Tilt before it falls");
    case FigureName::potWeightToAdd:
        return tr("Weight to add");
    case FigureName::potStake:
        return tr("Stake");
    case FigureName::buyLeaves:
        return tr("Leaves to make");
    case FigureName::buyBeads:
        return tr("Beads to have");
    case FigureName::buyLeafWire:
        return tr("Leaf wire to have");
    case FigureName::buyWrap:
        return tr("Binding to have");
    case FigureName::buyBars:
        return tr("Straight wire to have");
    case FigureName::buyClay:
        return tr("Clay to have");
    case FigureName::buyCover:
        return tr("Cover to have");
    case FigureName::buyHours:
        return tr("Hours left");
    case FigureName::buyCost:
        return tr("Cost");
    }
    return {};
}

QString formulaText(FigureName figure) {
    switch (figure) {
    case FigureName::height:
        return tr("From the clay line to the highest point of the stem straight up, whatever its pose: the "
                  "tail above the clay, the spacings between the tiers, and how far the highest leaf rises "
                  "above its joint (its length times the cosine of its angle).");
    case FigureName::tiers:
        return tr("Counted on the stem.");
    case FigureName::slots:
        return tr("The places of its tiers, counted.");
    case FigureName::leaves:
    case FigureName::held:
        return tr("Counted on the stem.");
    case FigureName::fairShare:
        return tr("What the stem would hold if every stem had the pot's proportions: its leaves of the kind, "
                  "times the board's leaves of the mix, over the board's leaves of the kind.");
    case FigureName::unevenness:
        return tr("The sum of (leaves held − fair share)² over mixes and kinds.");
    case FigureName::drift:
        return tr("How far the stem's beads are from the pot's in colour: the least work that turns the one "
                  "into the other, each bead counted with the difference ΔE00 it has to go (earth mover's "
                  "distance).");
    case FigureName::beads:
        return tr("Leaves held, times the beads that one leaf of the mix has of this colour: whole beads, "
                  "shared out by the mix's proportions, largest remainders first.");
    case FigureName::inversions:
        return tr("Pairs of leaves of one kind that stand against the order that their colours should take "
                  "from tip to base.");
    case FigureName::unmatchedPairs:
        return tr("Tiers whose opposite leaves are of unlike mix or kind, counted.");
    case FigureName::wires:
        return tr("Leaves, times the wires that leave each leaf's base, over all kinds.");
    case FigureName::bundle:
        return tr("Wire diameter times the ratio of the smallest circle that holds so many equal circles; "
                  "wires of unlike thickness count as equal ones of the same area, and a core is added by "
                  "area: √(bundle² + core²).");
    case FigureName::leafWire:
        return tr("Leaves, times the wire cut for one, over all kinds.");
    case FigureName::wrapUsed:
        return tr("Turns around the bundle from tier to tier and down the tail. A turn advances by width × "
                  "(1 − overlap) and is √((π(D + t))² + advance²) long, D being the bundle there and t what "
                  "the layer stands out; a tape takes that over its stretch. To it come the tail that is laid "
                  "in and the finish.");
    case FigureName::wrapToCut:
        return tr("What ends up on the stem, and what the hand must hold to the last.");
    case FigureName::mass:
        return tr("Leaves (their beads, and their wire as it was cut), the core above the clay, and the "
                  "binding there.");
    case FigureName::moment:
        return tr("Its weight times its centre's distance from the clay line, the stem laid level: the worst "
                  "pose.");
    case FigureName::plasticMoment:
        return tr("Yield stress × diameter³ / 6 for every wire at the clay line and the core, each bending "
                  "for itself as if nothing bound them.");
    case FigureName::hold:
        return tr("What the wires bear over what the stem weighs on them, laid level. From 2 up there is as "
                  "much again to spare; below 0.7 it would bend when it leans.");
    case FigureName::sag:
        return tr("How far the topmost joint sinks with the stem laid level: a cantilever of wires that bend "
                  "each for itself, stiffer from joint to joint as more join. Beyond a tenth of the length "
                  "the formula says too much.");
    case FigureName::centre:
        return tr("The moment of its weight over its weight: the height of its centre with the stem upright.");
    case FigureName::potStems:
        return tr("Counted on the board.");
    case FigureName::potSlots:
    case FigureName::potLeaves:
        return tr("The sum over the stems.");
    case FigureName::potInTray:
        return tr("The stock, less the leaves on stems.");
    case FigureName::potUnevenness:
        return tr("The sum of the stems' unevenness.");
    case FigureName::potDrift:
        return tr("The mean of the stems' drifts, each weighted by its beads.");
    case FigureName::potShortest:
        return tr("The least height of the stems that have a tier, each straight up.");
    case FigureName::potTallest:
        return tr("The greatest height of the stems that have a tier, each straight up.");
    case FigureName::potMeanHeight:
        return tr("The sum of the heights over the number of stems that have a tier.");
    case FigureName::potHeightVariation:
        return tr("Standard deviation of the heights (by n − 1) over their mean.");
    case FigureName::potNearTwins:
        return tr("Pairs of stems whose heights differ by less than the eye tells apart.");
    case FigureName::potBeads:
        return tr("The sum over the stems.");
    case FigureName::potAllBeads:
        return tr("All leaves of the stock, times the beads that one has of this colour.");
    case FigureName::potLeafWire:
        return tr("The sum over the stems.");
    case FigureName::potAllLeafWire:
        return tr("All leaves of the stock, times the wire cut for one.");
    case FigureName::potToMake:
        return tr("The stock that is not made yet.");
    case FigureName::potWrapUsed:
    case FigureName::potWrapToCut:
    case FigureName::potMass:
        return tr("The sum over the stems.");
    case FigureName::potClay:
        return tr("The pot's shape filled to the clay's depth, times its density. Cylinder πr²h; tapering "
                  "πh(R² + Rr + r²)/3; bowl: a cap of a sphere, πh²(3R − h)/3. An oval or rectangular opening "
                  "counts in its proportions.");
    case FigureName::potCover:
        return tr("The pot's shape between the clay and the top of the cover, times its density.");
    case FigureName::potWhole:
        return tr("The empty pot, the clay, what lies on it, and the stems.");
    case FigureName::potCentre:
        return tr("Each mass times the height of its centre, over all masses; a stem's centre stands lower "
                  "as the stem leans or bends. Walls and floor count as one height, half the pot's.");
    case FigureName::potTilt:
        return tr("The angle whose tangent is (foot − how far the centre stands aside) over the centre's "
                  "height: beyond it the plant falls towards where it is heaviest. The stems weigh where "
                  "their places, their lean and their bend bring them. The foot counts to its nearest edge; "
                  "on feet that is the line between two of them.");
    case FigureName::potWeightToAdd:
        return tr("What would have to lie in the middle of the pot's floor so that the plant bears the tilt "
                  "below.");
    case FigureName::potStake:
        return tr("As long as the clay is deep, and what is bound to the stem above it.");
    case FigureName::buyLeaves:
        return tr("The stock that is not made yet.");
    case FigureName::buyBeads:
        return tr("The beads of the leaves to make, and so much more to spare, rounded up to whole beads; then "
                  "to whole packets.");
    case FigureName::buyLeafWire:
        return tr("The leaves to make, times the wire cut for one, and so much more to spare; then to whole "
                  "spools.");
    case FigureName::buyWrap:
        return tr(
            "What to cut for every stem whose pieces are not cut yet. A stem is bound in one piece, so the "
            "pieces are shared out over the fewest skeins, spools or rolls.");
    case FigureName::buyBars:
        return tr("Stakes and cores of this wire for every stem whose pieces are not cut yet, each rounded up "
                  "to a whole millimetre, cut from the fewest "
                  "lengths on sale, and of those plans the one with the least waste.");
    case FigureName::buyClay:
        return tr("The pot's shape filled to the clay's depth, times its density; then to whole packs.");
    case FigureName::buyCover:
        return tr("The pot's shape between the clay and the top of the cover, times its density; then to whole "
                  "packs.");
    case FigureName::buyHours:
        return tr("The leaves to make by their kinds' minutes, and the tiers to bind by the mean of those that "
                  "are bound.");
    case FigureName::buyCost:
        return tr("Whole packets, spools, skeins and lengths, times what one costs; what has no price is not "
                  "in it.");
    }
    return {};
}

QString sourceText(SourceName source) {
    switch (source) {
    case SourceName::plan:
        return tr("counted in this plan");
    case SourceName::maker:
        return tr("your own measures in this plan");
    case SourceName::textbook:
        return tr("textbook geometry and mechanics");
    case SourceName::ownGeometry:
        return tr("our own geometry, no published source");
    case SourceName::ownChoice:
        return tr("a limit that we chose, no source");
    case SourceName::packingTable:
        return tr("equal circles in a circle, to 61: Kravitz 1967; Graham, Lubachevsky, Nurmela and Östergård "
                  "1998; Specht's table (proved for 1 to 14 and 19)");
    case SourceName::colourNorm:
        return tr("CIELAB, ISO/CIE 11664-4; CIEDE2000, ISO/CIE 11664-6");
    case SourceName::earthMover:
        return tr("earth mover's distance: Rubner, Tomasi and Guibas 2000");
    case SourceName::metalTable:
        return tr(
            "the wire's density, stiffness and yield: Smithells Metals Reference Book, trade associations' "
            "tables, or your own entry; annealed steel is an estimate from memory");
    case SourceName::beadTable:
        return tr("bead sizes: common practice, no standard, good to about a tenth; or your own entry");
    case SourceName::flossTable:
        return tr("stranded cotton, 29.5 tex a strand: from memory; or your own entry");
    case SourceName::tapeTable:
        return tr("tape: common practice, no source; or your own entry");
    case SourceName::cuttingProof:
        return tr("exact search below a bound by column generation (Gilmore and Gomory 1961, from memory)");
    case SourceName::gravityNorm:
        return tr("standard gravity %1 m/s², ISO 80000-3").arg(gravity, 0, 'f', 5);
    }
    return {};
}

QString estimateText() {
    return tr("An estimate: wire temper and binding move it by up to a few times. Try one stem first.");
}

} // namespace stemwright
