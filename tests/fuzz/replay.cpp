#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

// Runs a fuzz target over every file of the folders named: an ordinary program for an ordinary compiler.
int main(int count, char** arguments)
{
    namespace fs = std::filesystem;
    int files = 0;
    for (int i = 1; i < count; ++i)
        for (const fs::directory_entry& entry : fs::directory_iterator(arguments[i])) {
            std::ifstream in(entry.path(), std::ios::binary);
            const std::string bytes{std::istreambuf_iterator<char>(in), {}};
            std::printf("%s\n", entry.path().filename().c_str()); // the last line is the one that failed
            std::fflush(stdout);
            LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
            ++files;
        }
    std::printf("%d files\n", files);
    return files > 0 ? 0 : 1;
}
