#include "bench/windowedits.h"

#include "catalogue/catalogue.h"
#include "edit/details.h"
#include "edit/drawing.h"
#include "edit/operations.h"
#include "edit/undowords.h"

#include <QApplication>
#include <QTest>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace doorloom::bench {
namespace {

[[noreturn]] void giveUp(const std::string& words)
{
    std::fprintf(stderr, "window_bench: %s\n", words.c_str());
    std::exit(2);
}

template <class Row> std::vector<Id<Row>> numbersOf(const Table<Row>& table)
{
    std::vector<Id<Row>> numbers;
    for (const Row& row : table)
        numbers.push_back(row.id);
    return numbers;
}

// The first terminal of what its other end is on.
Landing besideEnd(const Job& job, ConductorId conductor)
{
    const Landing other = *landingOf(job.conductors.find(conductor)->to);
    return {other.device, terminalsOf(*kindOf(job, other.device)).front()->key};
}

} // namespace

std::unique_ptr<Window> judgedWindow(const QString& file)
{
    Result<Catalogue> catalogue = readCatalogue(SOURCE_FOLDER "/resources/catalogue");
    if (!catalogue.ok())
        giveUp(inWords(catalogue.problem()));
    auto window = std::make_unique<Window>(Surroundings{
        std::move(catalogue.value().kinds), SOURCE_FOLDER "/resources", SOURCE_FOLDER "/samples"});
    window->resize(1280, 800);
    window->QWidget::show();
    if (!window->openFile(file) || !QTest::qWaitForWindowExposed(window.get()))
        giveUp("the large job is not shown");
    waitUntilJudged(*window);
    return window;
}

void waitUntilJudged(const Window& window)
{
    while (!window.open().judged())
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    QCoreApplication::processEvents();
}

Edits::Edits(Window& window)
    : window_(window), devices_(numbersOf(window.open().job().devices)),
      conductors_(numbersOf(window.open().job().conductors))
{
}

// Far from one another, and each sort meets every kind of device. The spares at the end have no landings.
Device Edits::deviceAt(int number) const
{
    const std::size_t step = static_cast<std::size_t>(number / sorts) * 7919;
    const Job& job = window_.open().job();
    if (number % sorts != 2)
        return *job.devices.find(devices_[step % devices_.size()]);
    for (std::size_t i = step;; ++i) // one that has a jumper
        if (const Device& device = *job.devices.find(devices_[i % devices_.size()]);
            !kindOf(job, device)->options.empty())
            return device;
}

void Edits::choose(int number)
{
    const std::vector<std::uint32_t> rows = {deviceAt(number).id.number};
    window_.sheet().bringIntoView(rows);
    window_.selection().choose(number / sorts % 2 == 0 ? rows : std::vector<std::uint32_t>());
}

const char* Edits::sortOf(int number)
{
    constexpr std::array names = {"unland", "land", "option", "move", "rename"};
    static_assert(names.size() == sorts);
    return names[static_cast<std::size_t>(number % sorts)];
}

Result<Change> Edits::changeAt(int number) const
{
    const Job& job = window_.open().job();
    const Device device = deviceAt(number);
    const std::size_t round = static_cast<std::size_t>(number / sorts);
    const ConductorId conductor =
        conductors_[round * 7919 % (conductors_.size() - 100)]; // but the loose ones
    switch (number % sorts) {
    case 0:
        return setEnd(job, conductor, WhichEnd::From, {EndState::Waiting, {}});
    case 1: // beside its other end: in the same door
        return setEnd(job, conductor, WhichEnd::From, {EndState::Landed, besideEnd(job, conductor)});
    case 2: {
        const Option& option = kindOf(job, device)->options.front();
        const Key& first = option.values.front().key;
        const bool isFirst = chosen(device, option.key, option.jumpers.front().key) == first;
        return setOption(job, device.id, option.key, isFirst ? option.values.back().key : first);
    }
    case 3:
        return moveRows(job, {device.id.number}, {round % 2 == 0 ? 50 : -50, 50});
    default:
        return renameDevice(job, device.id, device.tag + "x");
    }
}

void Edits::make(int number)
{
    const Result<Change> change = changeAt(number);
    if (!change.ok())
        giveUp(inWords(change.problem()));
    const Message words = undoWords(window_.open().job(), doing::alter, {deviceAt(number).id.number});
    if (const auto problem = window_.open().make(words, change.value()))
        giveUp(inWords(*problem));
}

} // namespace doorloom::bench
