#include <gtest/gtest.h>

#include <QApplication>
#include <QTemporaryDir>

#include <cstdlib>

// CTest starts this program while building, to list its tests: there may be no display then.
int main(int count, char** arguments)
{
    if (!std::getenv("QT_QPA_PLATFORM"))
        setenv("QT_QPA_PLATFORM", "offscreen", 0);
    const QTemporaryDir folder; // what the program keeps for its user goes there
    qputenv("XDG_DATA_HOME", folder.path().toUtf8());
    QApplication application(count, arguments);
    testing::InitGoogleTest(&count, arguments);
    return RUN_ALL_TESTS();
}
