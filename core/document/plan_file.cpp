#include "core/document/plan_file.h"

#include "core/document/json_reader.h"
#include "core/document/json_writer.h"

namespace stemwright {

namespace {

/// Before anything else: is it a plan, and of a version known here?
void readHead(JsonReader& reader, const JsonReader::Shared& shared) {
    std::string format;
    if (!reader.keep("format", format) || format != planFormat)
        throw Refusal{{ProblemCode::notAPlan, "format", {}}};
    int version = 0;
    reader.need("version", version);
    const std::string newest = std::to_string(planVersion);
    const std::string written = shared.clipped ? shared.clipped->values[0] : std::to_string(version);
    if (version > planVersion)
        throw Refusal{{ProblemCode::newerVersion, "version", {written, newest}}};
    if (version < 1)
        throw Refusal{{ProblemCode::outOfRange, "version", {written, "1", newest}}};
}

} // namespace

std::string planText(const Plan& plan) {
    JsonWriter writer(false);
    writer.object(false, [&] {
        writer.need("format", std::string(planFormat));
        writer.need("version", planVersion);
        fields(writer, plan);
    });
    writer.out += '\n';
    return std::move(writer.out);
}

Result<Plan> planFromText(std::string_view text) {
    Result<JsonTree> tree = JsonTree::parse(text, planDepth);
    if (!tree)
        return tree.problem();
    if (tree.value().nodes[0].type != JsonTree::Type::object)
        return Problem{ProblemCode::notAPlan, "", {}};
    JsonReader::Shared shared{std::move(tree).value(), {}};
    Plan plan;
    try {
        JsonReader reader(shared);
        readHead(reader, shared);
        fields(reader, plan);
    } catch (const Refusal& refusal) {
        return refusal.problem;
    }
    if (std::optional<Problem> problem = firstProblem(plan)) {
        // The number that did not fit, and not the nearest one that did.
        if (shared.clipped && shared.clipped->place == problem->place)
            problem->values[0] = shared.clipped->values[0];
        return std::move(*problem);
    }
    if (shared.clipped)
        return std::move(*shared.clipped);
    return plan;
}

} // namespace stemwright
