#include "window/clipboard.h"

#include "edit/undowords.h"
#include "file/fragment.h"
#include "window/window.h"

#include <QApplication>
#include <QClipboard>

namespace doorloom {
namespace {

constexpr std::int32_t step = 100; // tenths of a millimetre: what is pasted doesn't cover what was copied

constexpr Text nothingToCopy = {.en = "Nothing that can be copied is chosen.",
                                .es = "No se ha elegido nada que se pueda copiar."};
constexpr Text chooseFirst = {.en = "Choose devices, splices, cables or notes first.",
                              .es = "Elija antes dispositivos, empalmes, cables o notas."};

} // namespace

void copyChosen(Window& window)
{
    const std::string text = copiedText(window.open().job(), window.selection().rows());
    if (text.empty())
        return window.show(Problem{.what = nothingToCopy, .where = {}, .remedy = chooseFirst});
    QApplication::clipboard()->setText(QString::fromStdString(text));
}

void pasteCopied(Window& window)
{
    const Job& job = window.open().job();
    Numbers numbers(job);
    const std::string text = QApplication::clipboard()->text().toStdString();
    const Result<Pasted> result =
        pasted(job, numbers, text, {.sheet = window.sheet().sheet(), .by = {step, step}});
    if (!result.ok())
        return window.show(result.problem());
    Job after = job; // in which the new rows have their names
    if (const Result<Change> made = applyChange(after, result.value().change); !made.ok())
        return window.show(made.problem());
    window.make(undoWords(after, doing::paste, result.value().rows), result.value().change);
    window.selection().choose(result.value().rows);
}

} // namespace doorloom
