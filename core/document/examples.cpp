#include "core/document/examples.h"

#include "core/document/embedded_examples.h"
#include "core/document/plan_file.h"

#include <algorithm>
#include <cassert>

namespace stemwright {

namespace {

/// Tests read every one of them, so that a text that is no plan cannot get here.
Plan read(const EmbeddedExample& embedded) {
    Result<Plan> plan = planFromText(embedded.text);
    assert(plan.ok());
    return std::move(plan).value();
}

} // namespace

std::vector<ExampleInfo> examples() {
    std::vector<ExampleInfo> all;
    for (const EmbeddedExample& embedded : embeddedExamples()) {
        Plan plan = read(embedded);
        const std::string sentence = plan.about.note.substr(0, plan.about.note.find('\n'));
        all.push_back({std::string(embedded.key), std::move(plan.about.title), sentence});
    }
    return all;
}

std::string_view usualExample() {
    return embeddedExamples().front().key;
}

Plan example(std::string_view key) {
    const auto all = embeddedExamples();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const EmbeddedExample& e) { return e.key == key; });
    assert(found != all.end());
    return read(*found);
}

} // namespace stemwright
