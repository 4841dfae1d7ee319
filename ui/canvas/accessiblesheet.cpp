#include "canvas/accessiblesheet.h"

#include "canvas/insideview.h"
#include "canvas/walk.h"
#include "canvas/words.h"

#include <QAccessible>
#include <QAccessibleWidget>

#include <algorithm>
#include <map>
#include <utility>

namespace doorloom {
namespace {

constexpr Text terminalNamed = {.en = "terminal {name}: {words}. {landed}",
                                .es = "borne {name}: {words}. {landed}"};

using Thing = std::pair<std::uint32_t, int>; // a row, and its cell or −1

} // namespace

class AccessibleSheet;

// A device, splice or note, or one terminal of a device. It knows a row, not a place in a list: what is gone
// is not valid any more.
class AccessibleThing : public QAccessibleInterface, public QAccessibleActionInterface {
public:
    AccessibleThing(AccessibleSheet& sheet, Thing thing) : sheet_(sheet), thing_(thing) {}

    bool isValid() const override;
    QObject* object() const override { return nullptr; }
    QAccessibleInterface* parent() const override;
    QAccessibleInterface* child(int index) const override;
    int childCount() const override;
    int indexOfChild(const QAccessibleInterface* child) const override;
    QAccessibleInterface* childAt(int x, int y) const override;
    QString text(QAccessible::Text kind) const override;
    void setText(QAccessible::Text, const QString&) override {}
    QRect rect() const override;
    QAccessible::Role role() const override;
    QAccessible::State state() const override;
    void* interface_cast(QAccessible::InterfaceType type) override
    {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this)
                                                    : nullptr;
    }

    QStringList actionNames() const override { return {pressAction(), setFocusAction()}; }
    void doAction(const QString& name) override;
    QStringList keyBindingsForAction(const QString&) const override { return {}; }

    const Thing& thing() const { return thing_; }

private:
    bool isTerminal() const { return thing_.second >= 0; }
    const Key* terminal() const; // null when it is gone

    AccessibleSheet& sheet_;
    Thing thing_;
};

class AccessibleSheet : public QAccessibleWidget {
public:
    explicit AccessibleSheet(SheetView& view) : QAccessibleWidget(&view, QAccessible::Canvas), view_(view) {}
    ~AccessibleSheet() override
    {
        for (const auto& [thing, id] : ids_)
            QAccessible::deleteAccessibleInterface(id);
    }

    int childCount() const override { return static_cast<int>(order().size()); }
    QAccessibleInterface* child(int index) const override
    {
        const auto& all = order();
        return index >= 0 && index < static_cast<int>(all.size())
                   ? thing({all[static_cast<std::size_t>(index)].row, -1})
                   : nullptr;
    }
    int indexOfChild(const QAccessibleInterface* child) const override
    {
        const auto* found = dynamic_cast<const AccessibleThing*>(child);
        return found ? indexOf(found->thing().first) : -1;
    }
    QAccessibleInterface* childAt(int x, int y) const override
    {
        const Hit hit = desk().pointerAt(view_.mapFromGlobal(QPoint(x, y)), Qt::NoModifier).hit;
        return indexOf(hit.row) < 0 ? nullptr : thing({hit.row, -1});
    }
    QAccessibleInterface* focusChild() const override
    {
        const Hit& focus = desk().focus().hit;
        return focus ? thing(thingOf(focus)) : nullptr;
    }

    static Thing thingOf(const Hit& hit)
    {
        return {hit.row, hit.what == Hit::What::Terminal ? static_cast<int>(hit.cell) : -1};
    }
    SheetView& view() const { return view_; }
    Desk& desk() const { return view_.inside_->desk; }
    int indexOf(std::uint32_t row) const
    {
        const auto& all = order();
        const auto found =
            std::find_if(all.begin(), all.end(), [&](const Hit& each) { return each.row == row; });
        return found == all.end() ? -1 : static_cast<int>(found - all.begin());
    }
    QAccessibleInterface* thing(Thing wanted) const
    {
        const auto [found, isNew] = ids_.try_emplace(wanted, 0u);
        if (isNew)
            found->second = QAccessible::registerAccessibleInterface(
                new AccessibleThing(const_cast<AccessibleSheet&>(*this), wanted)); // of Qt's list, by its id
        return QAccessible::accessibleInterface(found->second);
    }
    void walkTo(Thing to)
    {
        view_.walkTo(to.first, static_cast<std::size_t>(std::max(0, to.second)), to.second >= 0);
    }
    void press(Thing at)
    {
        walkTo(at);
        view_.pressFocus();
    }

private:
    // As one reads; worked out again when the job is another one.
    const std::vector<Hit>& order() const
    {
        const auto now = std::make_pair(view_.inside_->generation(), desk().drawing().sheet().number);
        if (now != orderedAt_) {
            order_ = readingOrder(desk().drawing());
            orderedAt_ = now;
        }
        return order_;
    }

