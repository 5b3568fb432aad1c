#pragma once

#include "core/document/json_tree.h"
#include "core/document/part_fields.h"
#include "core/document/words.h"
#include "core/quantity/digits.h"

#include <concepts>
#include <string>
#include <string_view>
#include <utility>

namespace stemwright {

/// Writes parts as JSON by their fields (part_fields.h). What a person reads line by line gets a line for each
/// key (the plan, kinds, stems, wraps, pot); everything smaller stands on one line, so that a board has a line
/// a tier. The same value gives the same bytes.
class JsonWriter {
public:
    explicit JsonWriter(bool allOnOneLine) : frame_{allOnOneLine, false} {}

    std::string out;

    template <class T> void need(std::string_view key, const T& value) {
        this->key(key);
        write(value);
    }
    template <class T> void keep(std::string_view key, const T& value) { need(key, value); }
    template <class T> void may(std::string_view key, const T& value, const T& absent = {}) {
        if (!(value == absent))
            need(key, value);
    }
    template <class List> void list(std::string_view key, const List& values, std::size_t) {
        this->key(key);
        write(values);
    }
    template <class List> void mayList(std::string_view key, const List& values, std::size_t most) {
        if (!values.empty())
            list(key, values, most);
    }
    /// The members of objects that stand here as text.
    void extra(std::string_view object) {
        if (object.size() > 2) {
            separate();
            out += object.substr(1, object.size() - 2);
        }
    }
    void extra(std::string_view own, std::string_view other) {
        extra(own);
        extra(other);
    }

    void noMore() {}
    void edits(std::string_view key, const std::vector<Edit>& values);
    /// A list of objects whose members `members` writes.
    template <class T, class Members>
    void each(std::string_view key, const std::vector<T>& values, const Members& members) {
        this->key(key);
        enclosed('[', ']', false, [&] {
            for (const T& value : values) {
                separate();
                object(false, [&] { members(value); });
            }
        });
    }

    void key(std::string_view key) {
        separate();
        out.append(1, '"').append(key).append("\": ");
    }
    /// An object whose members `members` writes.
    template <class Members> void object(bool onOneLine, const Members& members) {
        enclosed('{', '}', onOneLine, members);
    }

    void write(bool value) { out += value ? "true" : "false"; }
    void write(int value) { out += std::to_string(value); }
    void write(double value) { out += shortestDigits(value); }
    void write(Length value) { write(inMillimetres(value)); }
    void write(Mass value) { write(inGrams(value)); }
    void write(Angle value) { write(inDegrees(value)); }
    void write(Srgb value) { write(toText(value)); }
    void write(const std::string& value) { appendJsonText(out, value); }
    template <class Tag> void write(Id<Tag> id) { out += std::to_string(id.value); }
    template <class T> void write(const std::optional<T>& value) { write(*value); }
    template <class T>
    requires std::is_enum_v<T>
    void write(T value) { out.append(1, '"').append(wordFor(value)).append(1, '"'); }
    template <class T> void write(const std::vector<T>& values) {
        constexpr bool small = std::same_as<T, Slot> || std::same_as<T, BeadShare>;
        enclosed('[', ']', small || values.empty(), [&] {
            for (const T& value : values) {
                separate();
                write(value);
            }
        });
    }
    template <class T>
    requires std::is_class_v<T>
    void write(const T& part) {
        constexpr bool tall = std::same_as<T, Kind> || std::same_as<T, Stem> || std::same_as<T, Binding> ||
                              std::same_as<T, Wrap> || std::same_as<T, Pot> || std::same_as<T, Buying> ||
                              std::same_as<T, OwnTables>;
        object(!tall, [&] { fields(*this, part); });
    }

private:
    struct Frame {
        bool onOneLine;
        bool any;
    };

    void separate() {
        if (frame_.any)
            out += ',';
        if (!frame_.onOneLine)
            newLine();
        else if (frame_.any)
            out += ' ';
        frame_.any = true;
    }
    void newLine() { out.append(1, '\n').append(static_cast<std::size_t>(indent_) * 2, ' '); }

    template <class Inside> void enclosed(char open, char close, bool onOneLine, const Inside& inside) {
        const Frame around = std::exchange(frame_, {frame_.onOneLine || onOneLine, false});
        out += open;
        ++indent_;
        inside();
        --indent_;
        if (frame_.any && !frame_.onOneLine)
            newLine();
        out += close;
        frame_ = around;
    }

    Frame frame_;
    int indent_ = 0;
};

} // namespace stemwright
