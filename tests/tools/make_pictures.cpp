// make_pictures FOLDER: the window as people see it, as PNG files to be looked at. One of them is README's.
#include "bench/spreadjob.h"
#include "catalogue/catalogue.h"
#include "window/window.h"

#include <QApplication>
#include <QListView>
#include <QProcess>
#include <QSettings>
#include <QStyleFactory>
#include <QTemporaryDir>
#include <QTest>

#include <cstdio>

namespace {

using namespace doorloom;

enum class Shade { Light, Dark };

struct Picture {
    const char* name;
    const char* sample; // null: 2,500 devices
    int percent;        // the scale of the screen
    Shade shade = Shade::Light;
    int finding = -1; // that is chosen; -1: none
};
constexpr Picture pictures[] = {
    {"first", "restroom-staff.doorjob", 100},
    {"restroom", "restroom-public.doorjob", 100},
    {"finding", "restroom-staff-broken.doorjob", 100, Shade::Light, 0},
    {"dark", "restroom-public.doorjob", 100, Shade::Dark},
    {"dark-finding", "restroom-public-broken.doorjob", 100, Shade::Dark, 1},
    {"large", nullptr, 100},
    {"scaled", "restroom-staff.doorjob", 300},
    {"scaled-finding", "restroom-staff-broken.doorjob", 300, Shade::Light, 0},
};

// Each is taken at both, in pixels of the screen.
struct Size {
    const char* suffix;
    QSize pixels;
};
constexpr Size sizes[] = {{"", {1280, 800}}, {"-wide", {2560, 1440}}};

QPalette darkPalette()
{
    QPalette colours;
    colours.setColor(QPalette::Window, QColor(0x26, 0x28, 0x2b));
    colours.setColor(QPalette::WindowText, QColor(0xe6, 0xe6, 0xe3));
    colours.setColor(QPalette::Base, QColor(0x1c, 0x1e, 0x20));
    colours.setColor(QPalette::AlternateBase, QColor(0x24, 0x26, 0x29));
    colours.setColor(QPalette::Text, QColor(0xe6, 0xe6, 0xe3));
    colours.setColor(QPalette::Button, QColor(0x33, 0x36, 0x3a));
    colours.setColor(QPalette::ButtonText, QColor(0xe6, 0xe6, 0xe3));
    colours.setColor(QPalette::ToolTipBase, QColor(0x3a, 0x36, 0x22));
    colours.setColor(QPalette::ToolTipText, QColor(0xf0, 0xec, 0xdc));
    colours.setColor(QPalette::PlaceholderText, QColor(0x9a, 0x9a, 0x96));
    colours.setColor(QPalette::Mid, QColor(0x6a, 0x6c, 0x6e));
    return colours;
}

void showJob(Window& window, const Picture& picture)
{
    if (picture.sample) {
        window.openSample(picture.sample);
    } else {
        window.open().begin(bench::spreadJob());
        window.sheet().fit();
    }
}

bool take(const Picture& picture, const Size& size, const QString& folder, const std::vector<Kind>& kinds)
{
    QApplication::setPalette(picture.shade == Shade::Dark ? darkPalette()
                                                          : QApplication::style()->standardPalette());
    Window window({kinds, SOURCE_FOLDER "/resources", SOURCE_FOLDER "/samples"});
    window.resize(size.pixels / window.devicePixelRatioF());
    window.QWidget::show();
    showJob(window, picture);
    const bool judged = QTest::qWaitFor([&] { return window.open().judged() != nullptr; }, 120'000);
    auto* findings = window.findChild<QListView*>("findingsList");
    if (picture.finding >= 0)
        findings->setCurrentIndex(findings->model()->index(picture.finding, 0));
    QTest::qWait(200);
    const bool saved = window.grab().save(folder + "/" + picture.name + size.suffix + ".png");
    window.open().begin(Job{});
    return saved && judged;
}

int takeAll(int count, char** arguments, int percent)
{
    const QTemporaryDir settings;
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
    QApplication application(count, arguments);
    QApplication::setStyle(QStyleFactory::create("Fusion"));
    const Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    if (!catalogue.ok())
        return 2;
    for (const Picture& picture : pictures)
        for (const Size& size : sizes)
            if (picture.percent == percent && !take(picture, size, arguments[1], catalogue.value().kinds))
                return 2;
    return 0;
}

} // namespace

// Qt takes the scale when it starts: each has a run of its own.
int main(int count, char** arguments)
{
    if (count != 2) {
        std::fputs("usage: make_pictures FOLDER\n", stderr);
        return 2;
    }
    if (const double scale = qEnvironmentVariable("QT_SCALE_FACTOR").toDouble(); scale > 0)
        return takeAll(count, arguments, static_cast<int>(scale * 100));
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    bool areTaken = true;
    for (const char* scale : {"1", "3"}) {
        qputenv("QT_SCALE_FACTOR", scale);
        areTaken = QProcess::execute(arguments[0], {arguments[1]}) == 0 && areTaken;
    }
    return areTaken ? 0 : 2;
}
