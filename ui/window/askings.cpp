#include "window/askings.h"

#include "dialogs/finddialog.h"
#include "dialogs/setasidedialog.h"
#include "dialogs/titleblockdialog.h"
#include "edit/drawing.h"
#include "edit/nexttag.h"
#include "edit/openings.h"
#include "edit/undowords.h"
#include "file/jobfile.h"
#include "judge/findings.h"
#include "judge/findingtext.h"
#include "judge/setaside.h"
#include "openjob/shown.h"
#include "papers/dangers.h"
#include "print/paperdialog.h"
#include "print/printpdf.h"
#include "print/writepaper.h"
#include "window/window.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QInputDialog>
#include <QMessageBox>
#include <QPushButton>
#include <QPrintDialog>
#include <QPrinter>
#include <QStatusBar>

namespace doorloom {

Leaving askAboutUnsaved(Window& window)
{
    QMessageBox box(QMessageBox::Question, Window::tr("Unsaved changes"),
                    Window::tr("This job has changes that are not in its file yet."), QMessageBox::NoButton,
                    &window);
    QPushButton* save = box.addButton(Window::tr("&Save"), QMessageBox::AcceptRole);
    QPushButton* forget = box.addButton(Window::tr("&Leave without saving"), QMessageBox::DestructiveRole);
    QPushButton* stay = box.addButton(Window::tr("S&tay here"), QMessageBox::RejectRole);
    box.setDefaultButton(save);
    box.setEscapeButton(stay);
    box.exec();
    if (box.clickedButton() == save)
        return Leaving::Save;
    return box.clickedButton() == forget ? Leaving::Forget : Leaving::Stay;
}

bool wantsRecovery(Window& window, const OpenJob::Recovered& found)
{
    QMessageBox box(
        QMessageBox::Question, Window::tr("Unsaved edits were kept"),
        Window::tr("The program ended before %n edit(s) of this job were saved. They can be made again; "
                   "each can then be undone.",
                   nullptr, static_cast<int>(found.edits)),
        QMessageBox::NoButton, &window);
    if (found.damage)
        box.setInformativeText(shown(*found.damage));
    QPushButton* make = box.addButton(Window::tr("&Make them again"), QMessageBox::AcceptRole);
    box.addButton(Window::tr("&Forget them"), QMessageBox::DestructiveRole);
    box.setDefaultButton(make);
    box.exec();
    return box.clickedButton() == make;
}

void askAboutNewerFile(Window& window)
{
    const QString path = shown(window.open().path());
    QMessageBox box(QMessageBox::Warning, Window::tr("The file has changed"),
                    Window::tr("'%1' was written by another program after it was opened here.").arg(path),
                    QMessageBox::NoButton, &window);
    box.setInformativeText(
        Window::tr("Saving here would replace what the other wrote. Save under another name to keep both."));
    QPushButton* read = box.addButton(Window::tr("&Open what is on the disk"), QMessageBox::AcceptRole);
    box.addButton(Window::tr("&Keep what is here"), QMessageBox::RejectRole);
    box.exec();
    if (box.clickedButton() == read)
        window.openFile(path);
}

void tellOpenElsewhere(Window& window)
{
    window.show(Problem{.what = {{.en = "Another window has this job open.",
                                  .es = "Otra ventana tiene abierto este trabajo."}},
                        .where = window.open().path(),
                        .remedy = Text{.en = "Save under another name, or close the other window first.",
                                       .es = "Guarde con otro nombre, o cierre antes la otra ventana."}});
}

void askForTitleBlock(Window& window)
{
    const Job& job = window.open().job();
    TitleBlockDialog dialog(job.info.empty() ? JobInfo{} : *job.info.begin(), &window);
    if (dialog.exec() != QDialog::Accepted)
        return;
    Numbers numbers(job);
    window.make(undoWords(job, doing::fillInfo), setInfo(job, numbers, dialog.info()));
}

void askToSetAside(Window& window, const Finding& finding)
{
    const Job& job = window.open().job();
    SetAsideDialog dialog(Window::tr("%1: %2").arg(shown(atText(job, finding)), shown(titleOf(finding))),
                          &window);
    if (dialog.exec() != QDialog::Accepted)
        return;
    Numbers numbers(job);
    const auto made = setAside(job, numbers, finding, dialog.reason(), dialog.name(), dialog.date());
    if (!made.ok())
        return window.show(made.problem());
    window.make(Message{Text{.en = "set a finding aside", .es = "apartar un hallazgo"}}, made.value().second);
}

void askForSheetTitle(Window& window)
{
    const Job& job = window.open().job();
    const Sheet* sheet = job.sheets.find(window.sheet().sheet());
    if (!sheet)
        return;
    bool accepted = false;
    const QString title = QInputDialog::getText(&window, Window::tr("Rename the sheet"), Window::tr("Title"),
                                                QLineEdit::Normal, shown(sheet->title), &accepted);
    if (accepted)
        window.make(undoWords(job, doing::rename, {sheet->id.number}),
                    renameSheet(job, sheet->id, title.trimmed().toStdString()));
}

void addAnOpening(Window& window)
{
    const Job& job = window.open().job();
    Numbers numbers(job);
    Opening opening;
    opening.tag = countedOn("D1", [&](const std::string& tag) {
        return std::any_of(job.openings.begin(), job.openings.end(),
                           [&](const Opening& each) { return each.tag == tag; });
    });
    const auto made = addOpening(job, numbers, opening);
    if (!made.ok())
        return window.show(made.problem());
    window.make(Message{doing::add, {{"names", opening.tag}}}, made.value().second);
    window.selection().choose({made.value().first.number});
}

void askWhatToFind(Window& window)
{
    FindDialog dialog(window.open().job(), &window);
    QObject::connect(&dialog, &FindDialog::chosen, &window, [&window](std::uint32_t row) {
        window.selection().choose({row});
        window.jumpTo({row});
    });
    dialog.exec();
}

namespace {

struct AskedPaper {
    const Paper& paper;
    PaperSetup setup;
    PageSetup page;
};

void writeAsked(Window& window, const AskedPaper& asked, const QString& form)
{
    const std::string path = window.open().path();
    const QString base = path.empty() ? Window::tr("job") : QFileInfo(shown(path)).completeBaseName();
    const QString proposed = QStringLiteral("%1-%2.%3").arg(base, shown(std::string(asked.paper.name)), form);
    const QString to = QFileDialog::getSaveFileName(&window, Window::tr("Write the paper to"), proposed, QStringLiteral("*.") + form);
    if (to.isEmpty())
        return;
    const Result<Done> written = writePaper(asked.paper, window.open().job(), asked.setup, asked.page, to.toStdString());
    if (!written.ok())
        return window.show(written.problem());
    window.statusBar()->showMessage(Window::tr("Written: %1").arg(to));
}

void printAsked(Window& window, const AskedPaper& asked)
{
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(layoutOf(asked.page.size));
    if (QPrintDialog dialog(&printer, &window); dialog.exec() != QDialog::Accepted)
        return;
    const Result<Done> printed = printPaper(asked.paper.name, window.open().job(), asked.setup, asked.page, printer);
    if (!printed.ok())
        return window.show(printed.problem());
    window.statusBar()->showMessage(Window::tr("Printed."));
}

} // namespace

void askForPaper(Window& window)
{
    const Job& job = window.open().job();
    const Result<LabelSheets> sheets = readLabelSheets(window.surroundings().resources + "/labels");
    PaperDialog dialog(languageOf(job), sheets.ok() ? sheets.value() : LabelSheets{}, &window);
    if (dialog.exec() != QDialog::Accepted)
        return;
    const Judged* judged = window.open().judged();
    const AskedPaper asked{dialog.paper(),
                           {.language = dialog.language(), .digest = digestOf(job), .dangers = dangersOf(job, judged ? judged->check : checkJob(job, windowBudget))},
                           {.size = dialog.size(),
                            .language = dialog.language(),
                            .fontFolder = window.surroundings().resources + "/font",
                            .labels = dialog.labels()}};
    if (dialog.wantsLabels() && !sheets.ok())
        return window.show(sheets.problem());
    if (dialog.form() == "printer")
        return printAsked(window, asked);
    writeAsked(window, asked, shown(dialog.form()));
}

} // namespace doorloom
