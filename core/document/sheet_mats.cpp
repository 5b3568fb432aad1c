#include "core/document/mat_block.h"
#include "core/document/sheet_frame.h"

#include <algorithm>

namespace stemwright {

namespace {

constexpr double gap = 4; ///< between mats that share a page

/// A page with its shelves: mats stand side by side on a shelf, shelves one below the other.
struct Filling {
    bool landscape = false;
    struct Shelf {
        double top = 0, height = 0, used = 0;
    };
    std::vector<Shelf> shelves;
    std::vector<const MatBlock*> blocks;
    std::vector<PointMm> places; ///< within the room
    double used = 0;             ///< height of the shelves

    bool take(const MatBlock& block, const BoxMm& room) {
        constexpr double slack = 1e-6;
        for (Shelf& shelf : shelves) {
            // The lowest shelf may still grow down to the end of the room.
            const bool lowest = &shelf == &shelves.back();
            const double most = lowest ? room.height - shelf.top : shelf.height;
            if (block.height > most + slack || shelf.used + gap + block.width > room.width + slack)
                continue;
            places.push_back({shelf.used + gap, shelf.top});
            blocks.push_back(&block);
            shelf.used += gap + block.width;
            shelf.height = std::max(shelf.height, block.height);
            used = std::max(used, shelf.top + shelf.height);
            return true;
        }
        const double top = shelves.empty() ? 0 : used + gap;
        if (!shelves.empty() && top + block.height > room.height + slack)
            return false;
        shelves.push_back({top, block.height, block.width});
        places.push_back({0, top});
        blocks.push_back(&block);
        used = top + block.height;
        return true;
    }
};

} // namespace

std::vector<Page> matPages(const SheetContext& context) {
    const SheetFrame frame(context, SheetPage::mats,
                           {SheetCaution::cutWire, SheetCaution::sharpEnds, SheetCaution::smallParts});
    const BoxMm upright = frame.room(false), lying = frame.room(true);
    std::vector<MatBlock> blocks;
    for (const std::size_t stem : context.stems())
        for (MatBlock& block : matBlocks(context, stem, upright, lying))
            blocks.push_back(std::move(block));

    std::vector<Filling> fillings;
    for (const MatBlock& block : blocks) {
        const BoxMm& room = block.landscape ? lying : upright;
        // A stem of several sheets has each to itself, so that they can be joined.
        const auto there = block.sheets > 1
                               ? fillings.end()
                               : std::find_if(fillings.begin(), fillings.end(), [&](Filling& filling) {
                                     return filling.landscape == block.landscape &&
                                            filling.blocks.front()->sheets == 1 && filling.take(block, room);
                                 });
        if (there == fillings.end()) {
            fillings.push_back({});
            fillings.back().landscape = block.landscape;
            fillings.back().take(block, room);
        }
    }

    std::vector<Page> pages;
    for (const Filling& filling : fillings) {
        std::string names;
        for (const MatBlock* block : filling.blocks)
            names += (names.empty() ? "" : ", ") + context.plan.stems[block->stem].name;
        Page page = frame.page(filling.landscape, names);
        const BoxMm& room = filling.landscape ? lying : upright;
        for (std::size_t i = 0; i < filling.blocks.size(); ++i) {
            std::vector<Mark> marks = filling.blocks[i]->marks;
            shift(marks, room.x + filling.places[i].x, room.y + filling.places[i].y);
            std::move(marks.begin(), marks.end(), std::back_inserter(page.marks));
            page.stems.push_back(context.plan.stems[filling.blocks[i]->stem].id);
        }
        pages.push_back(std::move(page));
    }
    return pages;
}

} // namespace stemwright
