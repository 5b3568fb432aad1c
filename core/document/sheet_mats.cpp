#include "core/document/mat_block.h"
#include "core/document/sheet_frame.h"

#include <algorithm>

namespace stemwright {

namespace {

constexpr double gap = 4; ///< between mats that share a page

/// A page that is being filled: every mat as high up as it can stand, and there as far to the left. What is
/// below the lower edge of those that stand above is free, so that is all there is to remember.
class Filling {
public:
    Filling(bool landscape, const BoxMm& room) : landscape_(landscape), room_(room) {
        edge_.push_back({0, room.width, 0});
    }

    bool landscape() const { return landscape_; }
    const BoxMm& room() const { return room_; }
    const std::vector<const MatBlock*>& blocks() const { return blocks_; }
    PointMm place(std::size_t i) const { return places_[i]; }

    bool take(const MatBlock& block) {
        // Where a mat may begin: at the left of each piece of the edge, below all that are beneath its width.
        const double wide = block.width;
        std::size_t best = edge_.size();
        double lowest = 0;
        for (std::size_t i = 0; i < edge_.size(); ++i) {
            if (edge_[i].left + wide > room_.width + slack)
                break;
            double top = 0;
            for (std::size_t k = i; k < edge_.size() && edge_[k].left < edge_[i].left + wide - slack; ++k)
                top = std::max(top, edge_[k].bottom);
            if (top + block.height <= room_.height + slack && (best == edge_.size() || top < lowest - slack)) {
                best = i;
                lowest = top;
            }
        }
        // What is larger than any page has one to itself.
        if (best == edge_.size() && !(blocks_.empty() && landscape_ == block.landscape))
            return false;
        const double left = best == edge_.size() ? 0 : edge_[best].left;
        blocks_.push_back(&block);
        places_.push_back({left, lowest});
        const double whole = block.besideFrom > 0 ? block.besideFrom : wide + gap;
        cover(left, left + whole, lowest + block.height + gap);
        if (block.besideFrom > 0)
            cover(left + whole, left + wide + gap, lowest + block.besideHeight + gap);
        return true;
    }

private:
    static constexpr double slack = 1e-6;
    struct Piece {
        double left, right, bottom;
    };

    void cover(double left, double right, double bottom) {
        std::vector<Piece> next;
        for (const Piece& piece : edge_) {
            if (piece.left < left)
                next.push_back({piece.left, std::min(piece.right, left), piece.bottom});
            if (piece.left <= left && left < piece.right)
                next.push_back({left, std::min(right, room_.width), bottom});
            if (piece.right > right)
                next.push_back({std::max(piece.left, right), piece.right, piece.bottom});
        }
        edge_ = std::move(next);
    }

    bool landscape_;
    BoxMm room_;
    std::vector<Piece> edge_; ///< from left to right
    std::vector<const MatBlock*> blocks_;
    std::vector<PointMm> places_;
};

/// Pages in the order of their first stems. Each is held the way that lets it take more of the mats that are
/// left; what fits no more on it waits for the next.
std::vector<Filling> fill(const std::vector<MatBlock>& blocks, const BoxMm& upright, const BoxMm& lying) {
    std::vector<Filling> fillings;
    std::vector<const MatBlock*> left;
    for (const MatBlock& block : blocks)
        left.push_back(&block);
    while (!left.empty()) {
        const MatBlock& first = *left.front();
        const auto filled = [&](bool landscape) {
            Filling page(landscape, landscape ? lying : upright);
            if (!page.take(first))
                return page;
            if (first.sheets > 1) {
                // A stem's own sheets stand side by side where they can, and no other stem between them.
                for (std::size_t i = 1; i < left.size() && left[i]->stem == first.stem; ++i)
                    if (!page.take(*left[i]))
                        break;
                return page;
            }
            for (std::size_t i = 1; i < left.size(); ++i)
                if (left[i]->sheets == 1)
                    page.take(*left[i]);
            return page;
        };
        Filling page = filled(first.landscape);
        if (Filling other = filled(!first.landscape); other.blocks().size() > page.blocks().size())
            page = std::move(other);
        std::erase_if(left, [&](const MatBlock* block) {
            return std::find(page.blocks().begin(), page.blocks().end(), block) != page.blocks().end();
        });
        fillings.push_back(std::move(page));
    }
    return fillings;
}

} // namespace

std::vector<Page> matPages(const SheetContext& context) {
    const SheetFrame frame(context, SheetPage::mats,
                           {SheetCaution::cutWire, SheetCaution::sharpEnds, SheetCaution::smallParts},
                           context.ownMeasure());
    const BoxMm upright = frame.room(false), lying = frame.room(true);
    std::vector<MatBlock> blocks;
    for (const std::size_t stem : context.stems())
        for (MatBlock& block : matBlocks(context, stem, upright, lying))
            blocks.push_back(std::move(block));

    std::vector<Page> pages;
    for (const Filling& filling : fill(blocks, upright, lying)) {
        std::string names;
        const MatBlock* before = nullptr;
        for (const MatBlock* block : filling.blocks()) {
            if (!before || before->stem != block->stem)
                names += (names.empty() ? "" : ", ") + context.plan.stems[block->stem].name;
            before = block;
        }
        Page page = frame.page(filling.landscape(), names);
        for (std::size_t i = 0; i < filling.blocks().size(); ++i) {
            const MatBlock& block = *filling.blocks()[i];
            std::vector<Mark> marks = block.marks;
            shift(marks, filling.room().x + filling.place(i).x, filling.room().y + filling.place(i).y);
            std::move(marks.begin(), marks.end(), std::back_inserter(page.marks));
            if (page.stems.empty() || page.stems.back() != context.plan.stems[block.stem].id)
                page.stems.push_back(context.plan.stems[block.stem].id);
        }
        pages.push_back(std::move(page));
    }
    return pages;
}

} // namespace stemwright
