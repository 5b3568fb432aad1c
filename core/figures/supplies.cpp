#include "core/figures/supplies.h"

#include "core/figures/binding_steps.h"
#include "core/figures/binding_time.h"
#include "core/figures/height.h"
#include "core/plan/making.h"
#include "core/quantity/bead.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace stemwright {

namespace {

Purchase purchase(double needed, const Pack& pack) {
    if (!(pack.amount > 0) || !(needed > 0))
        return {};
    // What fills the last pack to the brim needs no other.
    const double packs = std::ceil(needed / pack.amount - 1e-9);
    constexpr double mostCounted = 1e15; // beyond it a double skips whole numbers
    return {static_cast<std::int64_t>(std::min(packs, mostCounted)), packs * pack.price};
}

class Shopper {
public:
    Shopper(const Plan& plan, const Figures& figures)
        : plan_(plan), figures_(figures), tables_(plan), toMake_(stillToMake(plan)) {}

    Supplies run() {
        beads();
        leafWire();
        wraps();
        bars();
        pot();
        time();
        return std::move(out_);
    }

private:
    double withSpare(double amount) const { return amount * (1 + plan_.buying.spare); }
    Purchase add(Purchase bought) {
        out_.cost += bought.cost;
        return bought;
    }

    void beads() {
        std::map<std::pair<std::size_t, std::string>, std::int64_t> needed;
        for (std::size_t i = 0; i < toMake_.size(); ++i) {
            const PlanTables::Line& line = tables_.lines()[i];
            out_.leavesToMake += toMake_[i];
            for (const PlanTables::ColourBeads& part : line.beads)
                needed[{part.colour, plan_.kinds[line.kind].beadSize}] += std::int64_t{toMake_[i]} * part.beads;
        }
        for (const auto& [what, count] : needed) {
            if (count == 0)
                continue;
            BeadSupply supply{plan_.colours[what.first].id, what.second, count, 0, {}, {}, {}};
            supply.withSpare =
                static_cast<std::int64_t>(std::ceil(withSpare(static_cast<double>(count)) - 1e-6));
            if (const auto size = beadSizeNamed(plan_, what.second)) {
                supply.mass = static_cast<double>(supply.withSpare) * size->mass;
                supply.strung = static_cast<double>(supply.withSpare) * size->pitch;
            }
            const Pack& own = plan_.colours[what.first].sold;
            supply.buy = add(purchase(inGrams(supply.mass), own.amount > 0 ? own : plan_.buying.beads));
            out_.beads.push_back(std::move(supply));
        }
    }

    void leafWire() {
        std::map<std::pair<Length, MetalName>, Length> needed;
        for (std::size_t i = 0; i < toMake_.size(); ++i) {
            const Kind& kind = plan_.kinds[tables_.lines()[i].kind];
            needed[{kind.wireDiameter, metalNameOf(kind)}] += toMake_[i] * kind.wire;
        }
        for (const auto& [what, length] : needed) {
            if (length == Length{})
                continue;
            LeafWireSupply supply{
                what.first, what.second, millimetres(withSpare(inMillimetres(length))), {}, {}};
            supply.mass = massOfWire(figuresOf(plan_, what.second), what.first, supply.length);
            supply.buy = add(purchase(inMillimetres(supply.length), leafWirePack(plan_.buying, what.first)));
            out_.leafWire.push_back(supply);
        }
    }

    void wraps() {
        for (std::size_t w = 0; w < plan_.binding.wraps.size(); ++w) {
            WrapSupply supply;
            std::vector<CutPiece> pieces;
            for (std::size_t i = 0; i < plan_.stems.size(); ++i) {
                const Length length = figures_.stems[i].wraps[w].toCut;
                if (!isStillToCut(plan_.stems[i]) || length == Length{})
                    continue;
                supply.toCut += length;
                supply.stems.push_back(plan_.stems[i].id);
                pieces.push_back({millimetres(std::ceil(inMillimetres(length) - 1e-6)), 1});
            }
            if (const auto& sold = plan_.binding.wraps[w].sold) {
                supply.cutting = cuttingPlan(pieces, std::vector<Length>{*sold}, limits_);
                const double price = w < plan_.buying.wraps.size() ? plan_.buying.wraps[w].price : 0;
                supply.buy = add({supply.cutting.barCount, supply.cutting.barCount * price});
            }
            out_.wraps.push_back(std::move(supply));
        }
    }

