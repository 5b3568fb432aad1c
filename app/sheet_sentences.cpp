#include "app/sheet_sentences.h"

#include "app/wording.h"

#include <QCoreApplication>

namespace stemwright {

namespace {

QString tr(const char* source, const char* note = nullptr) {
    return QCoreApplication::translate("Sheets", source, note);
}

} // namespace

QString sheetSentence(SheetWord which) {
    switch (which) {
    case SheetWord::untitled:
        return tr("Untitled plan");
    case SheetWord::glanceTitle:
        return tr("The plant at a glance");
    case SheetWord::matsTitle:
        return tr("Mat, true size: lay each leaf on its outline");
    case SheetWord::cardsTitle:
        return tr("Binding card");
    case SheetWord::leavesTitle:
        return tr("Leaves to make");
    case SheetWord::suppliesTitle:
        return tr("Supplies");
    case SheetWord::potTitle:
        return tr("The pot from above");
    case SheetWord::pageOf:
        return tr("page %1 of %2");
    case SheetWord::ruleMm:
        return tr("100 mm");
    case SheetWord::ruleInch:
        return tr("4 in");
    case SheetWord::ruleCheck:
        // The number and its sign stay on one line.
        return tr("Measure these rules first. If they are off, print again at 100\u00a0%, not fitted to the "
                  "page.");
    case SheetWord::summary:
        return tr("Stems: %1. Leaves on them: %2, in the tray: %3.");
    case SheetWord::heights:
        return tr("Heights from %1 to %2.");
    case SheetWord::columnStem:
        return tr("Stem");
    case SheetWord::columnHeight:
        return tr("Height");
    case SheetWord::columnTiers:
        return tr("Tiers");
    case SheetWord::columnLeaves:
        return tr("Leaves");
    case SheetWord::columnDrift:
        return tr("Drift");
    case SheetWord::columnThick:
        return tr("Foot", "thickness of a stem's bundle there");
    case SheetWord::columnLeafWire:
        return tr("Leaf wire");
    case SheetWord::columnCore:
        return tr("Core wire");
    case SheetWord::columnMat:
        return tr("Mat on page");
    case SheetWord::columnCard:
        return tr("Card on page");
    case SheetWord::columnCode:
        return tr("Code");
    case SheetWord::columnMix:
        return tr("Mix, outer row inward");
    case SheetWord::columnKind:
        return tr("Kind");
    case SheetWord::columnOnStems:
        return tr("On stems");
    case SheetWord::columnInTray:
        return tr("In the tray");
    case SheetWord::allStems:
        return tr("All stems");
    case SheetWord::mixesHeading:
        return tr("Mixes");
    case SheetWord::stemsHeading:
        return tr("Stems: lengths to cut");
    case SheetWord::noStems:
        return tr("The plan has no stems yet.");
    case SheetWord::matOf:
        return QStringLiteral("%1");
    case SheetWord::matSheet:
        return tr("sheet %1 of %2");
    case SheetWord::seenFromFront:
        return tr("Seen from the front");
    case SheetWord::seenFromSide:
        return tr("A quarter turned");
    case SheetWord::arrangementLine:
        return tr("%1. Tiers: %2, leaves: %3. Height %4.", "arrangement, counts, height");
    case SheetWord::cutWrap:
        return tr("Cut %1: %2.", "what is wound, length");
    case SheetWord::coreLine:
        return tr("Core wire %1.");
    case SheetWord::evenWrap:
        return tr("Wrap %1 from each tier to the next.");
    case SheetWord::columnTier:
        return tr("No.");
    case SheetWord::columnFaces:
        return tr("Faces");
    case SheetWord::columnLeavesOf:
        return tr("Leaves");
    case SheetWord::columnWrap:
        return tr("Wrap");
    case SheetWord::tail:
        return tr("tail");
    case SheetWord::tailBelow:
        return tr("tail: wrap %1 to the foot");
    case SheetWord::foot:
        return tr("foot");
    case SheetWord::clayLine:
        return tr("clay line");
    case SheetWord::heightScale:
        return tr("Height");
    case SheetWord::join:
        return tr("%1: join to sheet %2 here");
    case SheetWord::noLeaves:
        return tr("No leaves are on this stem.");
    case SheetWord::emptySlot:
        return tr("empty");
    case SheetWord::around:
        return tr("%1 around, first %2");
    case SheetWord::drawnSteeper:
        return tr("Some leaves are drawn steeper than they stand, to fit the paper; their size is true.");
    case SheetWord::leafTooLong:
        return tr("Some leaves are larger than the paper and are in the list only.");
    case SheetWord::continued:
        return tr("%1 (continued)");
    case SheetWord::columnDone:
        return tr("Done");
    case SheetWord::columnStep:
        return tr("No.");
    case SheetWord::columnDo:
        return tr("Step");
    case SheetWord::columnUsed:
        return tr("Used so far");
    case SheetWord::columnLeft:
        return tr("Left");
    case SheetWord::cardCut:
        return tr("Cut %1.");
    case SheetWord::cardBegin:
        return tr("Lay the first %1 of %2 in along the wires of tier\u00a01, then begin to wind.");
    case SheetWord::cardTier:
        return tr("Tier\u00a0%1, %2: %3.");
    case SheetWord::cardTierOne:
        return tr("Tier\u00a0%1: %2.");
    case SheetWord::cardAround:
        return tr("%1 around", "leaves");
    case SheetWord::cardTurn:
        return tr("Turn the stem a quarter.");
    case SheetWord::cardHalfTurn:
        return tr("Turn the stem half round.");
    case SheetWord::cardTurnBy:
        return tr("Turn the stem by %1°.");
    case SheetWord::cardStake:
        return tr("Lay the stake, %1, along the tail, so that %2 of it are bound in.");
    case SheetWord::cardTail:
        return tr("Wrap the tail down to the foot.");
    case SheetWord::cardFinishWire:
        return tr("Finish: twist off with the last %1, cut off what is left over and turn the ends in.");
    case SheetWord::cardFinishFloss:
        return tr("Finish: knot with the last %1 and cut off what is left over; turn wire ends in.");
    case SheetWord::cardFinishTape:
        return tr("Finish: cut the tape, press its last %1 down and turn wire ends in.");
    case SheetWord::cardCover:
        return tr("Wind %1 over the whole stem, from the tip down, and fasten and cut its end.");
    case SheetWord::cardTape:
        return tr("Wind %1 over the whole stem, from the tip down, stretching it; press its end down.");
    case SheetWord::cardTook:
        return tr("%1: really used %2", "what was wound, its length");
    case SheetWord::cardPiece:
        return tr("%1: %2", "what is cut, its length");
    case SheetWord::cardCore:
        return tr("core wire %1");
    case SheetWord::cardStakeWire:
        return tr("stake %1");
    case SheetWord::cardLayCore:
        return tr("Lay the core wire in along the wires of tier\u00a01.");
    case SheetWord::ownMeasure:
        return tr("The lengths of binding rest on your own measure of %1.", "stems");
    case SheetWord::ownMeasureOf:
        return tr("The lengths of binding rest on your own measure.");
    case SheetWord::cardLeaf:
        return tr("%1 %2", "side, code of the mix");
    case SheetWord::cardNothing:
        return tr("There is nothing to bind on this stem.");
    case SheetWord::nothingToMake:
        return tr("Every leaf of the stock is made.");
    case SheetWord::columnToMake:
        return tr("To make");
    case SheetWord::columnBeads:
        return tr("Beads");
    case SheetWord::columnWire:
        return tr("Wire each");
    case SheetWord::columnAllWire:
        return tr("Wire in all");
    case SheetWord::columnTally:
        return tr("Tally");
    case SheetWord::rowsLine:
        return tr("Rows, outer inward: %1.");
    case SheetWord::beadsLine:
        return tr("Colours: %1.");
    case SheetWord::tallyTens:
        return tr("a box for every %1");
    case SheetWord::allToMake:
        return tr("In all");
    case SheetWord::beadsHeading:
        return tr("Beads for the leaves to make");
    case SheetWord::wireHeading:
        return tr("Wire, floss and tape");
    case SheetWord::clayHeading:
        return tr("For the pot");
    case SheetWord::cuttingHeading:
        return tr("Cutting plan: %1");
    case SheetWord::workHeading:
        return tr("Time and cost");
    case SheetWord::columnColour:
        return tr("Colour");
    case SheetWord::columnSize:
        return tr("Size");
    case SheetWord::columnWithSpare:
        return tr("With spare");
    case SheetWord::columnMass:
        return tr("Mass");
    case SheetWord::columnStrung:
        return tr("Strung");
    case SheetWord::columnPacks:
        return tr("To buy");
    case SheetWord::columnCost:
        return tr("Cost");
    case SheetWord::columnWhat:
        return tr("What");
    case SheetWord::columnLength:
        return tr("Length");
    case SheetWord::leafWireLine:
        return tr("Leaf wire %1, %2");
    case SheetWord::barLine:
        return tr("Straight wire %1, %2");
    case SheetWord::clayLineSupply:
        return tr("Clay");
    case SheetWord::coverLine:
        return tr("Cover on the clay");
    case SheetWord::barTimes:
        return tr("%1 × %2", "how many, of what length");
    case SheetWord::barCore:
        return tr("core of %1: %2");
    case SheetWord::barStake:
        return tr("stake of %1: %2");
    case SheetWord::barCores:
        return tr("%1 × %2 for the cores of %3");
    case SheetWord::barStakes:
        return tr("%1 × %2 for the stakes of %3");
    case SheetWord::barWrap:
        return tr("%1: %2", "stem, length");
    case SheetWord::barRest:
        return tr("left over: %1");
    case SheetWord::barProved:
        return tr("Lengths: %1. Left over in all: %2. No plan needs fewer.");
    case SheetWord::barUnproved:
        return tr("Lengths: %1. Left over in all: %2. No plan needs fewer than %3.");
    case SheetWord::barUnprovedWaste:
        return tr("Lengths: %1, and no plan needs fewer. Left over in all: %2; up to %3 less might be.");
    case SheetWord::barTooLong:
        return tr("No length on sale is long enough for: %1.");
    case SheetWord::noBars:
        return tr("The plan names no lengths on sale. Cut from the coil: %1.", "pieces");
    case SheetWord::hoursLeft:
        return tr("Work left: about %1.");
    case SheetWord::hoursPartly:
        return partlyKnownTimeText();
    case SheetWord::allCost:
        return tr("Cost of all that has a price: %1.");
    case SheetWord::nothingToBuy:
        return tr("Every leaf is made: no beads or leaf wire are wanted.");
    case SheetWord::potLine:
        return tr("%1. Opening %2, depth %3.");
    case SheetWord::potSpots:
        return tr("Cut it out, lay it on the clay with its front to you and prick through the marks.");
    case SheetWord::potFront:
        return tr("front");
    case SheetWord::potBack:
        return tr("back");
    case SheetWord::potNotPlaced:
        return tr("Not placed in the pot yet: %1.");
    case SheetWord::potJoin:
        return tr("Cut each sheet at one of its dashed lines and lay it on the dashed line of its neighbour.");
    }
    return {};
}

} // namespace stemwright
