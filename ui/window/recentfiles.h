#pragma once

#include <QStringList>

namespace doorloom {

// The files opened or saved last, the newest first; those that are gone are left out.
QStringList recentFiles();
void rememberFile(const QString& path);

} // namespace doorloom
