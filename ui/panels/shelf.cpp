#include "panels/shelf.h"

#include "openjob/shown.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QFormLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QStyledItemDelegate>
#include <QTimer>
#include <QTreeWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace doorloom {
namespace {

constexpr int kindRole = Qt::UserRole, cableRole = Qt::UserRole + 1;

struct Family {
    const char* key;
    const char* words;
};
// In the order in which a door is drawn: what feeds, what decides, what locks, what asks.
constexpr Family families[] = {
    {"supply", QT_TRANSLATE_NOOP("doorloom::Shelf", "Supplies")},
    {"logic", QT_TRANSLATE_NOOP("doorloom::Shelf", "Relay logic")},
    {"lock", QT_TRANSLATE_NOOP("doorloom::Shelf", "Strikes and locks")},
    {"switch", QT_TRANSLATE_NOOP("doorloom::Shelf", "Switches and buttons")},
    {"actuator", QT_TRANSLATE_NOOP("doorloom::Shelf", "Actuators")},
    {"lamp", QT_TRANSLATE_NOOP("doorloom::Shelf", "Lamps")},
    {"operator", QT_TRANSLATE_NOOP("doorloom::Shelf", "Door operators")},
    {"relay", QT_TRANSLATE_NOOP("doorloom::Shelf", "Relays and timers")},
    {"part", QT_TRANSLATE_NOOP("doorloom::Shelf", "Diodes and resistors")},
    {"joint", QT_TRANSLATE_NOOP("doorloom::Shelf", "Terminal strips")},
};

QTreeWidgetItem* headingIn(QTreeWidget* list, const QString& words)
{
    auto* heading = new QTreeWidgetItem(list, {words});
    QFont font = list->font();
    font.setBold(true);
    heading->setFont(0, font);
    heading->setFlags(Qt::ItemIsEnabled);
    heading->setFirstColumnSpanned(true);
    return heading;
}

// Kinds differ in their last words, so that these are never cut off: a row takes the lines that it needs.
class WholeWords : public QStyledItemDelegate {
public:
    explicit WholeWords(QTreeWidget* list) : QStyledItemDelegate(list), list_(*list) {}

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        QStyleOptionViewItem row = option;
        const int levels = index.parent().isValid() ? 1 : 0;
        row.rect = {0, 0, list_.columnWidth(0) - levels * list_.indentation(),
                    1}; // empty, it would mean any width
        return QStyledItemDelegate::sizeHint(row, index);
    }

private:
    const QTreeWidget& list_;
};

} // namespace

