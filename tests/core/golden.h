#pragma once

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace doorloom {

// Compares with a file. UPDATE_GOLDEN=1 writes it anew and fails all the same: read the difference before it is
// committed, for that is the review.
inline void expectFile(const std::filesystem::path& path, const std::string& text)
{
    if (std::getenv("UPDATE_GOLDEN")) {
        std::filesystem::create_directories(path.parent_path());
        std::ofstream(path, std::ios::binary) << text;
        ADD_FAILURE() << path << " is written anew";
        return;
    }
    std::ifstream in(path, std::ios::binary);
    ASSERT_TRUE(in) << path << " is missing: run with UPDATE_GOLDEN=1, then read it";
    EXPECT_EQ(std::string(std::istreambuf_iterator<char>(in), {}), text) << "differs from " << path;
}

// The same with tests/core/golden/NAME.
inline void expectGolden(const std::string& name, const std::string& text)
{
    expectFile(std::filesystem::path(SOURCE_FOLDER) / "tests/core/golden" / name, text);
}

} // namespace doorloom
