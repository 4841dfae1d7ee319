#include "dialogs/kindrows.h"

#include "base/json.h"
#include "catalogue/kindcells.h"

#include <QTreeWidgetItem>

namespace doorloom {

using Sort = FormType::Sort;

const FormType& typeOf(const QTreeWidgetItem* row)
{
    return *static_cast<const FormType*>(row->data(0, typeRole).value<void*>());
}

std::string nameOf(const QTreeWidgetItem* row)
{
    return row->data(0, nameRole).toString().toStdString();
}

bool isNeeded(const QTreeWidgetItem* row)
{
    return row->data(0, neededRole).toBool();
}

std::string valueOf(const QTreeWidgetItem* row)
{
    return row->text(1).trimmed().toStdString();
}

QTreeWidgetItem* childNamed(const QTreeWidgetItem* row, const std::string& name)
{
    for (int child = 0; child < row->childCount(); ++child)
        if (nameOf(row->child(child)) == name)
            return row->child(child);
    return nullptr;
}

namespace {

bool isFilledIn(const QTreeWidgetItem* row)
{
    if (typeOf(row).isLine())
        return !valueOf(row).empty();
    bool filled = typeOf(row).sort == Sort::List && row->childCount() > 0;
    for (int child = 0; !filled && child < row->childCount(); ++child)
        filled = isFilledIn(row->child(child));
    return filled;
}

// A setting that is a choice has a word for its value, even where that is written in figures.
bool isWord(const QTreeWidgetItem* row)
{
    const QTreeWidgetItem* form = row->parent() ? childNamed(row->parent(), "form") : nullptr;
    return form && (valueOf(form) == "dip" || valueOf(form) == "choice");
}

std::string lineTextOf(const QTreeWidgetItem* row, Emptiness empty)
{
    const FormType& type = typeOf(row);
    const std::string cell = valueOf(row);
    const bool isText = type.sort == Sort::Text || type.sort == Sort::Pairs || type.sort == Sort::List;
    if (cell.empty() && !(isText && empty == Emptiness::Written))
        return {};
    return type.sort == Sort::NumberOrText && isWord(row) ? quoted(cell) : cellAsJson(type, cell);
}

} // namespace

std::string textOf(const QTreeWidgetItem* row, Emptiness empty)
{
    const FormType& type = typeOf(row);
    if (type.isLine())
        return lineTextOf(row, empty);
    if (empty == Emptiness::LeftOut && !isFilledIn(row))
        return {};
    const bool isList = type.sort == Sort::List;
    std::string text;
    for (int child = 0; child < row->childCount(); ++child) {
        const QTreeWidgetItem* inner = row->child(child);
        const std::string value =
            textOf(inner, isList || isNeeded(inner) ? Emptiness::Written : Emptiness::LeftOut);
        if (!value.empty())
            text += (text.empty() ? "" : ",") + (isList ? "" : quoted(nameOf(inner)) + ":") + value;
    }
    return (isList ? "[" : "{") + text + (isList ? "]" : "}");
}

} // namespace doorloom
