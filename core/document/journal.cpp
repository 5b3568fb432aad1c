#include "core/document/journal.h"

#include "core/document/edit_file.h"
#include "core/document/json_reader.h"
#include "core/document/json_writer.h"
#include "core/document/plan_file.h"

#include <algorithm>
#include <utility>

namespace stemwright {

namespace {

constexpr std::string_view journalFormat = "stemwright-journal";
constexpr int headDepth = 4;

struct Head {
    std::string file;
    std::string digest;
    int planBytes = 0;
};

Result<Head> readHead(std::string_view line) {
    Result<JsonTree> tree = JsonTree::parse(line, headDepth);
    if (!tree)
        return tree.problem();
    if (tree.value().nodes[0].type != JsonTree::Type::object)
        return Problem{ProblemCode::notAPlan, "", {}};
    JsonReader::Shared shared{std::move(tree).value(), {}};
    Head head;
    try {
        JsonReader reader(shared);
        std::string format;
        if (!reader.keep("format", format) || format != journalFormat)
            return Problem{ProblemCode::notAPlan, "format", {}};
        reader.need("file", head.file);
        reader.need("digest", head.digest);
        reader.need("plan_bytes", head.planBytes);
    } catch (const Refusal& refusal) {
        return refusal.problem;
    }
    return head;
}

} // namespace

std::string journalText(const JournalStart& start) {
    const std::string plan = planText(start.plan);
    JsonWriter writer(true);
    writer.object(true, [&] {
        writer.need("format", std::string(journalFormat));
        writer.need("file", start.file);
        writer.need("digest", start.fileDigest);
        writer.need("plan_bytes", static_cast<int>(plan.size()));
    });
    return std::move(writer.out) + '\n' + plan;
}

std::string journalLine(const Edit& edit) {
    return editText(edit) + '\n';
}

Result<Journal> journalFromText(std::string_view text) {
    const std::size_t headEnd = text.find('\n');
    Result<Head> head = readHead(text.substr(0, headEnd));
    if (!head)
        return head.problem();
    const std::string_view rest =
        headEnd == std::string_view::npos ? std::string_view() : text.substr(headEnd + 1);
    const auto planBytes = static_cast<std::size_t>(std::max(0, head.value().planBytes));
    Result<Plan> plan = planFromText(rest.substr(0, planBytes));
    if (!plan)
        return plan.problem();

    Journal journal;
    journal.start = {std::move(head.value().file), std::move(head.value().digest), std::move(plan).value()};
    journal.plan = journal.start.plan;
    std::string_view lines = rest.substr(std::min(planBytes, rest.size()));
    while (!lines.empty()) {
        const std::size_t end = lines.find('\n');
        // Without its line end a line may be half of one, even where what is there can be read.
        Result<Edit> edit =
            end == std::string_view::npos ? Result<Edit>(Problem{}) : editFromText(lines.substr(0, end));
        if (!edit || !apply(journal.plan, edit.value())) {
            journal.cut = true;
            break;
        }
        ++journal.edits;
        lines.remove_prefix(end + 1);
    }
    return journal;
}

} // namespace stemwright
