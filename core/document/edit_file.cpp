#include "core/document/edit_file.h"

#include "core/document/edit_fields.h"
#include "core/document/json_reader.h"
#include "core/document/json_writer.h"

#include <array>
#include <utility>

namespace stemwright {

namespace {

template <std::size_t index> Edit readAlternative(JsonReader& reader) {
    std::variant_alternative_t<index, Edit::What> edit;
    fields(reader, edit);
    return edit;
}

template <std::size_t... index> constexpr auto alternativeReaders(std::index_sequence<index...>) {
    return std::array{&readAlternative<index>...};
}

Edit readEdit(JsonReader& reader) {
    static constexpr auto readers =
        alternativeReaders(std::make_index_sequence<std::variant_size_v<Edit::What>>());
    return readers[reader.word("edit", wordsForEdits())](reader);
}

void writeEdit(JsonWriter& writer, const Edit& edit) {
    writer.need("edit", std::string(wordsForEdits()[edit.what.index()]));
    std::visit([&](const auto& alternative) { fields(writer, alternative); }, edit.what);
}

} // namespace

void JsonWriter::edits(std::string_view key, const std::vector<Edit>& values) {
    each(key, values, [this](const Edit& edit) { writeEdit(*this, edit); });
}

void JsonReader::edits(std::string_view key, std::vector<Edit>& values) {
    each(key, [&](JsonReader& inside) { values.push_back(readEdit(inside)); });
}

std::string editText(const Edit& edit) {
    JsonWriter writer(true);
    writer.object(true, [&] { writeEdit(writer, edit); });
    return std::move(writer.out);
}

Result<Edit> editFromText(std::string_view text) {
    Result<JsonTree> tree = JsonTree::parse(text, editDepth);
    if (!tree)
        return tree.problem();
    JsonReader::Shared shared{std::move(tree).value(), {}};
    try {
        JsonReader reader(shared);
        Edit edit = readEdit(reader);
        if (shared.clipped)
            return std::move(*shared.clipped);
        return edit;
    } catch (const Refusal& refusal) {
        return refusal.problem;
    }
}

} // namespace stemwright
