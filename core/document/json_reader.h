#pragma once

#include "core/document/json_tree.h"
#include "core/document/part_fields.h"
#include "core/document/words.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace stemwright {

/// Thrown by JsonReader, and caught where a whole text is read: it never leaves core/document.
struct Refusal {
    Problem problem;
};

/// Reads parts by their fields (part_fields.h) out of a tree, one reader an object. It checks what the text
/// itself can have wrong: missing keys, types, words, numbers that are not whole or do not fit. Whether the
/// values make a plan is for firstProblem to say.
class JsonReader {
    using Type = JsonTree::Type;

public:
    /// What all readers of one text share.
    struct Shared {
        JsonTree tree;
        /// Whole numbers too large for an int read as the nearest int, so that the rules of the plan say what
        /// is allowed; this is the first of them, as the file has it.
        std::optional<Problem> clipped;
    };

    /// For the document itself, which must be an object.
    explicit JsonReader(Shared& shared) : JsonReader(shared, 0, JsonPlace{}) {}

    template <class T> void need(std::string_view key, T& value) {
        read(member(key), {&place_, key, 0, false}, value);
    }
    template <class T> bool keep(std::string_view key, T& value) {
        const std::optional<std::uint32_t> at = find(key);
        if (at)
            read(*at, {&place_, key, 0, false}, value);
        return at.has_value();
    }
    template <class T> void may(std::string_view key, T& value, const T& = {}) { keep(key, value); }
    template <class T> void list(std::string_view key, std::vector<T>& values, std::size_t most) {
        const std::optional<std::uint32_t> at = find(key);
        if (!at)
            return;
        const JsonPlace place{&place_, key, 0, false};
        const JsonTree::Node& node = nodeAt(*at, place, JsonTree::Type::list);
        if (node.count > most)
            throw Refusal{
                {ProblemCode::tooMany, place.text(), {std::to_string(node.count), std::to_string(most)}}};
        readItems(*at, place, values);
    }
    template <class T> void mayList(std::string_view key, std::vector<T>& values, std::size_t most) {
        list(key, values, most);
    }
    void extra(std::string& object);
    void extra(std::string& object, const std::string&) { extra(object); }
    /// For what keeps no unknown keys: any that nobody asked for is a problem.
    void noMore();
    void edits(std::string_view key, std::vector<Edit>& values);
    /// Which of the words the text of that key is.
    std::size_t word(std::string_view key, std::span<const std::string_view> words);
    /// Hands a reader for each object in a list to `read`.
    template <class Read> void each(std::string_view key, const Read& read) {
        const std::uint32_t list = member(key);
        const JsonPlace place{&place_, key, 0, false};
        const JsonTree::Node& node = nodeAt(list, place, Type::list);
        std::size_t index = 0;
        for (std::uint32_t i = list + 1; i < node.end; i = shared_.tree.nodes[i].end) {
            JsonReader inside(shared_, i, {&place, {}, index++, true});
            read(inside);
        }
    }

private:
    JsonReader(Shared& shared, std::uint32_t object, JsonPlace place);

    /// The node after checking its type.
    const JsonTree::Node& nodeAt(std::uint32_t at, const JsonPlace& place, Type expected) const;
    /// The member of that key, marked as used; keys mostly come in the order of the fields.
    std::optional<std::uint32_t> find(std::string_view key);
    /// The same of a key that must be there.
    std::uint32_t member(std::string_view key);
    [[noreturn]] void wrongType(const JsonTree::Node& node, const JsonPlace& place, const char* expected) const;
    std::size_t readWord(std::uint32_t at, const JsonPlace& place,
                         std::span<const std::string_view> words) const;
    std::uint32_t readId(std::uint32_t at, const JsonPlace& place) const;

    void read(std::uint32_t at, const JsonPlace& place, bool& value);
    void read(std::uint32_t at, const JsonPlace& place, int& value);
    void read(std::uint32_t at, const JsonPlace& place, double& value);
    void read(std::uint32_t at, const JsonPlace& place, Length& value);
    void read(std::uint32_t at, const JsonPlace& place, Mass& value);
    void read(std::uint32_t at, const JsonPlace& place, Angle& value);
    void read(std::uint32_t at, const JsonPlace& place, Srgb& value);
    void read(std::uint32_t at, const JsonPlace& place, std::string& value);
    template <class Tag> void read(std::uint32_t at, const JsonPlace& place, Id<Tag>& id) {
        id.value = readId(at, place);
    }
    template <class T> void read(std::uint32_t at, const JsonPlace& place, std::optional<T>& value) {
        read(at, place, value.emplace());
    }
    template <class T>
    requires std::is_enum_v<T>
    void read(std::uint32_t at, const JsonPlace& place, T& value) {
        value = static_cast<T>(readWord(at, place, wordsFor(T{})));
    }
    template <class T>
    requires std::is_class_v<T>
    void read(std::uint32_t at, const JsonPlace& place, T& part) {
        JsonReader inside(shared_, at, place);
        fields(inside, part);
    }
    template <class T> void readItems(std::uint32_t list, const JsonPlace& place, std::vector<T>& values) {
        const JsonTree::Node& node = shared_.tree.nodes[list];
        values.reserve(node.count);
        for (std::uint32_t i = list + 1; i < node.end; i = shared_.tree.nodes[i].end) {
            const JsonPlace item{&place, {}, values.size(), true};
            read(i, item, values.emplace_back());
        }
    }

    Shared& shared_;
    std::uint32_t object_;
    std::uint32_t next_; ///< the member after the one found last
    std::uint32_t used_ = 0;
    JsonPlace place_;
};

} // namespace stemwright
