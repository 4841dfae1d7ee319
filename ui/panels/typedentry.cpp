#include "panels/typedentry.h"

#include "openjob/shown.h"

#include <QAbstractItemView>
#include <QCompleter>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QStandardItemModel>
#include <QVBoxLayout>

namespace doorloom {
namespace {

constexpr int textRole = Qt::UserRole;

std::size_t bytesBefore(const QLineEdit& line)
{
    return static_cast<std::size_t>(line.text().left(line.cursorPosition()).toUtf8().size());
}

} // namespace

TypedEntry::TypedEntry(OpenJob& open, Selection& selection, const Stock& stock, QWidget* parent)
    : QWidget(parent), open_(open), selection_(selection), stock_(stock), line_(new QLineEdit(this)),
      answer_(new QLabel(this)), choices_(new QStandardItemModel(this)),
      completer_(new QCompleter(choices_, this))
{
    line_->setObjectName("typedLine");
    line_->setAccessibleName(tr("Type a landing"));
    line_->setPlaceholderText(
        tr("Type a landing: ps1 + el1 red   ·   pull 22/4 cab1 frame   ·   set lm1 k1 wet"));
    line_->installEventFilter(this);
    answer_->setObjectName("typedAnswer");
    answer_->setWordWrap(true);
    answer_->hide();
    completer_->setWidget(line_); // what stands in the list comes from core: nothing is filtered here
    completer_->setCompletionMode(QCompleter::UnfilteredPopupCompletion);
    completer_->setCompletionRole(textRole);

    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(6, 4, 6, 4);
    layout->setSpacing(2);
    layout->addWidget(line_);
    layout->addWidget(answer_);

    connect(line_, &QLineEdit::textEdited, this, &TypedEntry::complete);
    connect(line_, &QLineEdit::returnPressed, this, &TypedEntry::accept);
    connect(completer_, qOverload<const QString&>(&QCompleter::activated), this, &TypedEntry::takeCompletion);
}

void TypedEntry::startTyping()
{
    line_->setFocus(Qt::ShortcutFocusReason);
    line_->selectAll();
}

void TypedEntry::say(const QString& words)
{
    answer_->setText(words);
    answer_->setVisible(!words.isEmpty());
}

void TypedEntry::complete()
{
    say({});
    choices_->clear();
    const std::string line = line_->text().toStdString();
    for (const Completion& each :
         completionsFor(open_.job(), stock_, line, bytesBefore(*line_), windowLanguage)) {
        auto* item = new QStandardItem(tr("%1   %2").arg(shown(each.text), shown(each.words)));
        item->setData(shown(each.text), textRole);
        choices_->appendRow(item);
    }
    if (choices_->rowCount() == 0)
        completer_->popup()->hide();
    else
        completer_->complete();
}

void TypedEntry::takeCompletion(const QString& text)
{
    const std::string line = line_->text().toStdString();
    const std::size_t cursor = bytesBefore(*line_);
    const std::size_t start = wordStart(line, cursor);
    const std::string before = line.substr(0, start) + text.toStdString() + " ";
    line_->setText(shown(before + line.substr(cursor)));
    line_->setCursorPosition(static_cast<int>(shown(before).size()));
}

void TypedEntry::accept()
{
    if (line_->text().trimmed().isEmpty())
        return;
    const Result<Typed> typed = readLine(open_.job(), stock_, line_->text().toStdString());
    if (!typed.ok())
        return say(shown(typed.problem()));
    if (const auto problem = open_.make(typed.value().what, typed.value().change))
        return say(shown(*problem));
    line_->clear();
    say({});
    selection_.choose(typed.value().rows);
    emit jump(typed.value().rows);
}

// Tab takes the first completion while there are any, so that the line can be typed without looking up.
bool TypedEntry::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != line_ || event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Tab && choices_->rowCount() > 0 && !line_->text().isEmpty()) {
        takeCompletion(choices_->item(0)->data(textRole).toString());
        complete();
        return true;
    }
    if (key == Qt::Key_Escape) {
        emit left();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace doorloom
