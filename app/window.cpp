#include "window.h"

#include "catalogue/catalogue.h"
#include "verbs/verb.h"
#include "window/window.h"

#include <QApplication>
#include <QSettings>
#include <QStandardPaths>

#include <cstdio>
#include <cstdlib>

namespace doorloom {
namespace {

constexpr Text noDisplay = {.en = "There is no display to open the window on.",
                            .es = "No hay pantalla donde abrir la ventana."};
constexpr Text useVerbs = {
    .en = "Start it from a desktop, or use a verb: 'doorloom check FILE'. 'doorloom --help' lists them.",
    .es =
        "Ábralo desde un escritorio, o use un verbo: 'doorloom check FILE'. 'doorloom --help' los muestra."};

bool isSet(const char* variable)
{
    const char* value = std::getenv(variable);
    return value && *value;
}

bool hasDisplay()
{
    return isSet("DISPLAY") || isSet("WAYLAND_DISPLAY") || isSet("QT_QPA_PLATFORM");
}

int refused(const Problem& problem)
{
    std::fputs(refusal(problem, Language::English).err.c_str(), stderr);
    return static_cast<int>(Exit::Refused);
}

// The first time somebody sees the program it shows a small finished door rather than a blank.
void begin(Window& window, const std::vector<std::string>& arguments)
{
    QSettings settings;
    if (!arguments.empty())
        window.openFile(QString::fromStdString(arguments.front()));
    else if (!window.recoverUnnamed() && !settings.value("seenBefore").toBool())
        window.openSample("restroom-staff.doorjob");
    settings.setValue("seenBefore", true);
}

} // namespace

bool asksForWindow(const std::vector<std::string>& arguments)
{
    return arguments.empty() || (arguments.size() == 1 && arguments.front().ends_with(".doorjob"));
}

int runWindow(const std::vector<std::string>& arguments)
{
    if (!hasDisplay())
        return refused({.what = noDisplay, .where = "doorloom", .remedy = useVerbs});
    Result<Catalogue> catalogue = readCatalogue(DOORLOOM_RESOURCES "/catalogue");
    if (!catalogue.ok())
        return refused(catalogue.problem());
    static char name[] = "doorloom";
    static char* names[] = {name, nullptr};
    int count = 1;
    QApplication application(count, names);
    QApplication::setApplicationName("doorloom");
    QApplication::setOrganizationName("doorloom");
    QApplication::setApplicationDisplayName("Doorloom");
    const QString own = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) + "/doorloom/kinds";
    Window window({std::move(catalogue.value().kinds), DOORLOOM_RESOURCES, DOORLOOM_SAMPLES, own.toStdString()});
    window.QMainWindow::show();
    begin(window, arguments);
    window.tellUnreadKinds();
    return QApplication::exec();
}

} // namespace doorloom
