#pragma once

#include "core/figures/figures.h"
#include "core/figures/leaf_rows.h"
#include "core/plan/plan.h"

#include <set>
#include <string>
#include <variant>
#include <vector>

namespace stemwright {

// The pages as boxes in millimetres, for whoever paints them: x to the right and y down from the paper's upper
// left corner. Everything is true size; the painter scales nothing.

enum class Paper { a4, a3, letter };

/// Upright paper, millimetres: ISO 216 for A4 and A3, ANSI/ASME Y14.1 for Letter (from memory).
struct PaperSize {
    double width = 210;
    double height = 297;
};
PaperSize paperSize(Paper paper);

/// Left free at every edge: common printers lose 4 to 6 mm, some 12 to 14 at one edge (common practice, no
/// source); half an inch is the usual safe margin.
inline constexpr double pageMargin = 12.7;

enum class SheetPage { glance, mats, cards, leaves, supplies, pot };

struct SheetOptions {
    Paper paper = Paper::a4;
    /// Which pages, whatever their order here; empty for all.
    std::set<SheetPage> only;
    /// The stems of mats, cards and figures, as places in plan.stems; empty for all.
    std::set<std::size_t> stems;
    /// For printers without colour: the painter turns colours into greys and draws a pattern for each mix;
    /// codes stand for the mixes as ever.
    bool grey = false;
};

/// What a mark is drawn with; the painter knows the colours.
enum class Ink { black, quiet, hair, accent, wire, wireEdge, wash, paper };

struct LineMark {
    PointMm from, to;
    double width = 0.2; ///< mm
    Ink ink = Ink::black;
    bool dashed = false;
};

/// A polygon, or a run of straight pieces where it is open.
struct ShapeMark {
    std::vector<PointMm> points;
    bool closed = true;
    bool filled = false;
    Ink fill = Ink::wash;
    double width = 0; ///< of its edge; none at 0
    Ink ink = Ink::black;
    bool dashed = false;
};

struct CircleMark {
    PointMm middle;
    double radius = 1;
    bool filled = false;
    Ink fill = Ink::wash;
    double width = 0.2; ///< of its edge; none at 0
    Ink ink = Ink::black;
};

enum class LeafStyle {
    beads,  ///< a picture of it
    tinted, ///< on a mat: the outline in ink, its rows in pale colours, so that ink is spared and writing reads
    ghost,  ///< on a mat: the outline of one that belongs to the neighbouring sheet
};

/// A leaf with its base at `base`, pointing `degrees` clockwise from straight up. With no mix it is an empty
/// slot.
struct LeafMark {
    Leaf leaf;
    PointMm base;
    double degrees = 0;
    double scale = 1;   ///< of the real size: 1 on a mat
    double shorten = 1; ///< of the length alone, where it points towards or away from the viewer
    LeafStyle style = LeafStyle::beads;
    SlotRef slot; ///< which leaf of the plan it stands for; stem 0 for none
};

enum class Align { left, middle, right };

struct TextStyle {
    double points = 8;
    bool bold = false;

    friend bool operator==(const TextStyle&, const TextStyle&) = default;
};

/// One line of text. `at` is on its baseline: at its left, middle or right as `align` says.
struct TextMark {
    PointMm at;
    Align align = Align::left;
    std::string text;
    TextStyle style;
    Ink ink = Ink::black;
    double width = 0;   ///< mm, as measured
    double degrees = 0; ///< turned clockwise about `at`
};

struct BoxMm {
    double x = 0, y = 0, width = 0, height = 0;

    double right() const { return x + width; }
    double bottom() const { return y + height; }
    bool contains(const BoxMm& other) const;
    bool overlaps(const BoxMm& other) const;
};

/// The whole plant in its pot as it will look, as large as the box allows; seen as core/figures/view.h counts.
struct PlantMark {
    BoxMm box;
    double turnDegrees = 0;
    double tiltDegrees = 18;
};

using Mark = std::variant<LineMark, ShapeMark, CircleMark, LeafMark, TextMark, PlantMark>;

/// What a mark covers, with half of its line's width; of a turned text the box around it.
BoxMm boxOf(const Mark& mark, const Plan& plan);

struct Page {
    SheetPage what = SheetPage::glance;
    double width = 210; ///< mm, as the page is held
    double height = 297;
    bool landscape = false;
    std::vector<Mark> marks; ///< in the order of painting
    std::string title;       ///< what it is, for lists of pages
    std::vector<StemId> stems;
};

class TextMeasure;
class SheetWords;

/// The pages in the order of the work. The plan must be valid and the figures its own. The same arguments give
/// the same pages.
std::vector<Page> sheetPages(const Plan& plan, const Figures& figures, const SheetOptions& options,
                             const TextMeasure& measure, const SheetWords& words);

} // namespace stemwright