    void piece(Length diameter, const MetalName& metal, Length length, StemId stem, bool stake) {
        auto it = std::find_if(out_.bars.begin(), out_.bars.end(), [&](const BarSupply& bars) {
            return bars.diameter == diameter && bars.metal == metal;
        });
        if (it == out_.bars.end()) {
            out_.bars.push_back({diameter, metal, {}, {}, {}, {}, {}, {}});
            it = out_.bars.end() - 1;
        }
        it->pieces.push_back({millimetres(std::ceil(inMillimetres(length) - 1e-6)), 1});
        it->stems.push_back(stem);
        it->stakes.push_back(stake);
        it->length += it->pieces.back().length;
    }

    void bars() {
        const Stake& stake = plan_.pot.stake;
        for (const Stem& stem : plan_.stems) {
            if (!isStillToCut(stem))
                continue;
            piece(stake.diameter, metalNameOf(stake), stakeLength(plan_.pot), stem.id, true);
            if (stem.core)
                piece(stem.core->diameter, metalNameOf(*stem.core), lengthOfStem(stem), stem.id, false);
        }
        for (BarSupply& supply : out_.bars) {
            const std::vector<Bar> sold = barsFor(plan_.buying, supply.diameter);
            if (sold.empty())
                continue;
            std::vector<Length> lengths;
            for (const Bar& bar : sold)
                lengths.push_back(bar.length);
            supply.cutting = cuttingPlan(supply.pieces, lengths, limits_);
            Purchase bought{supply.cutting.barCount, 0};
            for (const CutBar& cut : supply.cutting.bars)
                bought.cost += cut.times * priceOf(sold, cut.bar);
            supply.buy = add(bought);
        }
    }

    static double priceOf(const std::vector<Bar>& sold, Length length) {
        // Where one length stands there at several prices, she takes the cheapest that is known.
        double price = 0;
        for (const Bar& bar : sold)
            if (std::abs(inMillimetres(bar.length - length)) < 0.11 && bar.price > 0)
                price = price > 0 ? std::min(price, bar.price) : bar.price;
        return price;
    }

    void pot() {
        const PotBalance balance = potBalance(plan_, figures_);
        out_.clay = balance.clay;
        out_.cover = balance.cover;
        out_.clayToBuy = add(purchase(inGrams(balance.clay), plan_.buying.clay));
        out_.coverToBuy = add(purchase(inGrams(balance.cover), plan_.buying.cover));
    }

    void time() {
        for (std::size_t i = 0; i < toMake_.size(); ++i) {
            const double minutes = plan_.kinds[tables_.lines()[i].kind].minutes;
            out_.minutesLeft += toMake_[i] * minutes;
            out_.minutesPartly = out_.minutesPartly || (toMake_[i] > 0 && minutes == 0);
        }
        const BindingTime binding = bindingTime(plan_);
        out_.tiersToBind = binding.tiersToBind;
        out_.minutesLeft += binding.minutesLeft();
        out_.minutesPartly = out_.minutesPartly || (binding.tiersToBind > 0 && binding.minutesPerTier == 0);
    }

    const Plan& plan_;
    const Figures& figures_;
    PlanTables tables_;
    std::vector<int> toMake_; ///< by line of the tables
    /// As far as it takes: forty unlike pieces from three sorts of bar are proved within half a second, beside
    /// the window's own work.
    CuttingLimits limits_;
    Supplies out_;
};

} // namespace

Supplies supplies(const Plan& plan, const Figures& figures) {
    return Shopper(plan, figures).run();
}

} // namespace stemwright
