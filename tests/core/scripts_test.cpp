#include "core/program.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>
#include <vector>

namespace doorloom::test {
namespace {

namespace fs = std::filesystem;

// A copy of the start script beside tools of the test's own: a dpkg-query that knows the packages it is told,
// an apt-get that writes down how it was called. Whoever runs the test, the script sees nothing else.
class Machine {
public:
    Machine()
    {
        fs::permissions(folder_.path(), fs::perms(0755));
        fs::create_directories(folder_.path() / "app");
        fs::create_directories(folder_.path() / "bin");
        for (const char* script : {"run", "install.sh"})
            fs::copy_file(fs::path(SOURCE_FOLDER) / "app" / script, folder_.path() / "app" / script);
        fs::create_symlink("/bin/bash", folder_.path() / "bin/bash");
        fs::create_symlink("/usr/bin/dirname", folder_.path() / "bin/dirname");
    }

    void tool(const std::string& name, const std::string& lines) const
    {
        const std::string file = folder_.write("bin/" + name, "#!/bin/bash\n" + lines);
        fs::permissions(file, fs::perms(0755));
    }

    Ended run(const std::string& script) const
    {
        return runProgram({.arguments = {"-c", script},
                           .program = "/bin/bash",
                           .folder = "/",
                           .environment = {{"PATH", folder_.file("bin")}, {"root", folder_.path().string()}},
                           .asNobody = true});
    }

    std::string file(const std::string& name) const { return folder_.file(name); }

private:
    TemporaryFolder folder_;
};

const std::string start = "exec bash $root/app/run";
const std::string line = "apt-get update && DEBIAN_FRONTEND=noninteractive apt-get install -y "
                         "--no-install-recommends cmake ninja-build\n";
// Everything is there but these two; the name asked for is the last word.
const std::string lacksTwo = "case ${!#} in cmake | ninja-build) exit 1 ;; *) echo -n installed ;; esac\n";

TEST(StartScript, StopsWithTheLineToTypeWhereItMayNotInstall)
{
    const Machine machine;
    machine.tool("dpkg-query", lacksTwo);
    const Ended run = machine.run(start);
    EXPECT_EQ(run.exit, 2);
    EXPECT_EQ(run.out, "Missing Debian packages: cmake ninja-build\n");
    EXPECT_EQ(
        run.err,
        "Installing them needs root, and there is no sudo here. Type this as root, then start again:\n" +
            line);
}

TEST(StartScript, InstallsWhatIsMissingThroughSudo)
{
    const Machine machine;
    machine.tool("dpkg-query", lacksTwo);
    machine.tool("sudo", "shift; echo \"sudo bash $1 '$2'\"; false\n");
    const Ended run = machine.run(start);
    EXPECT_EQ(run.exit, 2);
    EXPECT_EQ(run.out, "Missing Debian packages: cmake ninja-build\nsudo bash -c '" +
                           line.substr(0, line.size() - 1) + "'\n")
        << run.err;
    EXPECT_EQ(run.err,
              "They could not be installed. Type this as root to see why, then start again:\n" + line);
}

TEST(StartScript, AsksTheNetworkForNothingWhenNothingIsMissing)
{
    const Machine machine;
    machine.tool("dpkg-query", "echo -n installed\n");
    machine.tool("apt-get", "echo called\n");
    machine.tool("sudo", "echo called\n");
    const Ended run =
        machine.run("source $root/app/install.sh; install_missing \"${build_packages[@]}\"; echo $?");
    EXPECT_EQ(run.out, "0\n");
    EXPECT_EQ(run.err, "");
}

TEST(StartScript, SaysThatItIsForDebianElsewhere)
{
    const Machine machine;
    const Ended run = machine.run(start);
    EXPECT_EQ(run.exit, 2);
    EXPECT_EQ(run.out, "");
    EXPECT_EQ(run.err.find("This script installs Debian packages, and there is no dpkg here. Use Debian 12"),
              0u)
        << run.err;
}

TEST(StartScript, TakesOneJob)
{
    const Machine machine;
    const Ended run = machine.run(start + " a b");
    EXPECT_EQ(run.exit, 2);
    EXPECT_EQ(run.err, "usage: bash app/run [JOB]\n");
}

} // namespace
} // namespace doorloom::test
