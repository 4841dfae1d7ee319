#include "dialogs/textdialog.h"
#include "edit/typedline.h"
#include "judge/findingtext.h"
#include "openjob/shown.h"
#include "papers/titleblock.h"
#include "window/actions.h"
#include "window/askings.h"
#include "window/window.h"

#include <QKeySequence>

namespace doorloom {
namespace {

QString cell(const QString& words)
{
    return QStringLiteral("<td style=\"padding:2px 12px 2px 0\">%1</td>").arg(words.toHtmlEscaped());
}

QString keysShown(const char* shortcut)
{
    return QKeySequence::listToString(QKeySequence::listFromString(shortcut, QKeySequence::PortableText),
                                      QKeySequence::NativeText);
}

QString listOf(const std::vector<Text>& sentences)
{
    QString html = "<ul>";
    for (const Text& sentence : sentences)
        html += "<li>" + shown(sentence).toHtmlEscaped() + "</li>";
    return html + "</ul>";
}

} // namespace

void showShortcuts(Window& window)
{
    QString html = "<table>";
    Menu menu{};
    bool first = true;
    for (const Action& action : allActions()) {
        if (std::exchange(first, false) || action.menu != menu)
            html += "<tr><td colspan=3><h3>" + Window::tr(titleOf(action.menu)).remove('&').toHtmlEscaped() +
                    "</h3></td></tr>";
        menu = action.menu;
        html += "<tr>" + cell(keysShown(action.shortcut)) + cell(Window::tr(action.words).remove('&')) +
                cell(Window::tr(action.tip)) + "</tr>";
    }
    html +=
        "</table>" +
        Window::tr(
            "<h3>On the sheet</h3><p>Tab and the arrow keys go from device to device and from terminal to "
            "terminal; Enter begins a landing at a terminal and ends it at the next. With devices chosen, "
            "Ctrl and the arrow keys move them. Ctrl and the wheel come closer.</p>");
    TextDialog(Window::tr("Keys"), html, &window).exec();
}

void showTypedForms(Window& window)
{
    QString html = "<table>";
    for (const LineForm& form : lineForms())
        html += "<tr>" + cell(shown(form.form)) + cell(shown(form.words)) +
                cell(shown(std::string(form.example))) + "</tr>";
    TextDialog(Window::tr("What can be typed"), html + "</table>", &window).exec();
}

void showCautions(Window& window)
{
    QString html = Window::tr("<h3>Cautions</h3>") + "<ul>";
    for (const Message& each : cautions())
        html += "<li>" + shown(each).toHtmlEscaped() + "</li>";
    html += "</ul>" + listOf(checkCautions()) + Window::tr("<h3>Not examined</h3>") + listOf(notExamined());
    TextDialog(Window::tr("Cautions and limits"), html, &window).exec();
}

} // namespace doorloom
