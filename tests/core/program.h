#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace doorloom::test {

// How a program is started: as a shell would, in a process of its own.
struct Launch {
    std::vector<std::string> arguments;
    std::string program = DOORLOOM_PROGRAM;
    std::filesystem::path folder = {}; // empty: as the test
    std::vector<std::pair<std::string, std::string>> environment = {{"PATH", "/usr/bin:/bin"}}; // all of it
    std::optional<unsigned long> mostFileBytes = {}; // a disk that is full from there on
    std::string outTo = {};                          // a file for stdout instead of `out`
    bool asNobody = false;                           // where the test is root: without its rights
};

struct Ended {
    int exit = -1; // 128 + the signal where one ended it
    std::string out, err;
};

Ended runProgram(const Launch& launch);

// A folder of its own, gone with everything in it at the end of the test.
// Owns: the folder
class TemporaryFolder {
public:
    TemporaryFolder();
    ~TemporaryFolder();
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    std::string file(const std::string& name) const { return (path_ / name).string(); }
    std::string write(const std::string& name, const std::string& content) const; // its whole name
    std::vector<std::string> names() const;                                       // sorted
    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

std::string contentOf(const std::filesystem::path& file);
std::string sampleFile(const std::string& name); // "restroom-public"

} // namespace doorloom::test
