#include "app/materials/handbook.h"

#include "app/fields/fields.h"
#include "core/quantity/bead.h"
#include "core/quantity/filling.h"
#include "core/quantity/floss.h"
#include "core/quantity/metal.h"
#include "core/quantity/tape.h"

#include <QCoreApplication>

namespace stemwright::handbook {

namespace {

QString tr(const char* source, const char* note = nullptr) {
    return QCoreApplication::translate("Handbook", source, note);
}

QString sourceOf(Metal metal) {
    switch (metal) {
    case Metal::softCopper:
        return tr("Smithells Metals Reference Book, 8th ed., table 22.7; density: copper trade association "
                  "monograph 144/8");
    case Metal::hardCopper:
        return tr("copper trade association monograph 144/8");
    case Metal::softBrass:
    case Metal::hardBrass:
        return tr("yield: CDA Publication 120, table 16; density and stiffness from memory");
    case Metal::mildSteel:
        return tr("Halliday, Resnick & Walker, table 13-1; Hibbeler, Mechanics of Materials");
    case Metal::softSteel:
        return tr("yield: an estimate from memory, no source; density and stiffness as mild steel");
    case Metal::aluminium:
        return tr("Aluminum Association, typical values");
    }
    return {};
}

QString sourceOf(const QString& size) {
    if (size == QLatin1String("6/0"))
        return tr("sellers' size pages, a list of counts to the gram; length from memory");
    if (size == QLatin1String("10/0"))
        return tr("sellers' size pages; length and mass from memory");
    if (size == QLatin1String("12/0") || size == QLatin1String("13/0"))
        return tr("sellers' size pages; length: a published count; mass recomputed from its size");
    if (size == QLatin1String("14/0"))
        return tr("from memory; mass recomputed from its size");
    return tr("common practice, no source that binds: sellers' size pages, counts to the gram");
}

HandbookLine filling(const QString& name, Filling filling, const QString& source) {
    return {name, {densityOf(filling)}, source};
}

} // namespace

std::vector<HandbookLine> metals() {
    std::vector<HandbookLine> lines;
    for (const auto& [word, id] : stemwright::metals()) {
        const auto metal = static_cast<Metal>(id);
        const MetalFigures& figures = figuresOf(metal);
        lines.push_back({word, {figures.density, figures.modulus, figures.yield}, sourceOf(metal)});
    }
    return lines;
}

std::vector<HandbookLine> beads() {
    std::vector<HandbookLine> lines;
    for (const BeadSize& size : beadSizes()) {
        const auto name = QString::fromUtf8(size.name.data(), static_cast<qsizetype>(size.name.size()));
        lines.push_back({name,
                         {inMillimetres(size.diameter), inMillimetres(size.pitch), 100 * inGrams(size.mass)},
                         sourceOf(name)});
    }
    return lines;
}

std::vector<HandbookLine> flosses() {
    return {
        {tr("stranded cotton"),
         {flossStrands, inMillimetres(flossStrandWidth), inMillimetres(shortSkein), 100 * flossGramsPerMetre},
         tr("strands and skein: a thread guide; width by Peirce 1937, recomputed; mass from memory")}};
}

std::vector<HandbookLine> tapes() {
    return {{tr("florist tape"),
             {inMillimetres(tapeWidth), inMillimetres(tapeThickness), tapeStretch, inMillimetres(tapeRoll),
              std::nullopt},
             tr("width and roll: common practice, no source; thickness and stretch from memory")}};
}

std::vector<HandbookLine> clays() {
    return {filling(tr("plaster, set"), Filling::plasterSet, tr("recomputed from the dry values")),
            filling(tr("plaster, dry"), Filling::plasterDry, tr("a maker's table on a studio's page")),
            filling(tr("air-dry clay, wet"), Filling::airDryClayWet, tr("from memory, no source")),
            filling(tr("air-dry clay, dry"), Filling::airDryClayDry, tr("from memory, no source"))};
}

std::vector<HandbookLine> covers() {
    const QString bulk = tr("in bulk, 1520 to 1680: extract of a concrete text");
    return {filling(tr("sand"), Filling::sand, bulk), filling(tr("gravel"), Filling::gravel, bulk),
            filling(tr("pebbles"), Filling::pebbles, tr("as gravel"))};
}

} // namespace stemwright::handbook
