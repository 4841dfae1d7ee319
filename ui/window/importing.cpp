#include "base/wholefile.h"
#include "dialogs/connectionlistdialog.h"
#include "openjob/shown.h"
#include "window/askings.h"
#include "window/window.h"

#include <QFileDialog>
#include <QStatusBar>

namespace doorloom {

void askForConnectionList(Window& window)
{
    const QString path =
        QFileDialog::getOpenFileName(&window, Window::tr("Import a connection list"), {},
                                     Window::tr("Lists from a spreadsheet (*.csv *.tsv *.txt)"));
    if (path.isEmpty())
        return;
    const Result<std::string> text = wholeFile(path.toStdString(), mostTableBytes);
    if (!text.ok())
        return window.show(text.problem());
    const Result<std::vector<CellRow>> table = readTable(text.value(), path.toStdString());
    if (!table.ok())
        return window.show(table.problem());
    ConnectionListDialog dialog(window.open().job(), table.value(), &window);
    if (dialog.exec() != QDialog::Accepted)
        return;
    window.make(Message{Text{.en = "import a connection list", .es = "importar una lista de conexiones"}},
                dialog.list().change);
    window.statusBar()->showMessage(shown(summaryOf(dialog.list())));
}

} // namespace doorloom
