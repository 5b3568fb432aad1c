#pragma once

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace stemwright::test {

/// The rows of numbers in a file of tests/data, without its comments (#) and its line of names. Empty where the
/// file is missing: a test asserts how many rows it expects.
inline std::vector<std::vector<double>> readNumbers(const std::string& file) {
    std::ifstream stream(STEMWRIGHT_SOURCE_DIR "/tests/data/" + file);
    std::vector<std::vector<double>> rows;
    std::string line;
    bool named = false;
    while (std::getline(stream, line)) {
        if (line.empty() || line[0] == '#')
            continue;
        if (!named) {
            named = true;
            continue;
        }
        std::vector<double>& row = rows.emplace_back();
        std::istringstream cells(line);
        for (std::string cell; std::getline(cells, cell, ',');)
            row.push_back(std::stod(cell));
    }
    return rows;
}

} // namespace stemwright::test
