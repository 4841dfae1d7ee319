#include "panels/form.h"

#include "edit/undowords.h"
#include "openjob/shown.h"
#include "panels/choicebox.h"

#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>

#include <algorithm>
#include <memory>

namespace doorloom {

Form::Form(OpenJob& open, QWidget* parent) : QWidget(parent), open_(open), rows_(new QFormLayout(this))
{
    rows_->setContentsMargins(6, 6, 6, 6);
    rows_->setRowWrapPolicy(QFormLayout::WrapAllRows);
    rows_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
}

void Form::heading(const QString& words)
{
    auto* label = new QLabel(words, this);
    QFont bold = font();
    bold.setBold(true);
    label->setFont(bold);
    label->setWordWrap(true);
    rows_->addRow(label);
}

void Form::words(const QString& words)
{
    auto* label = new QLabel(words, this);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    rows_->addRow(label);
}

void Form::field(const QString& label, QWidget* editor)
{
    editor->setAccessibleName(label);
    rows_->addRow(label, editor);
}

void Form::forgetRefusals()
{
    for (QLabel* older : findChildren<QLabel*>("refusal"))
        rows_->removeRow(older);
}

bool Form::make(QWidget* editor, const Result<Change>& change)
{
    std::optional<Problem> problem;
    if (!change.ok())
        problem = change.problem();
    else
        problem = open_.make(undoWords(job(), doing::alter, {subject}), change.value());
    if (!problem)
        return true;
    forgetRefusals();
    auto* why = new QLabel(shown(*problem), this);
    why->setObjectName("refusal");
    why->setWordWrap(true);
    why->setAutoFillBackground(true);
    why->setBackgroundRole(QPalette::ToolTipBase);
    why->setForegroundRole(QPalette::ToolTipText);
    why->setMargin(4);
    int row = rows_->rowCount() - 1;
    QFormLayout::ItemRole role{};
    if (editor)
        rows_->getWidgetPosition(editor, &row, &role);
    rows_->insertRow(row + 1, why);
    return false;
}

void Form::textField(const QString& name, const QString& label, const std::string& value,
                     std::function<Result<Change>(std::string)> changed, const QString& hint)
{
    auto* editor = new QLineEdit(shown(value), this);
    editor->setObjectName(name);
    editor->setPlaceholderText(hint);
    connect(editor, &QLineEdit::editingFinished, this,
            [this, editor, before = shown(value), changed = std::move(changed)] {
                if (editor->text() == before)
                    return;
                if (!make(editor, changed(editor->text().trimmed().toStdString()))) {
                    const QSignalBlocker quiet(editor);
                    editor->setText(before);
                    editor->selectAll();
                }
            });
    field(label, editor);
}

void Form::choiceField(const QString& name, const QString& label, Choices choices)
{
    addChoice(name, label, {}, [choices = std::move(choices)] { return choices; })->ask();
}

void Form::longChoiceField(const QString& name, const QString& label, const QString& now,
                           std::function<Choices()> choices)
{
    addChoice(name, label, now, std::move(choices));
}

ChoiceBox* Form::addChoice(const QString& name, const QString& label, const QString& now,
                           std::function<Choices()> choices)
{
    auto* editor = new ChoiceBox(now, this);
    editor->setObjectName(name);
    auto shared = std::make_shared<Choices>(); // by both slots
    connect(editor, &ChoiceBox::asked, this, [editor, shared, choices = std::move(choices)] {
        *shared = choices();
        QStringList words;
        for (const Item& item : shared->items)
            words << item.words;
        editor->offer(words, shared->current);
    });
    connect(editor, &ChoiceBox::activated, this, [this, editor, shared](int chosen) {
        const auto& make = shared->items[static_cast<std::size_t>(chosen)].chosen;
        if (chosen != shared->current && make && !this->make(editor, make()))
            editor->setCurrentIndex(shared->current);
    });
    field(label, editor);
    return editor;
}

void Form::list(const QString& name, const QString& label, const QStringList& lines,
                std::function<void(int)> picked)
{
    constexpr int mostLines = 12;
    auto* list = new QListWidget(this);
    list->setObjectName(name);
    list->setUniformItemSizes(true);
    list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->addItems(lines);
    const int shownLines = std::min(static_cast<int>(lines.size()), mostLines);
    list->setFixedHeight(shownLines * list->sizeHintForRow(0) + 2 * list->frameWidth());
    const auto pick = [list, picked = std::move(picked)] { picked(list->currentRow()); };
    connect(list, &QListWidget::itemClicked, this, pick);
    connect(list, &QListWidget::itemActivated, this, pick);
    field(label, list);
}

void Form::wide(QWidget* editor)
{
    rows_->addRow(editor);
}

void Form::button(const QString& name, const QString& words, std::function<void()> pressed)
{
    auto* button = new QPushButton(words, this);
    button->setObjectName(name);
    connect(button, &QPushButton::clicked, this, std::move(pressed));
    rows_->addRow(button);
}

} // namespace doorloom
