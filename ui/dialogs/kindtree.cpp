#include "dialogs/kindtree.h"

#include "catalogue/kindcells.h"
#include "catalogue/memberwords.h"
#include "dialogs/kindrows.h"
#include "openjob/shown.h"

#include <QComboBox>
#include <QHeaderView>
#include <QLineEdit>
#include <QStyle>
#include <QStyledItemDelegate>
#include <QTreeWidgetItemIterator>

#include <algorithm>
#include <utility>

namespace doorloom {
namespace {

using Sort = FormType::Sort;

// Of a part of this type; what is no type has the members of the first.
const std::vector<FormMember>& membersAs(const FormType& part, const std::string& word)
{
    const auto which = std::find(part.words.begin(), part.words.end(), word);
    return part
        .alternatives[which == part.words.end() ? 0 : static_cast<std::size_t>(which - part.words.begin())];
}

// ---- Editing a cell

class CellEditor : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem&,
                          const QModelIndex& index) const override
    {
        const auto* tree = static_cast<const KindTree*>(this->parent());
        const FormType& type = typeOf(tree->itemFromIndex(index.siblingAtColumn(0)));
        if (index.column() != 1 || !type.isLine())
            return nullptr;
        if (type.sort != Sort::Word && type.sort != Sort::Truth)
            return named(new QLineEdit(parent), index);
        auto* choose = new QComboBox(parent);
        choose->addItem(QString());
        if (type.sort == Sort::Truth)
            choose->addItems({"yes", "no"});
        for (const std::string& word : type.words)
            choose->addItem(shown(word));
        return named(choose, index);
    }

private:
    static QWidget* named(QWidget* editor, const QModelIndex& index)
    {
        editor->setAccessibleName(index.siblingAtColumn(0).data().toString());
        editor->setObjectName("kindCell");
        return editor;
    }
};

} // namespace

KindTree::KindTree(QWidget* parent) : QTreeWidget(parent)
{
    setObjectName("kindTree");
    setAccessibleName(tr("What the kind is"));
    setHeaderLabels({tr("what"), tr("value")});
    header()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
    setItemDelegate(new CellEditor(this)); // the tree's
    setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                    QAbstractItemView::AnyKeyPressed);
    setAllColumnsShowFocus(true);
    connect(this, &QTreeWidget::itemChanged, this, &KindTree::valueAltered);
}

void KindTree::fill(const Json& kind)
{
    building_ = true;
    clear();
    buildMembers(invisibleRootItem(), kindForm().members, &kind);
    building_ = false;
    at("title")->setExpanded(true);
    emit altered();
}

void KindTree::buildMembers(QTreeWidgetItem* item, std::span<const FormMember> members, const Json* value)
{
    for (const FormMember& member : members) {
        auto* row = new QTreeWidgetItem(item, {shown(wordsOfMember(member.name))});
        row->setData(0, nameRole, shown(member.name));
        row->setToolTip(0, tr("'%1' in the kind's file").arg(shown(member.name)));
        QFont font = row->font(0);
        font.setBold(member.needed);
        row->setFont(0, font);
        row->setData(0, neededRole, member.needed);
        build(row, member.type, value ? value->find(member.name) : nullptr);
    }
}

void KindTree::build(QTreeWidgetItem* item, const FormType& type, const Json* value)
{
    item->setData(0, typeRole, QVariant::fromValue(const_cast<void*>(static_cast<const void*>(&type))));
    item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable |
                   (type.isLine() ? Qt::ItemIsEditable : Qt::NoItemFlags));
    if (type.isLine()) {
        item->setText(1, value ? shown(cellOf(*value)) : QString());
    } else if (type.sort == Sort::Object) {
        buildMembers(item, type.members, value);
    } else if (type.sort == Sort::Part) {
        const Json* said = value ? value->find("type") : nullptr;
        const std::string word = said ? cellOf(*said) : type.words.front();
        buildMembers(item, membersAs(type, word), value);
        childNamed(item, "type")->setText(1, shown(word));
    } else if (const auto* items = value ? std::get_if<Json::Array>(&value->value) : nullptr) {
        for (const Json& each : *items)
            addEntry(item, &each, item->childCount());
        nameEntries(item);
    }
}

QTreeWidgetItem* KindTree::addEntry(QTreeWidgetItem* list, const Json* value, int place)
{
    auto* entry = new QTreeWidgetItem;
    list->insertChild(place, entry);
    build(entry, *typeOf(list).item, value);
    return entry;
}

void KindTree::nameEntries(QTreeWidgetItem* list)
{
    for (int place = 0; place < list->childCount(); ++place) {
        QTreeWidgetItem* entry = list->child(place);
        QString said;
        for (const char* name : {"type", "printed", "key"})
            if (const QTreeWidgetItem* child = childNamed(entry, name); child && !child->text(1).isEmpty())
                said += (said.isEmpty() ? "" : " ") + child->text(1);
        entry->setText(0, tr("%1: %2").arg(place + 1).arg(said));
    }
    list->setText(1, list->childCount() > 0 ? QString::number(list->childCount()) : QString());
}

