#include "app/supplies_csv.h"

#include "app/supply_lines.h"
#include "app/wording.h"
#include "core/plan/making.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include <cmath>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("SuppliesCsv", source);
}

/// RFC 4180: a field with a comma, a quote or a line break stands in quotes, and its own are doubled.
QString field(QString value) {
    if (value.contains(QLatin1Char(',')) || value.contains(QLatin1Char('"')) ||
        value.contains(QLatin1Char('\n')) || value.contains(QLatin1Char('\r')))
        return QLatin1Char('"') + value.replace(QLatin1Char('"'), QStringLiteral("\"\"")) + QLatin1Char('"');
    return value;
}

/// With at most so many decimals, a point, and no zeros behind the last digit that counts.
QString number(double value, int places) {
    QString out = QLocale::c().toString(value, 'f', places);
    out.remove(QLatin1Char(','));
    while (out.contains(QLatin1Char('.')) && (out.endsWith(QLatin1Char('0')) || out.endsWith(QLatin1Char('.'))))
        out.chop(1);
    return out;
}

class Table {
public:
    Table(const Plan& plan, const Supplies& needs) : plan_(plan), needs_(needs) {}

    std::string run() {
        const bool inch = plan_.units.length == LengthUnit::inch, ounce = plan_.units.mass == MassUnit::ounce;
        out_ += QStringList{tr("what"),
                            tr("which"),
                            tr("count"),
                            inch ? tr("length in") : tr("length mm"),
                            ounce ? tr("mass oz") : tr("mass g"),
                            tr("to buy"),
                            inch ? tr("sold by length in") : tr("sold by length mm"),
                            ounce ? tr("sold by mass oz") : tr("sold by mass g"),
                            tr("cost"),
                            tr("note")}
                    .join(QLatin1Char(',')) +
                QStringLiteral("\r\n");
        leaves();
        beads();
        wires();
        wraps();
        bars();
        filling(tr("clay"), needs_.clay, needs_.clayToBuy, plan_.buying.clay);
        filling(tr("cover"), needs_.cover, needs_.coverToBuy, plan_.buying.cover);
        row_ = Row(tr("hours left"), QString(), number(needs_.minutesLeft / 60, 1));
        row_.note = needs_.minutesPartly ? partlyKnownTimeText() : QString();
        put();
        if (needs_.cost > 0) {
            row_ = Row(tr("cost"), QString());
            row_.cost = needs_.cost;
            row_.note = tr("of all that has a price");
            put();
        }
        return out_.toStdString();
    }

private:
    struct Row {
        Row(QString name = {}, QString part = {}, QString number = {})
            : what(std::move(name)), which(std::move(part)), count(std::move(number)) {}

        QString what, which, count;
        Length length;
        Mass mass;
        std::int64_t packs = 0;
        Length soldLength;
        Mass soldMass;
        double cost = 0;
        QString note;
    };

    QString lengthOf(Length length) const {
        if (!(length > Length{}))
            return {};
        return plan_.units.length == LengthUnit::inch ? number(std::round(inInches(length) * 16) / 16, 4)
                                                      : number(inMillimetres(length), 0);
    }
    QString massOf(Mass mass) const {
        if (!(mass > Mass{}))
            return {};
        return plan_.units.mass == MassUnit::ounce ? number(inOunces(mass), inOunces(mass) < 10 ? 2 : 1)
                                                   : number(inGrams(mass), inGrams(mass) < 10 ? 1 : 0);
    }

    void put() {
        const QStringList fields{
            row_.what,
            row_.which,
            row_.count,
            lengthOf(row_.length),
            massOf(row_.mass),
            row_.packs > 0 ? QString::number(row_.packs) : QString(),
            lengthOf(row_.soldLength),
            massOf(row_.soldMass),
            row_.cost > 0 ? QLocale::c().toString(row_.cost, 'f', 2).remove(QLatin1Char(',')) : QString(),
            row_.note};
        QStringList safe;
        for (const QString& each : fields)
            safe << field(each);
        out_ += safe.join(QLatin1Char(',')) + QStringLiteral("\r\n");
    }

