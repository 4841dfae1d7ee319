// make_pictures FOLDER: the window as people see it, as PNG files to be looked at. One of them is README's.
#include "catalogue/catalogue.h"
#include "window/window.h"

#include <QApplication>
#include <QListWidget>
#include <QSettings>
#include <QStyleFactory>
#include <QTemporaryDir>
#include <QTest>

#include <cstdio>

namespace {

using namespace doorloom;

struct Picture {
    const char* name;
    const char* sample;
    QSize size;
    bool dark;
    int finding; // chosen; -1: none
};
constexpr Picture pictures[] = {
    {"first", "restroom-staff.doorjob", {1280, 800}, false, -1},
    {"first-large", "restroom-staff.doorjob", {2560, 1440}, false, -1},
    {"finding", "restroom-staff-broken.doorjob", {1280, 800}, false, 0},
    {"dark", "restroom-public.doorjob", {1280, 800}, true, -1},
    {"dark-finding", "restroom-public-broken.doorjob", {2560, 1440}, true, 1},
};

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

bool take(const Picture& picture, const QString& folder, const std::vector<Kind>& kinds)
{
    QApplication::setPalette(picture.dark ? darkPalette() : QApplication::style()->standardPalette());
    Window window({kinds, SOURCE_FOLDER "/resources", SOURCE_FOLDER "/samples"});
    window.resize(picture.size);
    window.QWidget::show();
    window.openSample(picture.sample);
    const bool judged = QTest::qWaitFor([&] { return window.open().judged() != nullptr; }, 10'000);
    if (picture.finding >= 0)
        window.findChild<QListWidget*>("findingsList")->setCurrentRow(picture.finding);
    QTest::qWait(200);
    const bool saved = window.grab().save(folder + "/" + picture.name + ".png");
    window.open().begin(Job{});
    return saved && judged;
}

} // namespace

int main(int count, char** arguments)
{
    if (count != 2) {
        std::fputs("usage: make_pictures FOLDER\n", stderr);
        return 2;
    }
    const QTemporaryDir settings;
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
    QApplication application(count, arguments);
    QApplication::setStyle(QStyleFactory::create("Fusion"));
    const doorloom::Result<doorloom::Catalogue> catalogue =
        doorloom::readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    if (!catalogue.ok())
        return 2;
    for (const Picture& picture : pictures)
        if (!take(picture, arguments[1], catalogue.value().kinds))
            return 2;
    return 0;
}
