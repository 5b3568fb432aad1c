#include "core/document/json_tree.h"

#include "core/quantity/digits.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <cstdio>
#include <cstring>
#include <limits>
#include <utility>

namespace stemwright {

namespace {

/// Bytes of the well-formed UTF-8 character that starts here (RFC 3629, section 4), 0 where there is none.
std::size_t characterSize(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const auto follows = [&](std::size_t i, unsigned least = 0x80, unsigned most = 0xbf) {
        return i < text.size() && byte(i) >= least && byte(i) <= most;
    };
    const unsigned first = byte(0);
    if (first < 0x80)
        return 1;
    if (first >= 0xc2 && first <= 0xdf)
        return follows(1) ? 2 : 0;
    if (first >= 0xe0 && first <= 0xef) {
        const unsigned least = first == 0xe0 ? 0xa0 : 0x80; // no overlong form
        const unsigned most = first == 0xed ? 0x9f : 0xbf;  // no surrogate
        return follows(1, least, most) && follows(2) ? 3 : 0;
    }
    if (first >= 0xf0 && first <= 0xf4) {
        const unsigned least = first == 0xf0 ? 0x90 : 0x80;
        const unsigned most = first == 0xf4 ? 0x8f : 0xbf;
        return follows(1, least, most) && follows(2) && follows(3) ? 4 : 0;
    }
    return 0;
}

/// Where the text stops being UTF-8; its size where it never does.
std::size_t firstBadByte(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        std::uint64_t eight = 0;
        if (text.size() - at >= sizeof eight) {
            std::memcpy(&eight, text.data() + at, sizeof eight);
            if ((eight & 0x8080808080808080u) == 0) {
                at += sizeof eight;
                continue;
            }
        }
        const std::size_t size = characterSize(text.substr(at, 4));
        if (size == 0)
            break;
        at += size;
    }
    return at;
}

std::string lineAndColumn(std::string_view text, std::size_t at) {
    const std::string_view before = text.substr(0, std::min(at, text.size()));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const std::size_t start = before.rfind('\n') + 1; // npos + 1 is 0
    const auto column = 1 + std::count_if(before.begin() + static_cast<std::ptrdiff_t>(start), before.end(),
                                          [](char c) { return (c & 0xc0) != 0x80; });
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

/// Where a text, good so far, first goes deeper than allowed.
std::size_t tooDeepAt(std::string_view text, int depth) {
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (quoted && c == '\\')
            ++i;
        else if (c == '"')
            quoted = !quoted;
        else if (!quoted && (c == '[' || c == '{') && --depth < 0)
            return i;
        else if (!quoted && (c == ']' || c == '}'))
            ++depth;
    }
    return text.size();
}

/// Where a key of the document itself stands for the second time, in a text that is good so far.
std::size_t ownKeyTwiceAt(std::string_view text, std::string_view key) {
    int depth = 0;
    bool seen = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        depth += c == '[' || c == '{' ? 1 : c == ']' || c == '}' ? -1 : 0;
        if (c != '"')
            continue;
        const std::size_t start = i;
        for (++i; i < text.size() && text[i] != '"'; ++i)
            i += text[i] == '\\';
        const std::size_t next = text.find_first_not_of(" \t\r\n", i + 1);
        if (depth != 1 || next == std::string_view::npos || text[next] != ':')
            continue;
        const auto said = nlohmann::json::parse(text.substr(start, i + 1 - start), nullptr, false);
        if (said.is_string() && said.get_ref<const std::string&>() == key && std::exchange(seen, true))
            return start;
    }
    return text.size();
}

/// The word or number that this byte is part of, or else its one character; empty at the text's end.
std::string_view wordAt(std::string_view text, std::size_t at) {
    const auto ofWord = [&](std::size_t i) {
        const char c = text[i];
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '.' ||
               c == '+' || c == '-';
    };
    if (at >= text.size())
        return {};
    if (!ofWord(at))
        return text.substr(at, characterSize(text.substr(at)));
    std::size_t end = at;
    while (at > 0 && ofWord(at - 1))
        --at;
    while (end < text.size() && ofWord(end))
        ++end;
    return text.substr(at, end - at);
}

