#pragma once

// What the checks of paper share: the program run from outside, and its pages as other tools see them.

#include "core/document/examples.h"
#include "core/document/plan_file.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

namespace stemwright::test {

namespace fs = std::filesystem;

struct Said {
    int code = -1;
    std::string out;
};

inline Said run(const std::string& command) {
    // GCC 12's leak checker now and then crashes itself while a program with worker threads ends ("Tracer
    // caught signal 11"). Leaks are looked for where the same code runs inside a test; here only in errors.
    [[maybe_unused]] static const int leaksLeftToOthers = setenv("ASAN_OPTIONS", "detect_leaks=0", 0);
    Said said;
    FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    if (!pipe)
        return said;
    std::array<char, 4096> part{};
    for (std::size_t got; (got = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
        said.out.append(part.data(), got);
    const int status = pclose(pipe);
    said.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return said;
}

inline std::string bytesOf(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::string bytes(fs::file_size(file), '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    return bytes;
}

/// A page as greys, one byte a pixel.
struct Grey {
    int width = 0, height = 0;
    std::string pixels;

    bool dark(int x, int y, int below) const {
        return static_cast<unsigned char>(pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                                                 static_cast<std::size_t>(x)]) < below;
    }
};

inline Grey readPgm(const fs::path& file) {
    Grey grey;
    std::ifstream in(file, std::ios::binary);
    std::string magic;
    int most = 0;
    in >> magic >> grey.width >> grey.height >> most;
    EXPECT_EQ(magic, "P5");
    in.get();
    grey.pixels.resize(fs::file_size(file) - static_cast<std::size_t>(in.tellg()));
    in.read(grey.pixels.data(), static_cast<std::streamsize>(grey.pixels.size()));
    EXPECT_EQ(grey.pixels.size(), static_cast<std::size_t>(grey.width) * static_cast<std::size_t>(grey.height));
    return grey;
}

inline constexpr int dpi = 300;
inline double mmOf(double pixels) {
    return pixels * 25.4 / dpi;
}

/// How many dots are not white within `margin` of the page's edges.
inline int marksInMargins(const Grey& page, int margin) {
    int marks = 0;
    for (int y = 0; y < page.height; ++y) {
        const bool whole = y < margin || y >= page.height - margin;
        for (int x = 0; x < page.width; ++x) {
            if (!whole && x == margin)
                x = page.width - margin; // what lies between is where it may print
            marks += page.dark(x, y, 250);
        }
    }
    return marks;
}

class SheetsOnPaper : public ::testing::Test {
protected:
    void SetUp() override {
        std::string name = (fs::temp_directory_path() / "stemwright-paper-XXXXXX").string();
        ASSERT_TRUE(mkdtemp(name.data()));
        folder = name;
    }
    void TearDown() override { fs::remove_all(folder); }

    fs::path planFile(const Plan& plan, const std::string& name = "plan.stemplan") {
        const fs::path file = folder / name;
        std::ofstream(file, std::ios::binary) << planText(plan);
        return file;
    }
    Said sheets(const fs::path& plan, const fs::path& to, const std::string& more = "") {
        return run("XDG_RUNTIME_DIR='" + folder.string() +
                   "' QT_QPA_PLATFORM=offscreen '" STEMWRIGHT_PROGRAM "' sheets '" + plan.string() + "' -o '" +
                   to.string() + (fs::is_directory(to) ? "/" : "") + "' " + more);
    }
    fs::path pdfOf(const Plan& plan, const std::string& more = "", const std::string& name = "out.pdf") {
        const fs::path pdf = folder / name;
        const Said said = sheets(planFile(plan), pdf, more);
        EXPECT_EQ(said.code, 0) << said.out;
        return pdf;
    }
    /// Every page in order, handed to `look` with its number: one call of the renderer serves them all.
    template <class Look> int eachPage(const fs::path& pdf, int perInch, const Look& look) {
        const fs::path all = folder / "pages";
        fs::create_directories(all);
        const Said said = run("pdftoppm -gray -r " + std::to_string(perInch) + " '" + pdf.string() + "' '" +
                              (all / "page").string() + "'");
        EXPECT_EQ(said.code, 0) << said.out;
        std::vector<fs::path> files{fs::directory_iterator(all), fs::directory_iterator()};
        std::sort(files.begin(), files.end()); // the renderer pads the numbers with zeros
        int number = 0;
        for (const fs::path& file : files)
            look(readPgm(file), ++number);
        fs::remove_all(all);
        return number;
    }
    Grey page(const fs::path& pdf, int number, int perInch = dpi) {
        const std::string stem = (folder / "page").string();
        const Said said =
            run("pdftoppm -gray -r " + std::to_string(perInch) + " -f " + std::to_string(number) + " -l " +
                std::to_string(number) + " -singlefile '" + pdf.string() + "' '" + stem + "'");
        EXPECT_EQ(said.code, 0) << said.out;
        return readPgm(stem + ".pgm");
    }

    fs::path folder;
};

inline int pagesOf(const fs::path& pdf) {
    std::smatch match;
    const std::string info = run("pdfinfo '" + pdf.string() + "'").out;
    return std::regex_search(info, match, std::regex(R"(Pages:\s+(\d+))")) ? std::stoi(match[1]) : 0;
}

/// Every run of dark pixels in the rows of a part of the page: its length and where it begins.
inline std::vector<int> darkRuns(const Grey& grey, int fromRow, int toRow, int atLeast) {
    std::vector<int> runs;
    for (int y = fromRow; y < toRow; ++y) {
        int length = 0;
        for (int x = 0; x <= grey.width; ++x) {
            if (x < grey.width && grey.dark(x, y, 100)) {
                ++length;
                continue;
            }
            if (length >= atLeast)
                runs.push_back(length);
            length = 0;
        }
    }
    return runs;
}

struct Word {
    double left = 0, top = 0, right = 0, bottom = 0;
    std::string text;
};

/// The words of each page with their boxes in points, as poppler finds them.
inline std::vector<std::vector<Word>> wordsOf(const fs::path& pdf) {
    std::vector<std::vector<Word>> pages;
    std::istringstream lines(run("pdftotext -bbox '" + pdf.string() + "' -").out);
    const std::regex word(
        R"re(<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*)</word>)re");
    std::smatch match;
    for (std::string line; std::getline(lines, line);) {
        if (line.find("<page ") != std::string::npos)
            pages.emplace_back();
        if (std::regex_search(line, match, word) && !pages.empty())
            pages.back().push_back(
                {std::stod(match[1]), std::stod(match[2]), std::stod(match[3]), std::stod(match[4]), match[5]});
    }
    return pages;
}

} // namespace stemwright::test
