#include "core/program.h"

#include <poll.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fcntl.h>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace doorloom::test {
namespace {

struct Pipe {
    int read = -1, write = -1;
    Pipe()
    {
        std::array<int, 2> ends{};
        if (pipe2(ends.data(), O_CLOEXEC) != 0)
            throw std::runtime_error("no pipe");
        read = ends[0];
        write = ends[1];
    }
};

[[noreturn]] void becomeProgram(const Launch& launch, int out, int err)
{
    std::vector<std::string> environment;
    for (const auto& [name, value] : launch.environment)
        environment.push_back(name + "=" + value);
    std::vector<std::string> words{launch.program};
    words.insert(words.end(), launch.arguments.begin(), launch.arguments.end());
    const auto pointers = [](std::vector<std::string>& strings) {
        std::vector<char*> list;
        for (std::string& string : strings)
            list.push_back(string.data());
        list.push_back(nullptr);
        return list;
    };
    if (!launch.folder.empty() && chdir(launch.folder.c_str()) != 0)
        _exit(125);
    if (!launch.outTo.empty())
        out = open(launch.outTo.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC, 0600);
    dup2(out, STDOUT_FILENO);
    dup2(err, STDERR_FILENO);
    if (launch.mostFileBytes) {
        const rlimit limit{*launch.mostFileBytes, *launch.mostFileBytes};
        setrlimit(RLIMIT_FSIZE, &limit);
    }
    const uid_t nobody = 65534;
    if (launch.asNobody && geteuid() == 0 && setuid(nobody) != 0)
        _exit(124);
    execve(launch.program.c_str(), pointers(words).data(), pointers(environment).data());
    _exit(126);
}

// Both at once: a program that fills one pipe while we wait at the other would hang.
void readBoth(int out, int err, Ended& run)
{
    std::array<pollfd, 2> ends{{{out, POLLIN, 0}, {err, POLLIN, 0}}};
    std::array<std::string*, 2> into{&run.out, &run.err};
    std::size_t open = ends.size();
    while (open > 0 && poll(ends.data(), ends.size(), -1) > 0) {
        for (std::size_t i = 0; i < ends.size(); ++i) {
            if (ends[i].revents == 0)
                continue;
            std::array<char, 4096> buffer{};
            const ssize_t got = read(ends[i].fd, buffer.data(), buffer.size());
            if (got > 0) {
                into[i]->append(buffer.data(), static_cast<std::size_t>(got));
            } else {
                ends[i].fd = -1;
                --open;
            }
        }
    }
}

} // namespace

Ended runProgram(const Launch& launch)
{
    const Pipe out, err;
    const pid_t child = fork();
    if (child < 0)
        throw std::runtime_error("no process");
    if (child == 0)
        becomeProgram(launch, out.write, err.write);
    close(out.write);
    close(err.write);
    Ended run;
    readBoth(out.read, err.read, run);
    close(out.read);
    close(err.read);
    int status = 0;
    waitpid(child, &status, 0);
    run.exit = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    return run;
}

TemporaryFolder::TemporaryFolder()
{
    std::string name = (std::filesystem::temp_directory_path() / "doorloom-test-XXXXXX").string();
    if (!mkdtemp(name.data()))
        throw std::runtime_error("no temporary folder");
    path_ = name;
}

TemporaryFolder::~TemporaryFolder()
{
    std::error_code error;
    std::filesystem::remove_all(path_, error);
}

std::string TemporaryFolder::write(const std::string& name, const std::string& content) const
{
    std::ofstream(file(name), std::ios::binary) << content;
    return file(name);
}

std::vector<std::string> TemporaryFolder::names() const
{
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(path_))
        names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
}

std::string contentOf(const std::filesystem::path& file)
{
    std::ifstream in(file, std::ios::binary);
    return std::string(std::istreambuf_iterator<char>(in), {});
}

std::string sampleFile(const std::string& name)
{
    return SOURCE_FOLDER "/samples/" + name + ".doorjob";
}

} // namespace doorloom::test
