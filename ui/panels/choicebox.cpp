#include "panels/choicebox.h"

#include <QWheelEvent>

#include <utility>

namespace doorloom {

ChoiceBox::ChoiceBox(const QString& now, QWidget* parent) : QComboBox(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(12);
    if (!now.isEmpty())
        addItem(now);
}

void ChoiceBox::ask()
{
    if (!std::exchange(isAsked_, true))
        emit asked();
}

void ChoiceBox::offer(const QStringList& words, int current)
{
    clear();
    addItems(words);
    setCurrentIndex(current);
}

void ChoiceBox::focusInEvent(QFocusEvent* event)
{
    ask();
    QComboBox::focusInEvent(event);
}

void ChoiceBox::showPopup()
{
    ask();
    QComboBox::showPopup();
}

void ChoiceBox::wheelEvent(QWheelEvent* event)
{
    if (hasFocus())
        QComboBox::wheelEvent(event);
    else
        event->ignore();
}

} // namespace doorloom
