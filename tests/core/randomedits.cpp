#include "randomedits.h"

#include "edit/placing.h"

namespace doorloom {

namespace {

std::vector<Key> keysIn(const std::vector<Throw>& throws)
{
    std::vector<Key> keys;
    for (const Throw& each : throws)
        keys.push_back(each.key);
    return keys;
}

bool haveTheSameKeys(const std::vector<Throw>& ones, const std::vector<Throw>& others)
{
    return keysIn(ones) == keysIn(others);
}

} // namespace

// ---- Picking

Key RandomEdits::terminalOf(DeviceId device)
{
    std::vector<Key> keys;
    if (const Kind* kind = kindOf(job_, device))
        for (const Terminal* terminal : terminalsOf(*kind))
            keys.push_back(terminal->key);
    return someKey(keys);
}

End RandomEdits::end()
{
    const std::size_t manner = random_.below(8);
    if (manner == 0 && !job_.splices.empty())
        return {EndState::Landed, some<Splice>()};
    if (manner < 6 && !job_.devices.empty()) {
        const DeviceId device = some<Device>();
        return {EndState::Landed, Landing{device, terminalOf(device)}};
    }
    return {random_.oneOf<EndState>({EndState::Waiting, EndState::Spare, EndState::Insulated}), {}};
}

Thrown RandomEdits::thrown()
{
    const Operator* moved = job_.operators.find(some<Operator>());
    return moved ? Thrown{moved->id, someKey(keysIn(moved->throws))} : Thrown{{}, "in"};
}

std::vector<Thrown> RandomEdits::someThrows()
{
    std::vector<Thrown> throws;
    if (!job_.operators.empty())
        for (std::size_t count = random_.below(3); count > 0; --count)
            throws.push_back(thrown());
    return throws;
}

std::uint32_t RandomEdits::someNumber()
{
    switch (random_.below(4)) {
    case 0:
        return some<Device>().number;
    case 1:
        return some<Conductor>().number;
    case 2:
        return some<Operator>().number;
    default:
        return some<Cable>().number;
    }
}

DeviceId RandomEdits::someOf(const std::function<bool(const Kind&)>& fits)
{
    std::vector<DeviceId> found;
    for (const Device& device : job_.devices)
        if (fits(*kindOf(job_, device)))
            found.push_back(device.id);
    return found.empty() || random_.oneIn(40) ? some<Device>() : random_.oneOf(found);
}

// One of the small kinds, sometimes in a version of its own.
Kind RandomEdits::kind()
{
    Kind kind =
        random_.oneOf<Kind>({smallSupply(), smallModule(), smallStrike(), smallDoorSwitch(), smallButton()});
    switch (random_.below(12)) {
    case 0:
        kind.strips.push_back(stripOf({word("x")}));
        break;
    case 1:
        kind.strips[0].terminals.pop_back();
        break;
    case 2:
        kind.words.en = word("words ");
        break;
    case 3:
        for (Setting& setting : kind.settings)
            setting.most = random_.between(5, 40);
        break;
    default:
        break;
    }
    return kind;
}

// ---- Rows

void RandomEdits::fill(JobInfo& row)
{
    row.title = word("Job ");
}

void RandomEdits::fill(JobKind& row)
{
    const std::string name = row.kind.name;
    do
        row.kind = kind();
    while (!name.empty() && row.kind.name != name && !random_.oneIn(20));
}

void RandomEdits::fill(CableType& row)
{
    row.name = word("type ");
    if (!row.cores.empty() && random_.oneIn(3)) {
        row.cores.pop_back();
        return;
    }
    for (std::size_t count = random_.below(3) + 1; count > 0; --count) {
        Core core;
        core.number = row.cores.empty() ? 1 : row.cores.back().number + (random_.oneIn(30) ? 0 : 1);
        row.cores.push_back(core);
    }
}

void RandomEdits::fill(Place& row)
{
    row.tag = word("P");
    row.mounting = random_.oneIn(2) ? Mounting::Cabinet : Mounting::Leaf;
}

void RandomEdits::fill(Operator& row)
{
    if (!row.throws.empty() && !random_.oneIn(10)) {
        row.idle = someKey(keysIn(row.throws));
        return;
    }
    const Role role =
        random_.oneOf<Role>({smallDoorSwitch().roles[0], smallButton().roles[0], smallModule().roles[0]});
    row.tag = random_.oneIn(30) ? "" : word("O");
    row.throws = role.throws;
    row.unpowered = role.unpowered;
    row.idle = someKey(keysIn(role.throws));
}

void RandomEdits::fill(Device& row)
{
    row.tag = random_.oneIn(30) ? "two words" : word("N");
    row.place = someOrNone<Place>();
    row.standing = random_.oneIn(40) ? Standing::LeaveAlone : Standing::Existing;
    for (Choice& choice : row.choices)
        choice.value = optionValue();
    const JobKind* known = row.kind ? nullptr : job_.kinds.find(some<JobKind>());
    if (!known)
        return;
    row.kind = known->id;
    row.choices = unchosenJumpers(known->kind);
    row.settings = factorySettings(known->kind);
    for (const Role& role : known->kind.roles)
        for (const Operator& moved : job_.operators)
            if (haveTheSameKeys(moved.throws, role.throws)) {
                row.bindings.push_back({role.key, moved.id});
                break;
            }
}

void RandomEdits::fill(Cable& row)
{
    if (!row.type || random_.oneIn(10))
        row.type = some<CableType>();
    row.tag = word("C");
    row.from = someOrNone<Place>();
    row.to = someOrNone<Place>();
    row.length = {double(random_.between(random_.oneIn(40) ? -5 : 0, 40))};
}

void RandomEdits::fill(Splice& row)
{
    row.tag = word("S");
    row.place = someOrNone<Place>();
}

void RandomEdits::fill(Conductor& row)
{
    row.tag = word("W");
    if (random_.oneIn(2))
        row.from = end();
    if (random_.oneIn(2))
        row.to = end();
    if (random_.oneIn(40))
        row.core = random_.between(1, 5);
}

void RandomEdits::fill(Opening& row)
{
    row.tag = word("D");
    row.door = someOrNone<Operator>();
    row.fire = someOrNone<Operator>();
    row.promises.clear();
    row.locks = {someOf([](const Kind& kind) { return kind.lock.has_value(); })};
    row.doorOperators = random_.oneIn(2) ? std::vector<DeviceId>{} : std::vector<DeviceId>{some<Device>()};
    row.requests = {{"button", Side::Inside, someThrows()}};
    row.releases = {{random_.oneIn(30) ? "" : "key", Side::Both, someThrows()}};
    row.occupied = someThrows();
    row.promises.push_back({{SituationKind::Request, "button", {}}, row.locks[0], Promised::Free});
    if (random_.oneIn(2) && !job_.operators.empty())
        row.promises.push_back(
            {{SituationKind::LostAlone, "", some<Operator>()}, row.locks[0], Promised::Locked});
    if (random_.oneIn(20))
        row.promises.push_back({{SituationKind::Release, "no such act", {}}, row.locks[0], Promised::Free});
}

void RandomEdits::fill(Sheet& row)
{
    row.title = word("Sheet ");
}

void RandomEdits::fill(Placement& row)
{
    if (!row.sheet)
        row.sheet = some<Sheet>();
    if (random_.oneIn(3) && !job_.splices.empty())
        row.what = some<Splice>();
    else
        row.what = some<Device>();
    row.at = {random_.between(0, 4000), random_.between(0, 3000)};
}

void RandomEdits::fill(Bends& row)
{
    if (!row.conductor)
        row.conductor = some<Conductor>();
    row.pinned = {{random_.between(0, 4000), random_.between(0, 3000)}};
}

void RandomEdits::fill(Note& row)
{
    row.sheet = some<Sheet>();
    row.words = word("note ");
}

void RandomEdits::fill(SetAside& row)
{
    row.reason = word("reason ");
}

void RandomEdits::fill(Typical& row)
{
    row.name = word("typical ");
    row.rows = {some<Device>().number, some<Conductor>().number};
    if (const Device* device = job_.devices.find(some<Device>()))
        row.editions = {{1, {*device}}};
}

void RandomEdits::fill(Stamp& row)
{
    row.name = word("stamp ");
    row.typical = some<Typical>();
    row.rows = {{some<Device>().number, some<Device>().number},
                {some<Conductor>().number, some<Conductor>().number}};
    row.edition = random_.oneIn(2) ? 0 : 1;
}

// ---- Operations

std::optional<Change> RandomEdits::runPullCable()
{
    Cable cable;
    cable.tag = word("C");
    cable.type = some<CableType>();
    cable.from = someOrNone<Place>();
    return pullCable(job_, numbers_, cable).second;
}

std::optional<Change> RandomEdits::runSetKind()
{
    const DeviceId device = some<Device>();
    const Kind* old = kindOf(job_, device);
    Kind newer = kind();
    while (old && newer.name != old->name && !random_.oneIn(20))
        newer = kind();
    Result<KindSwap> swap = setKind(job_, numbers_, device, newer);
    return swap.ok() ? std::optional(std::move(swap.value().change)) : std::nullopt;
}

std::optional<Change> RandomEdits::runBindRole()
{
    const DeviceId device = someOf([](const Kind& kind) { return !kind.roles.empty(); });
    const Kind* kind = kindOf(job_, device);
    if (!kind || kind->roles.empty())
        return made(bindRole(job_, device, "K9", some<Operator>()));
    std::vector<OperatorId> fitting;
    for (const Operator& moved : job_.operators)
        if (haveTheSameKeys(moved.throws, kind->roles[0].throws))
            fitting.push_back(moved.id);
    return made(bindRole(job_, device, kind->roles[0].key,
                         random_.oneIn(20) ? some<Operator>() : random_.oneOf(fitting)));
}

const std::vector<RandomEdits::Operation>& RandomEdits::operations()
{
    static const std::vector<Operation> all = {
        {"takeKind", &RandomEdits::runTakeKind, true},
        {"placeDevice", &RandomEdits::runPlaceDevice, false},
        {"removeDevice", &RandomEdits::runRemoveDevice, true},
        {"pullCable", &RandomEdits::runPullCable, false},
        {"removeCable", &RandomEdits::runRemoveCable, true},
        {"addWire", &RandomEdits::runAddWire, false},
        {"takeOff", &RandomEdits::runTakeOff, true},
        {"setEnd", &RandomEdits::runSetEnd, true},
        {"exchangeTerminals", &RandomEdits::runExchangeTerminals, true},
        {"setJumper", &RandomEdits::runSetJumper, true},
        {"setOption", &RandomEdits::runSetOption, true},
        {"setSetting", &RandomEdits::runSetSetting, true},
        {"setKind", &RandomEdits::runSetKind, true},
        {"bindRole", &RandomEdits::runBindRole, false},
        {"setIdle", &RandomEdits::runSetIdle, true},
        {"renameDevice", &RandomEdits::runRenameDevice, true},
    };
    return all;
}

std::vector<std::string> RandomEdits::operationNames()
{
    std::vector<std::string> names;
    for (const Operation& operation : operations())
        names.push_back(operation.name);
    return names;
}

RandomEdits::Edit RandomEdits::anyRow()
{
    Edit edit;
    std::size_t left = random_.below(17);
    forEachTable(job_, [&]<class Row>(const char* name, const Table<Row>&) {
        if (left-- == 0) {
            edit.name = name;
            edit.change = rowEdit<Row>(edit.name);
        }
    });
    return edit;
}

RandomEdits::Edit RandomEdits::anyOperation()
{
    const Operation& operation = random_.oneOf(operations());
    return {operation.name, (this->*operation.run)(), operation.isSure};
}

// A row, an operation, or two of them in one change.
RandomEdits::Edit RandomEdits::any()
{
    Edit edit = random_.oneIn(2) ? anyRow() : anyOperation();
    if (edit.change && random_.oneIn(8)) {
        Edit second = anyRow();
        edit.name += " + " + second.name;
        edit.isSure = false;
        edit.change = joined(*std::move(edit.change), *std::move(second.change));
    }
    return edit;
}

} // namespace doorloom
