#pragma once

#include "core/plan/problem.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace stemwright {

/// A way into a JSON document, kept on the stack while it is walked and put into words only when something is
/// wrong: `stems[2].tiers[4].turn_deg`.
struct JsonPlace {
    const JsonPlace* up = nullptr; ///< null for the document itself
    std::string_view key;          ///< of a member; empty for an item of a list
    std::size_t index = 0;         ///< of an item
    bool item = false;

    std::string text() const;
};

/// A parsed JSON text as one flat list of nodes, each followed by those inside it. Takes memory in proportion
/// to the text (32 bytes a value, and the decoded text), never recurses while parsing, and keeps the order of
/// keys and the digits of numbers, so that what is not understood can be written again as it was.
class JsonTree {
public:
    enum class Type : std::uint8_t { null, no, yes, negative, natural, real, text, list, object };

    /// A piece of the strings that the tree keeps.
    struct Slice {
        std::uint32_t at, size;
    };

    struct Node {
        Type type = Type::null;
        bool used = false; ///< for the reader: somebody asked for it
        std::uint32_t keyAt = 0, keySize = 0;
        union {
            std::int64_t negative;
            std::uint64_t natural = 0;
            Slice text; ///< of a text, or the digits of a real number
        };
        std::uint32_t end = 0;   ///< the node after this one and all inside it
        std::uint32_t count = 0; ///< members or items
    };

    /// Parses a whole text: UTF-8 (a byte order mark is skipped), no key twice in an object, no deeper than
    /// `depth`, no number beyond the range of double. The place of a problem is `line L, column C`, both from 1
    /// and in characters; of a key that stands twice, the path to its object.
    static Result<JsonTree> parse(std::string_view text, int depth);

    std::vector<Node> nodes; ///< the document is nodes[0]

    std::string_view key(const Node& node) const { return slice(node.keyAt, node.keySize); }
    std::string_view text(const Node& node) const { return slice(node.text.at, node.text.size); }
    double number(const Node& node) const;
    /// Whether it is a number written without point and exponent; one beyond 64 bits is a `real` all the same.
    bool whole(const Node& node) const;

    /// Appends the value as JSON on one line, `{"a": 1, "b": [2, 3]}`.
    void append(std::string& out, std::size_t node) const;

private:
    class Builder;
    std::string_view slice(std::uint32_t at, std::uint32_t size) const {
        return std::string_view(strings_).substr(at, size);
    }

    std::string strings_;
};

/// The longest text that is read, in bytes: far more than any plan, and offsets fit 32 bits.
inline constexpr std::size_t longestJson = 1'000'000'000;

/// Appends a text in quotes, escaped as JSON wants it; bytes that are no UTF-8 become U+FFFD.
void appendJsonText(std::string& out, std::string_view text);
/// The first `most` bytes of a text, cut between characters and marked with … where something was cut.
std::string shortened(std::string_view text, std::size_t most = 40);

} // namespace stemwright
