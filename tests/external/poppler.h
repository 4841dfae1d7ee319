#pragma once

#include "print/paperapplication.h"

#include <QGuiApplication>

#include <gtest/gtest.h>

#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

// What other programs say of a PDF.
namespace doorloom {

// What drawing pages needs; never ended: Qt's statics go first.
inline void beginPages()
{
    [[maybe_unused]] static const auto* const application = paperApplication().release();
}

inline bool isThere(const std::string& program)
{
    return std::system(("command -v " + program + " >/dev/null 2>&1").c_str()) == 0;
}

inline std::string outputOf(const std::string& command)
{
    FILE* pipe = popen(command.c_str(), "r");
    std::string output;
    std::array<char, 4096> buffer{};
    while (const std::size_t count = fread(buffer.data(), 1, buffer.size(), pipe))
        output.append(buffer.data(), count);
    const int status = pclose(pipe);
    EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << command;
    return output;
}

inline std::vector<std::string> linesOf(const std::string& text)
{
    std::istringstream in(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);)
        lines.push_back(line);
    return lines;
}

struct WordBox {
    double x = 0, baseline = 0, size = 0, right = 0; // points
    std::string text;
};

inline std::string unescaped(std::string text)
{
    for (const auto& [code, letter] :
         {std::pair("&lt;", "<"), std::pair("&gt;", ">"), std::pair("&quot;", "\""), std::pair("&apos;", "'"),
          std::pair("&amp;", "&")})
        for (auto at = text.find(code); at != std::string::npos; at = text.find(code, at + 1))
            text.replace(at, std::string(code).size(), letter);
    return text;
}

inline std::vector<std::vector<WordBox>> wordsByPage(const std::filesystem::path& pdf)
{
    static const std::regex word(
        "<word xMin=\"([0-9.]+)\" yMin=\"([0-9.]+)\" xMax=\"([0-9.]+)\" yMax=\"([0-9.]+)\">(.*)</word>");
    std::vector<std::vector<WordBox>> pages;
    for (const std::string& line : linesOf(outputOf("pdftotext -bbox " + pdf.string() + " -"))) {
        std::smatch match;
        if (line.find("<page ") != std::string::npos)
            pages.emplace_back();
        else if (std::regex_search(line, match, word)) {
            const double top = std::stod(match[2]), foot = std::stod(match[4]);
            // The font's own ascent and descent, 0.928 and 0.236 of its size.
            pages.back().push_back({std::stod(match[1]), top + (foot - top) * 0.928 / 1.164,
                                    (foot - top) / 1.164, std::stod(match[3]), unescaped(match[5])});
        }
    }
    return pages;
}

} // namespace doorloom
