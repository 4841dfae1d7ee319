#include "print/paperapplication.h"

#include <QGuiApplication>

#include <cstdio>

namespace doorloom {
namespace {

// Qt's remarks about the desk (no runtime folder, no locale) are no news to somebody who prints a paper; what
// goes wrong with the paper comes back as a Problem.
void tellOnlyWhatEnds(QtMsgType type, const QMessageLogContext&, const QString& words)
{
    if (type == QtCriticalMsg || type == QtFatalMsg)
        std::fprintf(stderr, "%s\n", qUtf8Printable(words));
}

} // namespace

std::unique_ptr<QGuiApplication> paperApplication()
{
    qInstallMessageHandler(tellOnlyWhatEnds);
    // Qt keeps references to both for as long as the application lives.
    static char name[] = "doorloom", option[] = "-platform", platform[] = "offscreen";
    static char* arguments[] = {name, option, platform, nullptr};
    static int count = 3;
    return std::make_unique<QGuiApplication>(count, arguments);
}

} // namespace doorloom