/// Shortened, and a control character by its number, since it would not be seen.
std::string visible(std::string_view word) {
    if (word.size() != 1 || static_cast<unsigned char>(word[0]) >= 0x20)
        return shortened(word);
    char code[8];
    std::snprintf(code, sizeof code, "U+%04X", static_cast<unsigned>(word[0]));
    return code;
}

} // namespace

std::string shortened(std::string_view text, std::size_t most) {
    if (text.size() <= most)
        return std::string(text);
    while (most > 0 && (text[most] & 0xc0) == 0x80)
        --most;
    return std::string(text.substr(0, most)) + "…";
}

std::string JsonPlace::text() const {
    std::vector<const JsonPlace*> way;
    for (const JsonPlace* place = this; place->up; place = place->up)
        way.push_back(place);
    std::string out;
    for (auto it = way.rbegin(); it != way.rend(); ++it) {
        if ((*it)->item) {
            out += "[" + std::to_string((*it)->index) + "]";
        } else {
            out += out.empty() ? "" : ".";
            out += shortened((*it)->key);
        }
    }
    return out;
}

/// What the library's parser tells its findings to; any false stops it.
class JsonTree::Builder {
public:
    using Json = nlohmann::json;

    Builder(std::string_view text, int depth) : text_(text), depth_(depth) {}

    JsonTree tree;
    std::optional<Problem> problem;

    bool null() { return add(Type::null), true; }
    bool boolean(bool value) { return add(value ? Type::yes : Type::no), true; }
    bool number_integer(Json::number_integer_t value) { return add(Type::negative).negative = value, true; }
    bool number_unsigned(Json::number_unsigned_t value) { return add(Type::natural).natural = value, true; }
    bool number_float(Json::number_float_t, const std::string& digits) {
        return keep(add(Type::real), digits), true;
    }
    bool string(const std::string& value) { return keep(add(Type::text), value), true; }
    bool binary(const Json::binary_t&) { return false; } // no JSON text has one

    bool start_object(std::size_t) { return open(Type::object); }
    bool start_array(std::size_t) { return open(Type::list); }
    bool key(const std::string& key) {
        keyAt_ = static_cast<std::uint32_t>(tree.strings_.size());
        keySize_ = static_cast<std::uint32_t>(key.size());
        tree.strings_ += key;
        return true;
    }
    bool end_object() {
        if (const auto twice = keyStandingTwice(tree.nodes[open_.back()])) {
            // The document itself has no path.
            problem =
                Problem{ProblemCode::duplicateKey,
                        open_.size() > 1 ? openPlace() : lineAndColumn(text_, ownKeyTwiceAt(text_, *twice)),
                        {shortened(*twice)}};
            return false;
        }
        return close();
    }
    bool end_array() { return close(); }

    bool parse_error(std::size_t read, const std::string&, const Json::exception& error) {
        const std::size_t at = std::min(read > 0 ? read - 1 : 0, text_.size());
        const std::string_view stray = wordAt(text_, at);
        const std::size_t start = stray.empty() ? at : static_cast<std::size_t>(stray.data() - text_.data());
        if (dynamic_cast<const Json::out_of_range*>(&error)) {
            const std::string most = shortestDigits(std::numeric_limits<double>::max());
            problem = Problem{
                ProblemCode::outOfRange, lineAndColumn(text_, start), {shortened(stray), "-" + most, most}};
        } else {
            problem = Problem{ProblemCode::notJson, lineAndColumn(text_, start), {visible(stray)}};
        }
        return false;
    }

private:
    Node& add(Type type) {
        if (!open_.empty())
            ++tree.nodes[open_.back()].count;
        Node& node = tree.nodes.emplace_back();
        node.type = type;
        node.end = static_cast<std::uint32_t>(tree.nodes.size());
        node.keyAt = keyAt_;
        node.keySize = std::exchange(keySize_, 0u);
        return node;
    }

    void keep(Node& node, const std::string& text) {
        node.text.at = static_cast<std::uint32_t>(tree.strings_.size());
        node.text.size = static_cast<std::uint32_t>(text.size());
        tree.strings_ += text;
    }

    bool open(Type type) {
        if (static_cast<int>(open_.size()) >= depth_) {
            problem = Problem{
                ProblemCode::tooDeep, lineAndColumn(text_, tooDeepAt(text_, depth_)), {std::to_string(depth_)}};
            return false;
        }
        add(type);
        open_.push_back(static_cast<std::uint32_t>(tree.nodes.size() - 1));
        return true;
    }

