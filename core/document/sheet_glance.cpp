#include "core/document/sheet_glance_lists.h"
#include "core/document/stem_picture.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double columnGap = 3;      ///< mm between stems, before scaling
constexpr double nameRoom = 7;       ///< below a row of stems
constexpr double pictureTall = 96;   ///< the most that the picture takes of a small page …
constexpr double picturePart = 0.36; ///< … and of the height of a large one
constexpr double pictureGap = 2;     ///< below it
constexpr double largest = 1.6;      ///< of the real size
constexpr double plantPart = 0.45;   ///< of the width, for the plant in its pot
constexpr double sideGap = 8;        ///< between the plant and the stems beside it
constexpr double leastPicture = 66;  ///< mm that it keeps where the lists below would not fit otherwise
constexpr double swatch = 9;         ///< room for the picture of a mix

/// Stems in their proportions, side by side with their feet on one line, in as many lines as make them largest.
void stemsBeside(SheetFlow& flow, const SheetContext& context, const BoxMm& room) {
    std::vector<StemPicture> stems;
    const std::vector<std::size_t> places = context.stems();
    for (const std::size_t place : places)
        stems.push_back(stemPicture(context, place));
    const double width = room.width, tall = room.height;
    const auto scaleFor = [&](std::size_t lines) {
        const std::size_t each = (stems.size() + lines - 1) / lines;
        double scale = largest, heights = 0;
        for (std::size_t from = 0; from < stems.size(); from += each) {
            double sum = 0, height = 1, feet = 0;
            for (std::size_t i = from; i < std::min(from + each, stems.size()); ++i) {
                sum += stems[i].left + stems[i].right + columnGap;
                height = std::max(height, stems[i].up);
                feet = std::max(feet, stems[i].down);
            }
            heights += height + feet;
            scale = std::min(scale, width / std::max(sum, 1.0));
        }
        return std::min(scale, std::max(tall - nameRoom * static_cast<double>(lines), 10.0) / heights);
    };
    std::size_t lines = 1;
    for (std::size_t next = 2; next <= std::min<std::size_t>(stems.size(), 8); ++next)
        if (scaleFor(next) > scaleFor(lines) * 1.02)
            lines = next;
    const double scale = scaleFor(lines);
    const std::size_t each = (stems.size() + lines - 1) / lines;
    // In the middle of their room where they do not fill it.
    double used = 0;
    for (std::size_t from = 0; from < stems.size(); from += each) {
        double up = 1, down = 0;
        for (std::size_t i = from; i < std::min(from + each, stems.size()); ++i) {
            up = std::max(up, stems[i].up * scale);
            down = std::max(down, stems[i].down * scale);
        }
        used += up + down + nameRoom;
    }
    double y = room.y + std::max(tall - used, 0.0) / 2;
    for (std::size_t from = 0; from < stems.size(); from += each) {
        const std::size_t to = std::min(from + each, stems.size());
        double sum = 0, up = 1, down = 0;
        for (std::size_t i = from; i < to; ++i) {
            sum += (stems[i].left + stems[i].right) * scale;
            up = std::max(up, stems[i].up * scale);
            down = std::max(down, stems[i].down * scale);
        }
        const double gap = (width - sum) / static_cast<double>(to - from);
        double x = room.x;
        const double foot = y + up;
        Canvas canvas = flow.canvas();
        canvas.line({room.x, foot}, {room.right(), foot}, 0.25, Ink::hair);
        for (std::size_t i = from; i < to; ++i) {
            const double own = (stems[i].left + stems[i].right) * scale + gap;
            const double axis = x + gap / 2 + stems[i].left * scale;
            for (Mark mark : stems[i].marks) {
                if (auto* leaf = std::get_if<LeafMark>(&mark)) {
                    leaf->base = {axis + leaf->base.x * scale, foot + leaf->base.y * scale};
                    leaf->scale *= scale;
                } else if (auto* shape = std::get_if<ShapeMark>(&mark)) {
                    for (PointMm& p : shape->points)
                        p = {axis + p.x * scale, foot + p.y * scale};
                }
                canvas.add(std::move(mark));
            }
            // The number in the list below where the name would run into its neighbour's.
            const std::string& name = context.plan.stems[places[i]].name;
            const std::string shown =
                canvas.width(name, type::small) <= own - 1 ? name : std::to_string(places[i] + 1);
            canvas.text({x + own / 2, foot + down + 3.6}, shown, type::small, Align::middle);
            x += own;
        }
        y += up + down + nameRoom;
    }
}

/// The plant in its pot, and beside it the stems one by one; the stems alone where not all are asked for.
void picture(SheetFlow& flow, const SheetContext& context, double tall) {
    flow.need(tall);
    BoxMm stems{flow.room().x, flow.y(), flow.room().width, tall};
    if (context.options.stems.empty()) {
        const double part = stems.width * plantPart;
        flow.canvas().add(PlantMark{{stems.x, stems.y, part, tall}, 0, 18});
        stems.x += part + sideGap;
        stems.width -= part + sideGap;
    }
    stemsBeside(flow, context, stems);
    flow.skip(tall + pictureGap);
}

} // namespace

std::vector<Page> glancePages(const SheetContext& context) {
    const SheetFrame frame(context, SheetPage::glance,
                           {SheetCaution::smallParts, SheetCaution::tallPlant, SheetCaution::estimate});
    const SheetWords& words = context.words;
    const PotFigures& pot = context.figures.pot;
    SheetFlow flow(context, frame, words.word(SheetWord::glanceTitle));
    std::string summary = words.word(
        SheetWord::summary, {words.count(pot.stems), words.count(pot.leaves), words.count(pot.inTray)});
    if (pot.leaves > 0)
        summary += " " + words.word(SheetWord::heights, {words.size(pot.shortest), words.size(pot.tallest)});
    flow.paragraph(summary, type::text);
    flow.skip(2);
    if (context.stems().empty()) {
        flow.paragraph(words.word(SheetWord::noStems), type::text, Ink::quiet);
        if (const std::optional<SheetListing> mixes = mixesListing(context, flow.room().width, 1))
            mixes->put(flow);
    } else {
        const double width = flow.room().width;
        const SheetListing stems = stemsListing(context, width);
        std::optional<SheetListing> mixes = mixesListing(context, width, 1);
        double tall = std::min(std::max(pictureTall, flow.room().height * picturePart), flow.left() * 0.5);
        // All on one page, if the mixes in two halves or a smaller picture can bring that about.
        const auto room = [&](const std::optional<SheetListing>& list) {
            return flow.left() - pictureGap - stems.height(flow) - (list ? list->height(flow) : 0);
        };
        if (room(mixes) < tall) {
            std::optional<SheetListing> halves = mixesListing(context, width, 2);
            if (room(mixes) < leastPicture || room(halves) >= tall)
                mixes = std::move(halves);
            if (room(mixes) >= leastPicture)
                tall = std::min(tall, room(mixes));
        }
        picture(flow, context, tall);
        stems.put(flow);
        if (mixes)
            mixes->put(flow);
    }
    return flow.take();
}

} // namespace stemwright
