#include "panels/form.h"

#include "edit/undowords.h"
#include "openjob/shown.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QToolTip>

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

bool Form::make(QWidget* editor, const Result<Change>& change)
{
    std::optional<Problem> problem;
    if (!change.ok())
        problem = change.problem();
    else
        problem = open_.make(undoWords(job(), doing::alter, {subject}), change.value());
    if (!problem)
        return true;
    auto* why = new QLabel(shown(*problem), this);
    why->setObjectName("refusal");
    why->setWordWrap(true);
    why->setAutoFillBackground(true);
    why->setBackgroundRole(QPalette::ToolTipBase);
    why->setForegroundRole(QPalette::ToolTipText);
    why->setMargin(4);
    for (QLabel* older : findChildren<QLabel*>("refusal"))
        if (older != why)
            rows_->removeRow(older);
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

void Form::choiceField(const QString& name, const QString& label, const std::vector<Item>& items, int current)
{
    auto* editor = new QComboBox(this);
    editor->setObjectName(name);
    editor->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    editor->setMinimumContentsLength(12);
    for (const Item& item : items)
        editor->addItem(item.words);
    editor->setCurrentIndex(current);
    connect(editor, &QComboBox::activated, this, [this, editor, items, current](int chosen) {
        if (chosen != current && items[static_cast<std::size_t>(chosen)].chosen &&
            !make(editor, items[static_cast<std::size_t>(chosen)].chosen()))
            editor->setCurrentIndex(current);
    });
    field(label, editor);
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