    SheetView& view_;
    mutable std::vector<Hit> order_;
    mutable std::pair<std::uint64_t, std::uint32_t> orderedAt_{~std::uint64_t{0}, 0};
    mutable std::map<Thing, QAccessible::Id> ids_;
};

const Key* AccessibleThing::terminal() const
{
    const DeviceDrawn* device = sheet_.desk().drawing().devices().find(thing_.first);
    const auto cell = static_cast<std::size_t>(thing_.second);
    return device && isTerminal() && cell < device->shape.cells.size() ? &device->shape.cells[cell].terminal
                                                                       : nullptr;
}

bool AccessibleThing::isValid() const
{
    return isTerminal() ? terminal() != nullptr : sheet_.indexOf(thing_.first) >= 0;
}

QAccessibleInterface* AccessibleThing::parent() const
{
    return isTerminal() ? sheet_.thing({thing_.first, -1}) : &sheet_;
}

int AccessibleThing::childCount() const
{
    const DeviceDrawn* device = isTerminal() ? nullptr : sheet_.desk().drawing().devices().find(thing_.first);
    return device ? static_cast<int>(device->shape.cells.size()) : 0;
}

QAccessibleInterface* AccessibleThing::child(int index) const
{
    return index >= 0 && index < childCount() ? sheet_.thing({thing_.first, index}) : nullptr;
}

int AccessibleThing::indexOfChild(const QAccessibleInterface* child) const
{
    const auto* found = dynamic_cast<const AccessibleThing*>(child);
    return found && found->thing_.first == thing_.first ? found->thing_.second : -1;
}

QAccessibleInterface* AccessibleThing::childAt(int x, int y) const
{
    for (int i = 0; i < childCount(); ++i)
        if (QAccessibleInterface* each = child(i); each->rect().contains(x, y))
            return each;
    return nullptr;
}

QString AccessibleThing::text(QAccessible::Text kind) const
{
    if (kind != QAccessible::Name || !isValid())
        return {};
    const Desk& desk = sheet_.desk();
    const Job& job = desk.job();
    Message words;
    if (const Key* key = terminal()) {
        const Landing landing{{thing_.first}, *key};
        const Kind* device = kindOf(job, landing.device);
        const Terminal* row = device ? findTerminal(*device, *key) : nullptr;
        words = {terminalNamed,
                 {{"name", row ? row->printed : *key},
                  {"words", row ? row->words : Words{}},
                  {"landed", std::vector<Message>{landedOn(job, landing)}}}};
    } else {
        const auto what = job.devices.find({thing_.first})   ? Hit::What::Device
                          : job.splices.find({thing_.first}) ? Hit::What::Splice
                                                             : Hit::What::Note;
        words = wordsOf(job, desk.drawing(), {what, thing_.first, 0, 0, WhichEnd::From});
    }
    return QString::fromStdString(inWords(words, desk.language()));
}

QRect AccessibleThing::rect() const
{
    const Key* key = terminal();
    const QRect rect = sheet_.view().rectOf(thing_.first, key ? *key : Key{});
    return {sheet_.view().mapToGlobal(rect.topLeft()), rect.size()};
}

QAccessible::Role AccessibleThing::role() const
{
    if (isTerminal())
        return QAccessible::Button;
    return childCount() > 0 ? QAccessible::Grouping : QAccessible::StaticText;
}

QAccessible::State AccessibleThing::state() const
{
    QAccessible::State state;
    state.invalid = !isValid();
    state.focusable = true;
    state.focused = sheet_.view().hasFocus() && AccessibleSheet::thingOf(sheet_.desk().focus().hit) == thing_;
    state.selectable = !isTerminal();
    state.selected = !isTerminal() && std::as_const(sheet_.desk()).selection().holds(thing_.first);
    state.offscreen = !QRect(sheet_.view().mapToGlobal(QPoint()), sheet_.view().size()).intersects(rect());
    return state;
}

void AccessibleThing::doAction(const QString& name)
{
    if (!isValid())
        return;
    if (name == pressAction())
        sheet_.press(thing_);
    else if (name == setFocusAction())
        sheet_.walkTo(thing_);
}

void makeSheetAccessible()
{
    static const bool once = [] {
        QAccessible::installFactory([](const QString&, QObject* object) -> QAccessibleInterface* {
            auto* view = qobject_cast<SheetView*>(object);
            return view ? new AccessibleSheet(*view) : nullptr; // of Qt's list
        });
        return true;
    }();
    static_cast<void>(once);
}

void SheetView::tellFocus()
{
    if (!QAccessible::isActive())
        return;
    auto* sheet = dynamic_cast<AccessibleSheet*>(QAccessible::queryAccessibleInterface(this));
    QAccessibleInterface* focused = sheet ? sheet->focusChild() : nullptr;
    if (!focused)
        return;
    QAccessibleEvent event(focused, QAccessible::Focus);
    QAccessible::updateAccessibility(&event);
}

void SheetView::tellChange()
{
    if (!QAccessible::isActive())
        return;
    QAccessibleEvent event(this, QAccessible::ObjectReorder);
    QAccessible::updateAccessibility(&event);
}

} // namespace doorloom
