#pragma once

#include "core/document/sheet_canvas.h"
#include "core/figures/supplies.h"

#include <string>
#include <vector>

namespace stemwright {

/// What stands on every page: title, the plan's name and date, page of pages, the two rules and the cautions
/// that belong to the page. Gives the room that is left between.
class SheetFrame {
public:
    /// `remark` stands once on every page, before its cautions; none where it is empty.
    SheetFrame(const SheetContext& context, SheetPage what, std::vector<SheetCaution> cautions,
               std::string remark = {});

    /// The room between header and footer of such a page. The same for every page of this frame.
    BoxMm room(bool landscape) const;
    /// A page with header and footer on it; the number of pages is filled in by finishPages.
    Page page(bool landscape, const std::string& title) const;

private:
    double headHeight(double width) const;
    double footHeight(double width) const;
    std::string title() const;

    const SheetContext& context_;
    SheetPage what_;
    std::vector<SheetCaution> cautions_;
    std::string remark_;
};

/// Writes "page 3 of 12" where each page's header has its place for it.
void finishPages(const SheetContext& context, std::vector<Page>& pages);

// One file a sort of page.
std::vector<Page> glancePages(const SheetContext& context);
std::vector<Page> matPages(const SheetContext& context);
std::vector<Page> cardPages(const SheetContext& context);
std::vector<Page> leavesPages(const SheetContext& context);
std::vector<Page> suppliesPages(const SheetContext& context, const Supplies& supplies);
std::vector<Page> potPages(const SheetContext& context);

} // namespace stemwright
