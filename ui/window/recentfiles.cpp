#include "window/recentfiles.h"

#include <QFileInfo>
#include <QSettings>

namespace doorloom {
namespace {

constexpr auto key = "recentFiles";
constexpr int most = 8;

} // namespace

QStringList recentFiles()
{
    QStringList files = QSettings().value(key).toStringList();
    files.removeIf([](const QString& file) { return !QFileInfo::exists(file); });
    return files;
}

void rememberFile(const QString& path)
{
    QStringList files = recentFiles();
    const QString whole = QFileInfo(path).absoluteFilePath();
    files.removeAll(whole);
    files.prepend(whole);
    QSettings().setValue(key, QStringList(files.mid(0, most)));
}

} // namespace doorloom
