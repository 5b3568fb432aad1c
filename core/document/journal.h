#pragma once

#include "core/plan/edit.h"
#include "core/plan/plan.h"
#include "core/plan/problem.h"

#include <string>
#include <string_view>

namespace stemwright {

/// A plan as it stood when its journal began, and where its file was.
struct JournalStart {
    std::string file;       ///< empty for a plan that was never saved
    std::string fileDigest; ///< what that file held, as whoever keeps the journal marks it
    Plan plan;

    friend bool operator==(const JournalStart&, const JournalStart&) = default;
};

/// The text a journal begins with. Behind it come lines of journalLine(), appended as the work goes on, so that
/// an edit costs its own few bytes and not those of the whole plan.
std::string journalText(const JournalStart& start);
/// One edit as a line with its line end.
std::string journalLine(const Edit& edit);

/// What a journal gives back.
struct Journal {
    JournalStart start;
    Plan plan; ///< after the edits
    int edits = 0;
    /// The last line was cut short, as when the power went while it was written; everything before it counts.
    bool cut = false;
};

/// Reads a journal back. A line that ends too soon is left out where it is the last; anything else that cannot
/// be read or applied ends the journal too, with `cut` set, since the edits before it are whole. A problem is
/// only what makes the start unreadable.
Result<Journal> journalFromText(std::string_view text);

} // namespace stemwright
