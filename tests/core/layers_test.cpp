#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>

namespace {

// The core's layers, lowest first: a file may include its own layer and the ones below, and nothing of Qt.
TEST(Layers, IncludesRunOneWay) {
    const std::map<std::string, int> layers{
        {"quantity", 0}, {"plan", 1}, {"figures", 2}, {"suggest", 3}, {"document", 4}};
    const std::filesystem::path core = std::filesystem::path(STEMWRIGHT_SOURCE_DIR) / "core";
    const std::regex include(R"re(^\s*#\s*include\s*["<]([^">]+)[">])re");
    const std::regex qt(R"(Q[A-Z].*|Qt.*)");
    int read = 0;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(core)) {
        if (entry.path().extension() != ".h" && entry.path().extension() != ".cpp")
            continue;
        const std::string own = std::filesystem::relative(entry.path(), core).begin()->string();
        ASSERT_TRUE(layers.contains(own)) << entry.path() << " is in no known layer";
        std::ifstream file(entry.path());
        std::smatch match;
        for (std::string line; std::getline(file, line);)
            if (std::regex_search(line, match, include)) {
                ++read;
                const std::filesystem::path what(match[1].str());
                EXPECT_FALSE(std::regex_match(what.string(), qt)) << entry.path() << " includes Qt: " << line;
                EXPECT_NE(what.begin()->string(), "app") << entry.path() << " includes the app: " << line;
                if (what.begin()->string() == "core") {
                    EXPECT_LE(layers.at(std::next(what.begin())->string()), layers.at(own))
                        << entry.path() << " includes a higher layer: " << line;
                }
            }
    }
    EXPECT_GT(read, 50);
}

} // namespace