    void leaves() {
        const std::vector<int> toMake = stillToMake(plan_);
        std::size_t at = 0;
        for (const Kind& kind : plan_.kinds)
            for (const StockLine& line : kind.stock)
                if (const int count = toMake[at++]; count > 0) {
                    row_ = Row(tr("leaf to make"), tr("%1, %2").arg(text(kind.name), nameText(plan_, line.mix)),
                               QString::number(count));
                    put();
                }
    }

    void beads() {
        for (const BeadSupply& bead : needs_.beads) {
            const Colour* colour = find(plan_, bead.colour);
            row_ = Row(tr("beads"), tr("%1 %2").arg(text(colour->name), text(bead.size)),
                       QString::number(bead.withSpare));
            row_.length = bead.strung;
            row_.mass = bead.mass;
            row_.packs = bead.buy.packs;
            const Pack& sold = colour->sold.amount > 0 ? colour->sold : plan_.buying.beads;
            row_.soldMass = grams(sold.amount);
            row_.cost = bead.buy.cost;
            row_.note = tr("%1 in the leaves, the rest to spare; length strung").arg(bead.beads);
            put();
        }
    }

    void wires() {
        for (const LeafWireSupply& wire : needs_.leafWire) {
            row_ =
                Row(tr("leaf wire"),
                    tr("%1, %2").arg(wireText(wire.diameter, std::nullopt), metalText(wire.metal)), QString());
            row_.length = wire.length;
            row_.mass = wire.mass;
            row_.packs = wire.buy.packs;
            row_.soldLength = millimetres(plan_.buying.leafWire.amount);
            row_.cost = wire.buy.cost;
            put();
        }
    }

    void cuts(const QString& what, const CuttingPlan& plan, const auto& pieces) {
        for (const CutBar& cut : plan.bars) {
            row_ = Row(what, pieces(cut), QString::number(cut.times));
            row_.length = cut.bar;
            if (cut.left > Length{})
                row_.note = tr("%1 left").arg(cutText(cut.left, plan_.units));
            put();
        }
    }

    void wraps() {
        for (std::size_t i = 0; i < needs_.wraps.size(); ++i) {
            const WrapSupply& supply = needs_.wraps[i];
            if (!(supply.toCut > Length{}))
                continue;
            const Wrap& wrap = plan_.binding.wraps[i];
            row_ = Row(tr("binding"), wrapName(wrap), QString());
            row_.length = supply.toCut;
            row_.packs = supply.buy.packs;
            row_.soldLength = wrap.sold.value_or(Length{});
            row_.cost = supply.buy.cost;
            if (supply.cutting.barCount > 0)
                row_.note = proofText(supply.cutting, plan_.units);
            put();
            cuts(tr("cut of the binding"), supply.cutting,
                 [&](const CutBar& cut) { return skeinPiecesText(plan_, supply, cut); });
        }
    }

    void bars() {
        for (const BarSupply& supply : needs_.bars) {
            row_ = Row(tr("straight wire"),
                       tr("%1, %2").arg(wireText(supply.diameter, std::nullopt), metalText(supply.metal)),
                       QString::number(supply.pieces.size()));
            row_.length = supply.length;
            row_.packs = supply.buy.packs;
            row_.cost = supply.buy.cost;
            if (supply.cutting.barCount > 0)
                row_.note = proofText(supply.cutting, plan_.units);
            put();
            cuts(tr("cut of the straight wire"), supply.cutting,
                 [&](const CutBar& cut) { return barPiecesText(plan_, supply, cut); });
        }
    }

    void filling(const QString& what, Mass mass, const Purchase& buy, const Pack& sold) {
        if (!(mass > Mass{}))
            return;
        row_ = Row(what, QString(), QString());
        row_.mass = mass;
        row_.packs = buy.packs;
        row_.soldMass = grams(sold.amount);
        row_.cost = buy.cost;
        put();
    }

    const Plan& plan_;
    const Supplies& needs_;
    Row row_;
    QString out_;
};

} // namespace

std::string suppliesCsv(const Plan& plan, const Supplies& needs) {
    return Table(plan, needs).run();
}

} // namespace stemwright
