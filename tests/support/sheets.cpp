#include "tests/support/sheets.h"

#include "tests/support/boards.h"

#include <cmath>
#include <cstdio>
#include <sstream>

namespace stemwright::test {

namespace {
std::string number(double value, const char* unit) {
    char text[40];
    std::snprintf(text, sizeof text, "%.1f %s", value, unit);
    return text;
}
} // namespace

double PlainMeasure::width(const std::string& utf8, TextStyle style) const {
    std::size_t letters = 0;
    for (const char c : utf8)
        letters += (static_cast<unsigned char>(c) & 0xC0u) != 0x80u;
    return static_cast<double>(letters) * 0.56 * style.points * millimetresPerPoint;
}

std::vector<std::string> PlainMeasure::lines(const std::string& utf8, TextStyle style, double room) const {
    std::vector<std::string> out{""};
    std::istringstream words(utf8);
    for (std::string word; words >> word;) {
        const std::string longer = out.back().empty() ? word : out.back() + " " + word;
        if (width(longer, style) <= room) {
            out.back() = longer;
            continue;
        }
        if (!out.back().empty())
            out.emplace_back();
        while (width(word, style) > room && word.size() > 1) {
            std::size_t cut = 1;
            const auto inside = [&](std::size_t at) {
                return at < word.size() && (static_cast<unsigned char>(word[at]) & 0xC0u) == 0x80u;
            };
            while (inside(cut))
                ++cut;
            for (std::size_t next = cut; next < word.size();) {
                do
                    ++next;
                while (inside(next));
                if (width(word.substr(0, next), style) > room)
                    break;
                cut = next;
            }
            if (cut >= word.size())
                break;
            out.back() = word.substr(0, cut);
            out.emplace_back();
            word = word.substr(cut);
        }
        out.back() = word;
    }
    return out;
}

std::string PlainWords::word(SheetWord which, const std::vector<std::string>& values) const {
    std::string out = "w" + std::to_string(static_cast<int>(which));
    for (const std::string& value : values)
        out += " " + value;
    return out;
}
std::string PlainWords::size(Length length) const {
    return number(inMillimetres(length), "mm");
}
std::string PlainWords::cut(Length length) const {
    return number(inMillimetres(length), "mm");
}
std::string PlainWords::wire(Length diameter, const std::optional<GaugeNumber>&) const {
    return number(inMillimetres(diameter), "mm");
}
std::string PlainWords::mass(Mass mass) const {
    return number(inGrams(mass), "g");
}
std::string PlainWords::metal(const MetalName& metal) const {
    return metal.own.empty() ? "metal " + std::to_string(static_cast<int>(metal.metal)) : metal.own;
}
std::string PlainWords::cost(double cost) const {
    return number(cost, "");
}
std::string PlainWords::hours(double minutes) const {
    return number(minutes / 60, "h");
}
std::string PlainWords::count(std::int64_t count) const {
    return std::to_string(count);
}
std::string PlainWords::drift(double drift) const {
    return number(drift, "");
}
std::string PlainWords::wrap(const Wrap& wrap) const {
    return "wrap " + std::to_string(static_cast<int>(wrap.with));
}
std::string PlainWords::arrangement(Arrangement arrangement) const {
    return "arrangement " + std::to_string(static_cast<int>(arrangement));
}
std::string PlainWords::plane(Plane plane) const {
    return plane == Plane::sideToSide ? "side to side" : "front to back";
}
std::string PlainWords::side(Side side) const {
    static const char* const names[] = {"left", "front", "right", "back"};
    return names[static_cast<int>(side)];
}
std::string PlainWords::caution(SheetCaution caution) const {
    return "A caution of the craft, number " + std::to_string(static_cast<int>(caution)) + ", as long as most.";
}

Plan awkwardBoard() {
    Plan plan = randomBoard(5, 9, 24, 8, 4);
    plan.about.date = "2026-03-02";
    plan.about.title = std::string(120, 'W') + " ";
    for (int i = 0; i < 18; ++i)
        plan.about.title += "long title ";
    plan.mixes[0].name = "<b>bold</b> & \"mix\"";
    plan.mixes[1].name = "Πράσινο της θάλασσας";
    plan.mixes[2].name = "Зелёный мох";
    plan.kinds[0].angle = degrees(0);
    plan.kinds[1].angle = degrees(115);
    plan.kinds[2].tipEnd = LeafEnd::pointed;
    plan.kinds[2].length = millimetres(3);
    plan.kinds[2].width = millimetres(2);
    plan.kinds[3].length = millimetres(95);
    plan.kinds[3].width = millimetres(40);
    plan.stems[0].arrangement = Arrangement::whorled;
    plan.stems[0].whorl = 5;
    for (Tier& tier : plan.stems[0].tiers)
        tier.slots.resize(5);
    plan.stems[1].arrangement = Arrangement::spiral;
    for (std::size_t t = 0; t < plan.stems[1].tiers.size(); ++t) {
        plan.stems[1].tiers[t].slots.resize(1);
        plan.stems[1].tiers[t].turn = wrapped(turnStep(plan.stems[1]) * static_cast<double>(t), degrees(360));
    }
    plan.stems[2].tiers.clear();
    plan.stems[2].name =
        "A stem with a name so long that it cannot stand in any column without being broken into "
        "several lines, and a little longer still";
    const std::vector<Tier> some(plan.stems[3].tiers.begin(), plan.stems[3].tiers.begin() + 6);
    plan.stems[3].tiers.clear();
    for (std::size_t t = 0; t < 400; ++t) {
        Tier tier = some[t % some.size()];
        tier.turn = degrees(90.0 * static_cast<double>(t % 4));
        tier.spacing = millimetres(2);
        plan.stems[3].tiers.push_back(std::move(tier));
    }
    plan.stems[4].tail = millimetres(700);
    plan.stems[5].tiers[2].spacing = millimetres(400);
    plan.stems[6].core = CoreWire{};
    plan.stems[6].core->diameter = millimetres(1.2);
    plan.stems[7].spacing = millimetres(0);
    plan.pot.plantingDepth = millimetres(15);
    // As much in stock as stands on the stems.
    for (Kind& kind : plan.kinds)
        for (StockLine& line : kind.stock)
            line.made = std::max(line.made, placed(plan, {kind.id, line.mix}));
    return plan;
}

} // namespace stemwright::test
