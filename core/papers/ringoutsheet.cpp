#include "papers/ringoutsheet.h"

#include "papers/naturalorder.h"
#include "papers/ohmsreport.h"
#include "papers/voltsreport.h"

#include <algorithm>

namespace doorloom {

constinit const Text ringOutTitle = {.en = "Ring-out", .es = "Prueba de continuidad"};

namespace {

constexpr Text dead = {.en = "Mains off and locked out, batteries unplugged, proved dead. No insulation tester on electronics. Computed, not measured: ±20 %, and what the "
                             "leads have.",
                       .es = "Red cortada y bloqueada, baterías desconectadas, comprobado sin tensión. Ningún medidor de aislamiento en electrónica. Calculado, no medido: "
                             "±20 %, más las puntas."};
constexpr Text howTo = {.en = "Lift the conductors named, hold each terminal's together, read, and put them back before the next line. OVER LIMIT: more than the meter shows.",
                        .es = "Levante los hilos nombrados, mantenga juntos los de cada borne, lea y vuelva a conectarlos antes de la línea siguiente. FUERA DE ESCALA: más de lo "
                              "que muestra el medidor."};
constexpr Text nothingToRing = {.en = "No load or contact has both its conductors.", .es = "Ninguna carga o contacto tiene sus dos hilos."};
constexpr Text thrownWords = {.en = "{what}: {thrown}", .es = "{what}: {thrown}"};
constexpr Text atRestWords = {.en = "at rest", .es = "en reposo"};
constexpr Text oneWay = {.en = "{ohms}; leads exchanged: {other}", .es = "{ohms}; puntas cambiadas: {other}"};

const std::vector<Text> heads = {{.en = "What", .es = "Qué"},           {.en = "Lift at", .es = "Levante en"},    {.en = "Red lead on", .es = "Punta roja en"},
                                 {.en = "Black lead on", .es = "Punta negra en"}, {.en = "With", .es = "Con"},    {.en = "Reads", .es = "Lee"},
                                 {.en = "Read", .es = "Leído"},         {.en = "Initials", .es = "Iniciales"}};

class RingWork {
public:
    RingWork(const Job& job, Language language) : job_(job), language_(language), net_(job) {}

    PaperTable tableOf(PlaceId place) const
    {
        PaperTable table{placeInWords(job_, place, language_), {}, headsIn(heads, language_), {}, {2, 3, 5}};
        std::vector<const Device*> devices;
        for (const Device& device : job_.devices)
            if (device.place == place)
                devices.push_back(&device);
        std::stable_sort(devices.begin(), devices.end(), [](const Device* a, const Device* b) { return naturallyLess(a->tag, b->tag); });
        for (const Device* device : devices)
            if (const Kind* kind = kindOf(job_, *device))
                for (const Part& part : kind->parts)
                    addPart(table, *device, part);
        return table;
    }

private:
    struct Throwing {
        std::vector<std::pair<MovedIndex, ThrowIndex>> throws;
        std::string words;
    };

    // The other end of the one conductor that is on a terminal; nothing where there are more, or it is landed at one end alone.
    std::optional<Landing> farOf(const Landing& landing) const
    {
        std::optional<Landing> far;
        for (const Conductor* conductor : conductorsOn(job_, landing.device)) {
            const Landing *from = landingOf(conductor->from), *to = landingOf(conductor->to);
            if (!from || !to || (*from == landing) == (*to == landing))
                continue;
            if (far)
                return std::nullopt;
            far = *from == landing ? *to : *from;
        }
        return far;
    }

    void addPart(PaperTable& table, const Device& device, const Part& part) const
    {
        if (const auto* load = std::get_if<LoadPart>(&part.body); load && load->use != LoadUse::Electronics)
            addPair(table, device, part, load->a, load->b, {{}, std::string(inWords(atRestWords, language_))});
        else if (const auto* contact = std::get_if<ContactPart>(&part.body); contact && !contact->solidState)
            for (const Throwing& throwing : throwsOf(device, *contact))
                addPair(table, device, part, contact->a, contact->b, throwing);
    }

