// make_pictures FOLDER: the window as people see it, as PNG files to be looked at. One of them is README's.
#include "bench/spreadjob.h"
#include "canvas/drawing.h"
#include "canvas/sheetpainter.h"
#include "catalogue/catalogue.h"
#include "tools/manydoorsheet.h"
#include "window/window.h"

#include <QApplication>
#include <QListView>
#include <QProcess>
#include <QSettings>
#include <QStyleFactory>
#include <QTemporaryDir>
#include <QTest>

#include <algorithm>
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

// Sheets that are tidied, on the screen and on an A4 page without colours: each conductor can be followed with
// a pencil, or the router has something to mend.
struct TidiedSheet {
    const char* name;
    std::vector<std::string> samples, sharedPlaces;
};
const TidiedSheet tidiedSheets[] = {
    {"tidy-restroom", {"restroom-public"}, {}},
    {"tidy-vestibule", {"vestibule"}, {}},
    {"tidy-fifty", {"restroom-public", "restroom-staff", "archive-room", "yard-gate", "restroom-staff"}, {}},
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

// As wide as the sheet allows, ten millimetres from the edges, 200 dots an inch.
bool takePage(const Job& job, const QString& file)
{
    Drawing drawing(QApplication::font(), Language::English);
    drawing.show(job, {});
    while (!drawing.isSettled())
        static_cast<void>(drawing.settleMore(job));
    const Area all = drawing.bounds();
    const QSize upright(1654, 2339);
    const QSize pixels = all.width() > all.height() ? upright.transposed() : upright;
    constexpr int margin = 79;
    View view;
    view.pixelsPerUnit = std::min({double(pixels.width() - 2 * margin) / all.width(),
                                   double(pixels.height() - 2 * margin) / all.height(), 200 / 254.0});
    const QPoint room(pixels.width() - view.length(all.width()), pixels.height() - view.length(all.height()));
    view.offset = QPoint(view.length(all.left), view.length(all.top)) - room / 2;
    QImage image(pixels, QImage::Format_RGB32);
    QPainter painter(&image);
    SheetPainter sheet;
    sheet.setUp(drawing, view, lookOf(QApplication::style()->standardPalette()));
    Emphasis none;
    none.devices.resize(drawing.devices().all().size());
    none.litDevices = none.devices;
    none.conductors.resize(drawing.conductors().all().size());
    none.litConductors = none.conductors;
    none.cables.resize(drawing.cables().all().size());
    none.splices.resize(drawing.splices().all().size());
    none.notes.resize(drawing.notes().all().size());
    sheet.paint(painter, drawing, none, image.rect());
    painter.end();
    return image.convertToFormat(QImage::Format_Grayscale8).save(file);
}

bool takeTidied(const TidiedSheet& sheet, const QString& folder, const std::vector<Kind>& kinds)
{
    const Job job = sheetOfSamples(sheet.samples, sheet.sharedPlaces);
    QApplication::setPalette(QApplication::style()->standardPalette());
    Window window({kinds, SOURCE_FOLDER "/resources", SOURCE_FOLDER "/samples"});
    window.resize(sizes[1].pixels / window.devicePixelRatioF());
    window.QWidget::show();
    window.open().begin(job);
    window.sheet().fit();
    const bool isSettled = QTest::qWaitFor([&] { return window.sheet().isSettled(); }, 60'000);
    QTest::qWait(100);
    const bool saved = isSettled && window.sheet().grab().save(folder + "/" + sheet.name + ".png");
    window.open().begin(Job{});
    return takePage(job, folder + "/" + sheet.name + "-page.png") && saved;
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
    for (const TidiedSheet& sheet : tidiedSheets)
        if (percent == 100 && !takeTidied(sheet, arguments[1], catalogue.value().kinds))
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