    bool close() {
        tree.nodes[open_.back()].end = static_cast<std::uint32_t>(tree.nodes.size());
        open_.pop_back();
        return true;
    }

    /// Sorted where there are many, so that no object takes quadratic time.
    std::optional<std::string_view> keyStandingTwice(const Node& object) {
        if (object.count < 2)
            return std::nullopt;
        keys_.clear();
        const auto size = static_cast<std::uint32_t>(tree.nodes.size());
        for (std::uint32_t i = open_.back() + 1; i < size; i = tree.nodes[i].end)
            keys_.push_back(tree.key(tree.nodes[i]));
        if (keys_.size() <= 12) {
            for (std::size_t i = 1; i < keys_.size(); ++i)
                for (std::size_t j = 0; j < i; ++j)
                    if (keys_[i] == keys_[j])
                        return keys_[i];
            return std::nullopt;
        }
        std::sort(keys_.begin(), keys_.end());
        const auto twice = std::adjacent_find(keys_.begin(), keys_.end());
        return twice == keys_.end() ? std::nullopt : std::optional(*twice);
    }

    /// The path to the innermost container that is still open.
    std::string openPlace() const {
        std::vector<JsonPlace> way(open_.size());
        for (std::size_t i = 1; i < open_.size(); ++i) {
            const Node& up = tree.nodes[open_[i - 1]];
            way[i].up = &way[i - 1];
            way[i].item = up.type == Type::list;
            way[i].index = up.count - 1;
            way[i].key = tree.key(tree.nodes[open_[i]]);
        }
        return way.back().text();
    }

    std::string_view text_;
    int depth_;
    std::vector<std::uint32_t> open_; ///< the containers around what comes next, outermost first
    std::uint32_t keyAt_ = 0, keySize_ = 0;
    std::vector<std::string_view> keys_;
};

Result<JsonTree> JsonTree::parse(std::string_view text, int depth) {
    if (text.size() > longestJson)
        return Problem{ProblemCode::tooLarge, "", {std::to_string(text.size()), std::to_string(longestJson)}};
    if (const std::size_t bad = firstBadByte(text); bad < text.size())
        return Problem{ProblemCode::notUtf8, lineAndColumn(text, bad), {}};
    Builder builder(text, depth);
    if (!nlohmann::json::sax_parse(text.begin(), text.end(), &builder))
        return std::move(*builder.problem);
    return std::move(builder.tree);
}

bool JsonTree::whole(const Node& node) const {
    return node.type == Type::natural || node.type == Type::negative ||
           (node.type == Type::real && text(node).find_first_of(".eE") == std::string_view::npos);
}

double JsonTree::number(const Node& node) const {
    if (node.type == Type::negative)
        return static_cast<double>(node.negative);
    if (node.type == Type::natural)
        return static_cast<double>(node.natural);
    // Only what is too small for a double fails here, and leaves 0: what is too large was refused while
    // parsing.
    double value = 0;
    const std::string_view digits = text(node);
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
}

void JsonTree::append(std::string& out, std::size_t at) const {
    const Node& node = nodes[at];
    switch (node.type) {
    case Type::null:
        out += "null";
        return;
    case Type::no:
        out += "false";
        return;
    case Type::yes:
        out += "true";
        return;
    case Type::negative:
        out += std::to_string(node.negative);
        return;
    case Type::natural:
        out += std::to_string(node.natural);
        return;
    case Type::real:
        out += text(node);
        return;
    case Type::text:
        appendJsonText(out, text(node));
        return;
    case Type::list:
    case Type::object:
        break;
    }
    out += node.type == Type::list ? '[' : '{';
    for (std::size_t i = at + 1; i < node.end; i = nodes[i].end) {
        if (i > at + 1)
            out += ", ";
        if (node.type == Type::object) {
            appendJsonText(out, key(nodes[i]));
            out += ": ";
        }
        append(out, i);
    }
    out += node.type == Type::list ? ']' : '}';
}

void appendJsonText(std::string& out, std::string_view text) {
    const bool plain = std::all_of(text.begin(), text.end(),
                                   [](char c) { return c >= 0x20 && c != '"' && c != '\\' && c != 0x7f; });
    if (plain) { // by far most of them, and every key
        out.append(1, '"').append(text).append(1, '"');
        return;
    }
    out += nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

} // namespace stemwright
