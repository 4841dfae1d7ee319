#include "print/paperapplication.h"

#include <QGuiApplication>

namespace doorloom {

std::unique_ptr<QGuiApplication> paperApplication()
{
    // Qt keeps references to both for as long as the application lives.
    static char name[] = "doorloom", option[] = "-platform", platform[] = "offscreen";
    static char* arguments[] = {name, option, platform, nullptr};
    static int count = 3;
    return std::make_unique<QGuiApplication>(count, arguments);
}

} // namespace doorloom
