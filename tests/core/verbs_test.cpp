#include "core/program.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace doorloom::test {
namespace {

using Words = std::vector<std::string>;

// A desk without a screen, a font or any of Qt's own settings, and a platform that is not there.
const std::vector<std::pair<std::string, std::string>> bareDesk = {
    {"PATH", "/nowhere"}, {"QT_QPA_PLATFORM", "nonsense"}, {"FONTCONFIG_FILE", "/dev/null"}};

Ended doorloom(Words arguments)
{
    return runProgram({.arguments = std::move(arguments), .environment = bareDesk});
}

// A verb's words could all fit while their end is lost.
TEST(CommandLine, SaysWhenItsAnswerCouldNotBeWritten)
{
    const Ended run = runProgram({.arguments = {"--help"}, .outTo = "/dev/full"});
    EXPECT_EQ(run.exit, 2);
    EXPECT_EQ(run.err,
              "doorloom: the answer can't be written to the output. Free some space, or name another file.\n");
}

TEST(Kinds, AreListedAndToldInFull)
{
    const Ended list = doorloom({"kinds"});
    EXPECT_EQ(list.exit, 0);
    EXPECT_NE(list.out.find("\nstrike-fail-safe "), std::string::npos) << list.out;

    const Ended one = doorloom({"kinds", "strike-fail-safe"});
    EXPECT_EQ(one.exit, 0);
    EXPECT_NE(one.out.find("fail-safe: locked only while powered, unlocks without power"), std::string::npos) << one.out;

    const Ended none = doorloom({"kinds", "strike-fail-sometimes"});
    EXPECT_EQ(none.exit, 2);
    EXPECT_EQ(none.err, "doorloom kinds: There is no kind 'strike-fail-sometimes'. 'doorloom kinds' lists them.\n");
}

} // namespace
} // namespace doorloom::test