// Another type of part has other members; what both have stays.
void KindTree::valueAltered(QTreeWidgetItem* item, int column)
{
    if (building_ || column != 1)
        return;
    building_ = true;
    QTreeWidgetItem* entry = item->parent();
    if (entry && entry->parent() && typeOf(entry->parent()).sort == Sort::List) {
        if (typeOf(entry).sort == Sort::Part && nameOf(item) == "type") {
            const Result<Json> before = parseJson(textOf(entry, Emptiness::Written), "");
            while (entry->childCount() > 1) // the type itself is being edited
                delete entry->takeChild(1);
            buildMembers(entry, std::span(membersAs(typeOf(entry), valueOf(item))).subspan(1),
                         before.ok() ? &before.value() : nullptr);
        }
        nameEntries(entry->parent());
    }
    building_ = false;
    emit altered();
}

std::string KindTree::text() const
{
    std::string text;
    for (int row = 0; row < topLevelItemCount(); ++row) {
        const QTreeWidgetItem* item = topLevelItem(row);
        const std::string value = textOf(item, isNeeded(item) ? Emptiness::Written : Emptiness::LeftOut);
        if (!value.empty())
            text += (text.empty() ? "" : ",\n") + quoted(nameOf(item)) + ":" + value;
    }
    return "{" + text + "}";
}

QTreeWidgetItem* KindTree::at(const std::string& path) const
{
    QTreeWidgetItem* item = invisibleRootItem();
    for (const QString& step : shown(path).replace('[', ".").remove(']').split('.', Qt::SkipEmptyParts)) {
        bool isIndex = false;
        const int index = step.toInt(&isIndex);
        QTreeWidgetItem* next = childNamed(item, step.toStdString());
        if (!next && isIndex)
            next = item->child(index);
        if (!next)
            break;
        item = next;
    }
    return item == invisibleRootItem() ? nullptr : item;
}

void KindTree::goTo(const std::string& path)
{
    QTreeWidgetItem* item = at(path);
    if (!item)
        return;
    scrollToItem(item);
    setCurrentItem(item, 1);
}

// With all that it stands in, for it may be closed.
void KindTree::mark(const std::vector<std::string>& paths)
{
    for (QTreeWidgetItemIterator each(this); *each; ++each)
        if (!(*each)->icon(0).isNull())
            (*each)->setIcon(0, QIcon());
    for (const std::string& path : paths)
        for (QTreeWidgetItem* item = at(path); item; item = item->parent())
            item->setIcon(0, style()->standardIcon(QStyle::SP_MessageBoxWarning));
}

QString KindTree::wordsOf(const std::string& path) const
{
    QString words;
    for (const QTreeWidgetItem* item = at(path); item; item = item->parent())
        words = item->text(0) + (words.isEmpty() ? "" : " › ") + words;
    return words;
}

QTreeWidgetItem* KindTree::entryOfChosen() const
{
    for (QTreeWidgetItem* item = currentItem(); item; item = item->parent())
        if (item->parent() && typeOf(item->parent()).sort == Sort::List && !typeOf(item->parent()).isLine())
            return item;
    return nullptr;
}

QTreeWidgetItem* KindTree::listOfChosen() const
{
    QTreeWidgetItem* item = currentItem();
    if (item && typeOf(item).sort == Sort::List && !typeOf(item).isLine())
        return item;
    const QTreeWidgetItem* entry = entryOfChosen();
    return entry ? entry->parent() : nullptr;
}

bool KindTree::canAdd() const
{
    return listOfChosen() != nullptr;
}

bool KindTree::canTakeOut() const
{
    return entryOfChosen() != nullptr;
}

void KindTree::add()
{
    QTreeWidgetItem* list = listOfChosen();
    if (!list)
        return;
    building_ = true;
    QTreeWidgetItem* entry = addEntry(list, nullptr, list->childCount());
    nameEntries(list);
    building_ = false;
    entry->setExpanded(true);
    setCurrentItem(entry->childCount() > 0 ? entry->child(0) : entry, 1);
    emit altered();
}

void KindTree::addAlike()
{
    QTreeWidgetItem* alike = entryOfChosen();
    if (!alike)
        return;
    const Result<Json> value = parseJson(textOf(alike, Emptiness::Written), "");
    QTreeWidgetItem* list = alike->parent();
    building_ = true;
    QTreeWidgetItem* entry =
        addEntry(list, value.ok() ? &value.value() : nullptr, list->indexOfChild(alike) + 1);
    nameEntries(list);
    building_ = false;
    entry->setExpanded(true);
    setCurrentItem(entry->childCount() > 0 ? entry->child(0) : entry, 1);
    emit altered();
}

void KindTree::takeOut()
{
    QTreeWidgetItem* entry = entryOfChosen();
    if (!entry)
        return;
    QTreeWidgetItem* list = entry->parent();
    building_ = true;
    delete entry;
    nameEntries(list);
    building_ = false;
    setCurrentItem(list, 1);
    emit altered();
}

} // namespace doorloom