    // Of what a hand, a key or a leaf moves: every throw; of what senses by electronics, which are dead, the one without power.
    std::vector<Throwing> throwsOf(const Device& device, const ContactPart& contact) const
    {
        const auto moved = movedBy(device, contact.role);
        if (!moved)
            return {};
        const NetOperator& row = net_.moved(*moved);
        const bool isDead = needsPower(*kindOf(job_, device));
        std::vector<Throwing> all;
        for (ThrowIndex thrown = 0; thrown < row.throws.size(); ++thrown)
            if (!isDead || thrown == net_.circuit().operators[*moved].unpowered)
                all.push_back({{{*moved, thrown}}, inWords(Message{thrownWords, {{"what", nameOf(job_, row.id)}, {"thrown", std::vector<Message>{verbatim(row.throws[thrown].words)}}}}, language_)});
        return all;
    }

    static bool needsPower(const Kind& kind)
    {
        return std::any_of(kind.parts.begin(), kind.parts.end(), [](const Part& part) {
            const auto* load = std::get_if<LoadPart>(&part.body);
            return load && load->use == LoadUse::Electronics;
        });
    }

    std::optional<MovedIndex> movedBy(const Device& device, const Key& role) const
    {
        for (const Binding& binding : device.bindings)
            if (binding.role == role)
                if (const Operator* row = job_.operators.find(binding.moved); row && !isDriven(*row))
                    return net_.indexOf(row->id);
        return std::nullopt;
    }
    // A coil's, module's or supply's own: nobody's hand throws it with the power off.
    bool isDriven(const Operator& row) const
    {
        const auto index = net_.indexOf(row.id);
        return !index || row.nature == OperatorNature::Mains || row.nature == OperatorNature::Battery ||
               std::any_of(net_.circuit().drives.begin(), net_.circuit().drives.end(), [&](const Drive& drive) { return drive.moved == *index; });
    }

    void addPair(PaperTable& table, const Device& device, const Part& part, const Key& a, const Key& b, const Throwing& throwing) const
    {
        Origin origin;
        origin.device = device.id;
        origin.part = part.key;
        const auto sides = sidesOf(job_, origin, a, b);
        const auto first = sides ? farOf(sides->first) : std::nullopt, second = sides ? farOf(sides->second) : std::nullopt;
        if (!first || !second || *first == *second)
            return;
        const Probes probes{*first, *second, {*first, *second}};
        const OhmsReport report = ohmsReport(job_, net_, throwing.throws, probes);
        if (report.read.redOnFirst.what == Reads::NoUsefulOhms && report.read.redOnSecond.what == Reads::NoUsefulOhms)
            return;
        std::vector<Landing> lifted = probes.lifted;
        lifted.insert(lifted.end(), report.read.lift.begin(), report.read.lift.end());
        table.rows.push_back({nameOf(job_, sides->first) + " – " + nameOf(job_, sides->second), listed(job_, lifted), nameOf(job_, *first), nameOf(job_, *second), throwing.words,
                              readWords(report.onceLifted ? *report.onceLifted : report.read), toFillIn, toFillIn});
    }

    std::string readWords(const RingOut& read) const
    {
        const std::string one = ohmsWords(read.redOnFirst, language_), other = ohmsWords(read.redOnSecond, language_);
        return one == other ? one : inWords(Message{oneWay, {{"ohms", one}, {"other", other}}}, language_);
    }

    const Job& job_;
    Language language_;
    const Netlist net_;
};

} // namespace

TablePaper ringOutTables(const Job& job, std::string digest, Language language)
{
    TablePaper paper{ringOutTitle, titleBlockOf(job, std::move(digest)), {dead, howTo}, {}};
    const RingWork work(job, language);
    std::vector<PlaceId> places;
    for (const Place& place : job.places)
        places.push_back(place.id);
    places.push_back({});
    for (const PlaceId place : places)
        if (PaperTable table = work.tableOf(place); !table.rows.empty())
            paper.tables.push_back(std::move(table));
    if (paper.tables.empty())
        paper.tables.push_back({std::string(inWords(ringOutTitle, language)), std::string(inWords(nothingToRing, language)), headsIn(heads, language), {}, {}});
    return paper;
}

} // namespace doorloom
