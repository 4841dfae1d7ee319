#include "ui/monkey.h"

#include <cstdio>

namespace doorloom {
namespace {

// MONKEY=100000 in the environment: so many events for each seed.
int events()
{
    const int wanted = qEnvironmentVariableIntValue("MONKEY");
    return wanted > 0 ? wanted : 1000;
}

TEST(Monkey, AtTheWindowBreaksNothing)
{
    QApplication::setQuitOnLastWindowClosed(false);
    forEachSeed(3, [](Random& random) {
        TestWindow desk;
        const QString file = desk.folder() + "/door.doorjob";
        ASSERT_TRUE(QFile::copy(SOURCE_FOLDER "/samples/restroom-staff.doorjob", file));
        ASSERT_TRUE(desk.window().openFile(file));
        Monkey monkey(desk, random);
        int changes = 0;
        for (int next = 500; monkey.events() < events() && !::testing::Test::HasFailure();) {
            monkey.act();
            if (monkey.hasChanged()) {
                ++changes;
                EXPECT_TRUE(verifyJob(desk.job()).empty()) << "after event " << monkey.events();
            }
            if (monkey.events() >= next) {
                SCOPED_TRACE("after event " + std::to_string(monkey.events()));
                monkey.settle();
                monkey.undoAll();
                next = monkey.events() + 500;
            }
        }
        monkey.settle();
        monkey.undoAll();
        EXPECT_GT(changes, events() / 50) << "too few for a test";
        std::printf("%d events, %d changed the job\n", monkey.events(), changes);
    });
}

} // namespace
} // namespace doorloom
