// The supplies as CSV by an independent reader, Python's csv module (RFC 4180's dialect, strict).
#ifdef STEMWRIGHT_PROGRAM

#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

namespace stemwright {
namespace {

namespace fs = std::filesystem;

std::string readByPython(const fs::path& file) {
    const std::string command =
        "/usr/bin/python3 -c 'import csv, json, sys; rows = list(csv.reader(open(sys.argv[1], newline=\"\", "
        "encoding=\"utf-8\"), strict=True)); print(len(rows), len({len(row) for row in rows}), rows[0][0], "
        "json.dumps([row[1] for row in rows if row[0] == \"beads\"]), sep=\"|\")' '" +
        file.string() + "'";
    FILE* pipe = popen(command.c_str(), "r");
    std::string out;
    char buffer[4096];
    while (const std::size_t read = std::fread(buffer, 1, sizeof buffer, pipe))
        out.append(buffer, read);
    EXPECT_EQ(pclose(pipe), 0);
    return out;
}

TEST(SuppliesCsvReader, ReadsEveryRowAndTheAwkwardNames) {
    Plan plan = test::smallBoard();
    plan.colours[0].name = "Plum, \"dark\"\r\nor so";
    plan.colours[1].name = "Sea";
    const fs::path folder = fs::temp_directory_path() / ("stemwright-supplies-" + std::to_string(std::rand()));
    fs::create_directories(folder);
    std::ofstream(folder / "a.stemplan", std::ios::binary) << planText(plan);
    const std::string command = std::string("QT_QPA_PLATFORM=offscreen '") + STEMWRIGHT_PROGRAM +
                                "' supplies '" + (folder / "a.stemplan").string() + "' --csv -o '" +
                                (folder / "a.csv").string() + "'";
    ASSERT_EQ(std::system(command.c_str()), 0);
    const std::string said = readByPython(folder / "a.csv");
    fs::remove_all(folder);
    // Six leaves to make, two colours, leaf wire, binding, straight wire, clay, hours, and the head.
    EXPECT_EQ(said, "14|1|what|[\"Plum, \\\"dark\\\"\\r\\nor so 11/0\", \"Sea 11/0\"]\n");
}

} // namespace
} // namespace stemwright

#endif