Shelf::Shelf(OpenJob& open, const Stock& stock, QWidget* parent)
    : QWidget(parent), open_(open), stock_(stock), letters_(new QLineEdit(this)), place_(new QComboBox(this)),
      list_(new QTreeWidget(this))
{
    letters_->setObjectName("shelfLetters");
    letters_->setAccessibleName(tr("Find on the shelf"));
    letters_->setPlaceholderText(tr("strike, relay, 22/4 …"));
    letters_->setClearButtonEnabled(true);
    letters_->installEventFilter(this);
    place_->setObjectName("shelfPlace");
    place_->setAccessibleName(tr("Place of new devices"));
    place_->setEditable(true);
    place_->installEventFilter(this); // it has the keyboard for its line
    place_->setInsertPolicy(QComboBox::NoInsert);
    place_->lineEdit()->setPlaceholderText(tr("not said yet"));
    place_->setToolTip(tr(
        "Where the next devices go. Type a new tag and words to make a place: CAB1 cabinet above ceiling"));
    list_->setObjectName("shelfList");
    list_->setAccessibleName(tr("Kinds and cables"));
    list_->setHeaderHidden(true);
    list_->setRootIsDecorated(false);
    list_->setIndentation(fontMetrics().averageCharWidth() * 2);
    list_->setWordWrap(true);
    list_->setItemDelegate(new WholeWords(list_)); // the list's
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(list_->header(), &QHeaderView::sectionResized, list_, &QTreeWidget::doItemsLayout);

    auto* where = new QFormLayout;
    where->addRow(tr("&Place"), place_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(6, 6, 6, 6);
    layout->addWidget(letters_);
    layout->addLayout(where);
    layout->addWidget(list_, 1);

    connect(letters_, &QLineEdit::textChanged, this, &Shelf::fill);
    connect(letters_, &QLineEdit::returnPressed, this, &Shelf::takeFirst);
    connect(list_, &QTreeWidget::itemClicked, this, &Shelf::pick);
    connect(list_, &QTreeWidget::itemActivated, this, [this](QTreeWidgetItem* item) {
        if (const int kind = item->data(0, kindRole).toInt())
            emit wanted(stock_.kinds[static_cast<std::size_t>(kind - 1)]);
        else
            pick(item);
    });
    connect(place_->lineEdit(), &QLineEdit::editingFinished, this, [this] {
        const QString words = place_->currentText().trimmed();
        if (!words.isEmpty() && place_->findText(words) < 0)
            emit placeWanted(words);
    });
    connect(place_->lineEdit(), &QLineEdit::returnPressed, this,
            &Shelf::startTyping); // what goes there comes next
    connect(&open_, &OpenJob::jobChanged, this, &Shelf::showPlaces);
    fill();
    showPlaces();
}

void Shelf::setStock(const Stock& stock)
{
    stock_ = stock;
    fill();
}

void Shelf::startTyping()
{
    letters_->setFocus(Qt::ShortcutFocusReason);
    letters_->selectAll();
}

PlaceId Shelf::place() const
{
    const int found = place_->findText(place_->currentText());
    return found < 0 ? PlaceId{} : PlaceId{place_->itemData(found).toUInt()};
}

void Shelf::showPlaces()
{
    if (shownPlaces_ == open_.job().places)
        return;
    shownPlaces_ = open_.job().places;
    const PlaceId before = place();
    const QSignalBlocker quiet(place_);
    const QString typed = place_->currentText();
    place_->clear();
    place_->addItem(QString(), 0u);
    for (const Place& each : open_.job().places) {
        place_->addItem(shown(each.tag + " " + each.words).trimmed(), each.id.number);
        if (each.id == before || (!before && !typed.isEmpty() && typed.section(' ', 0, 0) == shown(each.tag)))
            place_->setCurrentIndex(place_->count() - 1);
    }
}

void Shelf::fill()
{
    list_->clear();
    const std::vector<const Kind*> found =
        matchingKinds(stock_.kinds, letters_->text().toStdString(), windowLanguage);
    if (letters_->text().trimmed().isEmpty()) {
        for (const Family& family : families) {
            std::vector<const Kind*> members;
            for (const Kind* kind : found)
                if (kind->family == family.key)
                    members.push_back(kind);
            addFamily(tr(family.words), members);
        }
        std::vector<const Kind*> others;
        for (const Kind* kind : found)
            if (std::none_of(std::begin(families), std::end(families), [&](const Family& family) { return kind->family == family.key; }))
                others.push_back(kind);
        addFamily(tr("Others"), others);
    } else {
        addFamily(tr("Found"), found);
    }
    addCables(letters_->text().trimmed());
    list_->expandAll();
    if (QTreeWidgetItem* first = list_->topLevelItem(0); first && !letters_->text().trimmed().isEmpty())
        list_->setCurrentItem(first->child(0));
}

void Shelf::addFamily(const QString& family, const std::vector<const Kind*>& kinds)
{
    if (kinds.empty())
        return;
    QTreeWidgetItem* heading = headingIn(list_, family);
    for (const Kind* kind : kinds) {
        auto* item = new QTreeWidgetItem(heading, {shown(kind->title)});
        item->setToolTip(0, shown(kind->words));
        item->setData(0, kindRole, static_cast<int>(kind - stock_.kinds.data()) + 1);
    }
}

void Shelf::addCables(const QString& letters)
{
    QTreeWidgetItem* heading = nullptr;
    for (std::size_t each = 0; each < stock_.cables.size(); ++each) {
        const QString words =
            tr("%1 · %2").arg(shown(stock_.cables[each].name), shown(stock_.cables[each].words));
        if (!letters.isEmpty() && !words.contains(letters, Qt::CaseInsensitive))
            continue;
        if (!heading)
            heading = headingIn(list_, tr("Cables"));
        auto* item = new QTreeWidgetItem(heading, {words});
        item->setToolTip(0, tr("Pull it from one box to another"));
        item->setData(0, cableRole, static_cast<int>(each) + 1);
    }
}

void Shelf::pick(QTreeWidgetItem* item)
{
    if (const int kind = item->data(0, kindRole).toInt())
        emit picked(stock_.kinds[static_cast<std::size_t>(kind - 1)]);
    else if (const int cable = item->data(0, cableRole).toInt())
        emit cablePicked(stock_.cables[static_cast<std::size_t>(cable - 1)]);
}

void Shelf::takeFirst()
{
    if (QTreeWidgetItem* item = list_->currentItem())
        emit list_->itemActivated(item, 0);
}

bool Shelf::eventFilter(QObject* watched, QEvent* event)
{
    // A click into the place takes all of it, so that typing says another.
    if (watched == place_ && event->type() == QEvent::FocusIn)
        QTimer::singleShot(0, place_->lineEdit(), &QLineEdit::selectAll);
    if (watched == letters_ && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Down || key == Qt::Key_Up) {
            QCoreApplication::sendEvent(list_, event);
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace doorloom
