#pragma once

#include <span>
#include <string_view>

namespace stemwright {

/// A plan file of resources/examples, as the build put it into the library (embed_examples.cmake).
struct EmbeddedExample {
    std::string_view key;
    std::string_view text;
};

/// In the order of core/CMakeLists.txt.
std::span<const EmbeddedExample> embeddedExamples();

} // namespace stemwright
