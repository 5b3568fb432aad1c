#pragma once

#include "core/document/sheet_words.h"

#include <QFont>
#include <QFontMetricsF>

#include <map>
#include <memory>
#include <unordered_map>

namespace stemwright {

/// Fonts of the paper are measured and painted in hundredths of a millimetre, so that both agree on every
/// device.
inline constexpr double sheetUnits = 100;
QFont sheetFont(TextStyle style);
/// A line of text in the pieces that are shaped, measured and painted by themselves: at marks such as hyphens
/// and brackets, which some fonts, Inter among them, put as other glyphs beside figures and capitals. Those
/// have no letter behind them in a PDF, and a date would come back without its hyphens. Text that runs from the
/// right is left whole.
QStringList shapedApart(const QString& line);

/// Measures with the fonts that paint, and remembers what it measured. Not for two threads at once.
class FontMeasure : public TextMeasure {
public:
    FontMeasure();
    ~FontMeasure() override;
    double width(const std::string& utf8, TextStyle style) const override;
    std::vector<std::string> lines(const std::string& utf8, TextStyle style, double width) const override;

private:
    struct Face {
        TextStyle style;
        QFont font;
        QFontMetricsF metrics;
        std::unordered_map<std::string, double> widths;
        std::map<std::pair<std::string, double>, std::vector<std::string>> broken; ///< by text and room, mm
    };
    Face& face(TextStyle style) const;
    std::vector<std::string> brokenLines(const std::string& utf8, TextStyle style, double width) const;

    mutable std::vector<std::unique_ptr<Face>> faces_;
};

/// The paper's words in the language of the program, and figures in the plan's units. A figure and its unit
/// hold together by no-break spaces.
class TranslatedWords : public SheetWords {
public:
    explicit TranslatedWords(Units units) : units_(std::move(units)) {}

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
    std::string atStart(const std::string& said) const override;

private:
    Units units_;
};

} // namespace stemwright
