#include "edit/renumber.h"

#include <variant>

namespace doorloom {

namespace {

class Renumberer {
public:
    explicit Renumberer(const Renumbering& numbers) : numbers_(numbers) {}

    void operator()(std::uint32_t& number) const
    {
        if (const auto found = numbers_.find(number); found != numbers_.end())
            number = found->second;
    }
    template <class Thing> void operator()(Id<Thing>& id) const { (*this)(id.number); }
    template <class... Things> void operator()(std::variant<Things...>& held) const
    {
        std::visit([&](auto& each) { (*this)(each); }, held);
    }
    void operator()(std::monostate) const {}
    void operator()(Landing& landing) const { (*this)(landing.device); }
    void operator()(Thrown& thrown) const { (*this)(thrown.moved); }
    void operator()(Act& act) const { (*this)(act.throws); }
    void operator()(Binding& binding) const { (*this)(binding.moved); }
    void operator()(Promise& promise) const
    {
        (*this)(promise.situation.lost);
        (*this)(promise.device);
    }
    void operator()(std::pair<std::uint32_t, std::uint32_t>& both) const
    {
        (*this)(both.first);
        (*this)(both.second);
    }
    template <class Thing> void operator()(std::vector<Thing>& list) const
    {
        for (Thing& each : list)
            (*this)(each);
    }

private:
    const Renumbering& numbers_;
};

template <class Row> void inside(Row&, const Renumberer&) {}

void inside(Operator& row, const Renumberer& by)
{
    by(row.owner);
}
void inside(Device& row, const Renumberer& by)
{
    by(row.kind);
    by(row.place);
    by(row.bindings);
}
void inside(Cable& row, const Renumberer& by)
{
    by(row.type);
    by(row.from);
    by(row.to);
}
void inside(Splice& row, const Renumberer& by)
{
    by(row.place);
}
void inside(Conductor& row, const Renumberer& by)
{
    by(row.cable);
    by(row.from.on);
    by(row.to.on);
}
void inside(Opening& row, const Renumberer& by)
{
    by(row.door);
    by(row.fire);
    by(row.locks);
    by(row.doorOperators);
    by(row.requests);
    by(row.releases);
    by(row.occupied);
    by(row.promises);
}
void inside(Placement& row, const Renumberer& by)
{
    by(row.sheet);
    by(row.what);
}
void inside(Bends& row, const Renumberer& by)
{
    by(row.conductor);
}
void inside(Note& row, const Renumberer& by)
{
    by(row.sheet);
}
void inside(Typical& row, const Renumberer& by)
{
    by(row.rows);
    for (Edition& edition : row.editions)
        for (DoorRow& drawn : edition.rows)
            std::visit(
                [&](auto& each) {
                    by(each.id);
                    inside(each, by);
                },
                drawn);
}
void inside(Stamp& row, const Renumberer& by)
{
    by(row.typical);
    by(row.rows);
}

} // namespace

template <class Row> void renumber(Row& row, const Renumbering& numbers)
{
    const Renumberer by(numbers);
    by(row.id);
    inside(row, by);
}

template void renumber(JobInfo&, const Renumbering&);
template void renumber(JobKind&, const Renumbering&);
template void renumber(CableType&, const Renumbering&);
template void renumber(Place&, const Renumbering&);
template void renumber(Operator&, const Renumbering&);
template void renumber(Device&, const Renumbering&);
template void renumber(Cable&, const Renumbering&);
template void renumber(Splice&, const Renumbering&);
template void renumber(Conductor&, const Renumbering&);
template void renumber(Opening&, const Renumbering&);
template void renumber(Sheet&, const Renumbering&);
template void renumber(Placement&, const Renumbering&);
template void renumber(Bends&, const Renumbering&);
template void renumber(Note&, const Renumbering&);
template void renumber(SetAside&, const Renumbering&);
template void renumber(Typical&, const Renumbering&);
template void renumber(Stamp&, const Renumbering&);

} // namespace doorloom
