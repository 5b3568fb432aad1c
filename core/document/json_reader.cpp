#include "core/document/json_reader.h"

#include <algorithm>
#include <limits>

namespace stemwright {

namespace {

using Type = JsonTree::Type;

constexpr const char* wholeNumber = "whole number";

const char* nameOf(Type type) {
    switch (type) {
    case Type::null:
        return "nothing";
    case Type::no:
    case Type::yes:
        return "true or false";
    case Type::negative:
    case Type::natural:
    case Type::real:
        return "number";
    case Type::text:
        return "text";
    case Type::list:
        return "list";
    case Type::object:
        return "object";
    }
    return "";
}

std::string asWritten(const JsonTree& tree, std::uint32_t at) {
    std::string out;
    tree.append(out, at);
    return shortened(out);
}

} // namespace

JsonReader::JsonReader(Shared& shared, std::uint32_t object, JsonPlace place)
    : shared_(shared), object_(object), next_(object + 1), place_(place) {
    nodeAt(object, place_, Type::object);
}

const JsonTree::Node& JsonReader::nodeAt(std::uint32_t at, const JsonPlace& place, Type expected) const {
    const JsonTree::Node& node = shared_.tree.nodes[at];
    if (node.type != expected)
        wrongType(node, place, nameOf(expected));
    return node;
}

void JsonReader::wrongType(const JsonTree::Node& node, const JsonPlace& place, const char* expected) const {
    const bool notWhole = node.type == Type::real && std::string_view(expected) == wholeNumber;
    throw Refusal{{ProblemCode::wrongType,
                   place.text(),
                   {expected, notWhole ? shortened(shared_.tree.text(node)) : nameOf(node.type)}}};
}

std::optional<std::uint32_t> JsonReader::find(std::string_view key) {
    JsonTree& tree = shared_.tree;
    const std::uint32_t end = tree.nodes[object_].end;
    const auto look = [&](std::uint32_t from, std::uint32_t to) -> std::optional<std::uint32_t> {
        for (std::uint32_t i = from; i < to; i = tree.nodes[i].end)
            if (tree.key(tree.nodes[i]) == key) {
                next_ = tree.nodes[i].end;
                used_ += !std::exchange(tree.nodes[i].used, true);
                return i;
            }
        return std::nullopt;
    };
    const std::uint32_t from = next_;
    if (const auto found = look(from, end))
        return found;
    return look(object_ + 1, from);
}

std::uint32_t JsonReader::member(std::string_view key) {
    const std::optional<std::uint32_t> at = find(key);
    if (!at)
        throw Refusal{{ProblemCode::missingKey, place_.text(), {std::string(key)}}};
    return *at;
}

std::size_t JsonReader::word(std::string_view key, std::span<const std::string_view> words) {
    return readWord(member(key), {&place_, key, 0, false}, words);
}

void JsonReader::extra(std::string& object) {
    const JsonTree& tree = shared_.tree;
    const JsonTree::Node& node = tree.nodes[object_];
    if (used_ == node.count)
        return;
    object = "{";
    for (std::uint32_t i = object_ + 1; i < node.end; i = tree.nodes[i].end) {
        if (tree.nodes[i].used)
            continue;
        if (object.size() > 1)
            object += ", ";
        appendJsonText(object, tree.key(tree.nodes[i]));
        object += ": ";
        tree.append(object, i);
    }
    object += '}';
}

void JsonReader::noMore() {
    const JsonTree& tree = shared_.tree;
    for (std::uint32_t i = object_ + 1; i < tree.nodes[object_].end; i = tree.nodes[i].end)
        if (!tree.nodes[i].used)
            throw Refusal{{ProblemCode::unknownKey, place_.text(), {shortened(tree.key(tree.nodes[i]))}}};
}

std::size_t JsonReader::readWord(std::uint32_t at, const JsonPlace& place,
                                 std::span<const std::string_view> words) const {
    const std::string_view text = shared_.tree.text(nodeAt(at, place, Type::text));
    const auto word = std::find(words.begin(), words.end(), text);
    if (word == words.end()) {
        std::string all;
        for (const std::string_view known : words)
            all.append(all.empty() ? "" : ", ").append(known);
        throw Refusal{{ProblemCode::unknownWord, place.text(), {shortened(text), all}}};
    }
    return static_cast<std::size_t>(word - words.begin());
}

std::uint32_t JsonReader::readId(std::uint32_t at, const JsonPlace& place) const {
    const JsonTree::Node& node = shared_.tree.nodes[at];
    constexpr std::uint32_t most = std::numeric_limits<std::uint32_t>::max();
    if (!shared_.tree.whole(node))
        wrongType(node, place, wholeNumber);
    if (node.type == Type::negative && node.negative == 0) // −0
        return 0;
    if (node.type != Type::natural || node.natural > most)
        throw Refusal{{ProblemCode::outOfRange,
                       place.text(),
                       {asWritten(shared_.tree, at), "1", std::to_string(most - 1)}}};
    return static_cast<std::uint32_t>(node.natural);
}

void JsonReader::read(std::uint32_t at, const JsonPlace& place, bool& value) {
    const JsonTree::Node& node = shared_.tree.nodes[at];
    if (node.type != Type::yes && node.type != Type::no)
        wrongType(node, place, "true or false");
    value = node.type == Type::yes;
}

void JsonReader::read(std::uint32_t at, const JsonPlace& place, int& value) {
    const JsonTree::Node& node = shared_.tree.nodes[at];
    if (!shared_.tree.whole(node))
        wrongType(node, place, wholeNumber);
    constexpr int least = std::numeric_limits<int>::min(), most = std::numeric_limits<int>::max();
    if (node.type == Type::natural && node.natural <= std::uint64_t{most}) {
        value = static_cast<int>(node.natural);
    } else if (node.type == Type::negative && node.negative >= least) {
        value = static_cast<int>(node.negative);
    } else {
        value = shared_.tree.number(node) < 0 ? least : most;
        if (!shared_.clipped)
            shared_.clipped =
                Problem{ProblemCode::outOfRange,
                        place.text(),
                        {asWritten(shared_.tree, at), std::to_string(least), std::to_string(most)}};
    }
}

void JsonReader::read(std::uint32_t at, const JsonPlace& place, double& value) {
    const JsonTree::Node& node = shared_.tree.nodes[at];
    if (node.type != Type::natural && node.type != Type::negative && node.type != Type::real)
        wrongType(node, place, "number");
    value = shared_.tree.number(node);
}

void JsonReader::read(std::uint32_t at, const JsonPlace& place, Length& value) {
    double number = 0;
    read(at, place, number);
    value = millimetres(number);
}

void JsonReader::read(std::uint32_t at, const JsonPlace& place, Angle& value) {
    double number = 0;
    read(at, place, number);
    value = degrees(number);
}

void JsonReader::read(std::uint32_t at, const JsonPlace& place, Mass& value) {
    double number = 0;
    read(at, place, number);
    value = grams(number);
}

void JsonReader::read(std::uint32_t at, const JsonPlace& place, Srgb& value) {
    const std::string_view text = shared_.tree.text(nodeAt(at, place, Type::text));
    const std::optional<Srgb> colour = parseSrgb(text);
    if (!colour)
        throw Refusal{{ProblemCode::badColour, place.text(), {shortened(text)}}};
    value = *colour;
}

void JsonReader::read(std::uint32_t at, const JsonPlace& place, std::string& value) {
    value = shared_.tree.text(nodeAt(at, place, Type::text));
}

} // namespace stemwright
