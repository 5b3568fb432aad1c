#pragma once

#include "core/document/sheet_words.h"

#include <cstdint>

namespace stemwright::test {

/// The marks of one sort on a page, in the order of painting.
template <class One> std::vector<One> marksOf(const Page& page) {
    std::vector<One> out;
    for (const Mark& mark : page.marks)
        if (const auto* one = std::get_if<One>(&mark))
            out.push_back(*one);
    return out;
}

/// Letters of one width, a little wider than most fonts have them.
class PlainMeasure : public TextMeasure {
public:
    double width(const std::string& utf8, TextStyle style) const override;
    std::vector<std::string> lines(const std::string& utf8, TextStyle style, double width) const override;
};

/// Each word by its number with its values behind it, figures in millimetres and grams.
class PlainWords : public SheetWords {
public:
    std::string word(SheetWord which, const std::vector<std::string>& values) const override;
    std::string size(Length length) const override;
    std::string cut(Length length) const override;
    std::string wire(Length diameter, const std::optional<GaugeNumber>& gauge) const override;
    std::string mass(Mass mass) const override;
    std::string metal(const MetalName& metal) const override;
    std::string cost(double cost) const override;
    std::string hours(double minutes) const override;
    std::string count(std::int64_t count) const override;
    std::string drift(double drift) const override;
    std::string wrap(const Wrap& wrap) const override;
    std::string arrangement(Arrangement arrangement) const override;
    std::string plane(Plane plane) const override;
    std::string side(Side side) const override;
    std::string caution(SheetCaution caution) const override;
    std::string atStart(const std::string& said) const override { return said; }
};

/// Plants that are hard to put on paper: whorls, spirals, stems without leaves and with 400 tiers, a long tail,
/// leaves that hang, that are huge or tiny, names that are long or in other scripts or hold markup.
Plan awkwardBoard();

} // namespace stemwright::test
