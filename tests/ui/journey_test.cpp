#include "ui/actioncount.h"
#include "ui/testwindow.h"

#include "edit/drawing.h"
#include "file/jobfile.h"
#include "judge/findingtext.h"
#include "openjob/shown.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTreeWidget>

#include <fstream>
#include <iostream>
#include <regex>
#include <set>
#include <sstream>

// One door from an empty job to a clean check, as it is drawn at the desk: a staff restroom's door that is
// normally locked, with a fail-secure strike on a wet output, a door switch and three actuators.
namespace doorloom {
namespace {

struct Piece {
    const char *kind, *place, *words;
};
constexpr Piece pieces[] = {
    {"dc-supply-24", "CAB", "cabinet above ceiling"},
    {"relay-module-negative", "CAB", nullptr},
    {"terminal-strip-8", "CAB", nullptr},
    {"strike-fail-secure", "STK", "strike side of frame"},
    {"door-switch", "HEAD", "header of frame"},
    {"wave-actuator", "OUT", "outside wall"},
    {"push-plate", "INS", "inside wall"},
    {"push-to-lock", "INS", nullptr},
};
struct Pull {
    const char *type, *from, *to;
    int cores;
};
constexpr Pull pulls[] = {{"18/2", "CAB", "STK", 2},
                          {"22/2", "CAB", "HEAD", 2},
                          {"22/4", "CAB", "OUT", 4},
                          {"22/2", "CAB", "INS", 2},
                          {"22/4", "CAB", "INS", 4}};
struct Joining {
    const char *device, *terminal, *otherDevice, *otherTerminal;
};
// Wires of the cabinet first, then the cores of each cable.
constexpr int wiresInCabinet = 3;
constexpr Joining joinings[] = {
    {"PS1", "+", "LM1", "+"},     {"PS1", "-", "LM1", "-"},     {"LM1", "COM", "TS1", "1"},
    {"LM1", "K1.C", "ES1", "1"},  {"LM1", "K1.NO", "ES1", "2"}, {"LM1", "IN4", "DPS1", "B"},
    {"TS1", "2", "DPS1", "A"},    {"PS1", "+", "WO1", "+"},     {"PS1", "-", "WO1", "-"},
    {"TS1", "3", "WO1", "C"},     {"LM1", "IN1", "WO1", "NO"},  {"TS1", "4", "PB1", "C"},
    {"LM1", "IN2", "PB1", "NO"},  {"TS1", "5", "PB2", "C"},     {"LM1", "IN3", "PB2", "NO"},
    {"LM1", "K3.C", "PB2", "L+"}, {"LM1", "K3.NO", "PB2", "L-"}};

double mostActions(const Job& job)
{
    std::size_t landed = 0;
    for (const Conductor& each : job.conductors)
        landed += each.from.state == EndState::Landed && each.to.state == EndState::Landed;
    return 2.6 * static_cast<double>(landed) + 12;
}

// How far a spot of the screen is on the sheet hangs on the screen: compared is what was drawn, not where.
std::string withoutSpots(const std::string& job)
{
    return std::regex_replace(job, std::regex(R"("at":\[-?\d+,-?\d+\])"), R"("at":[])");
}

// Out: "expected" is written anew when UPDATE_GOLDEN is set, and the test fails all the same.
void expectFile(const QString& saved, const char* golden)
{
    const auto read = [](const std::string& path) {
        std::stringstream bytes;
        bytes << std::ifstream(path).rdbuf();
        return bytes.str();
    };
    const std::string wanted = std::string(SOURCE_FOLDER "/tests/ui/golden/") + golden;
    const std::string bytes = withoutSpots(read(saved.toStdString()));
    if (std::getenv("UPDATE_GOLDEN")) {
        std::ofstream(wanted) << bytes;
        FAIL() << "written anew: " << wanted;
    }
    EXPECT_EQ(bytes, read(wanted)) << golden;
}

std::set<std::string> placesWith(const Job& job)
{
    std::set<std::string> places;
    for (const Device& device : job.devices)
        places.insert(job.places.find(device.place)->tag + ": " + job.places.find(device.place)->words);
    return places;
}

void expectClean(TestWindow& desk, const CountedUser& user, const char* way)
{
    EXPECT_EQ(placesWith(desk.job()),
              (std::set<std::string>{"CAB: cabinet above ceiling", "HEAD: header of frame",
                                     "INS: inside wall", "OUT: outside wall", "STK: strike side of frame"}));
    EXPECT_EQ(desk.job().places.size(), 5u);
    EXPECT_EQ(desk.job().conductors.size(), std::size(joinings));
    ASSERT_TRUE(desk.isJudged());
    for (const Finding& finding : desk.window().open().judged()->check.findings)
        ADD_FAILURE() << ruleOf(finding) << " " << atText(desk.job(), finding) << ": "
                      << inWords(finding.why);
    EXPECT_TRUE(verifyJob(desk.job()).empty());
    std::cout << "actions " << way << ": " << user.actions() << " of at most " << mostActions(desk.job())
              << "\n";
    EXPECT_LE(user.actions(), mostActions(desk.job()));
    EXPECT_EQ(desk.window().open().saveAs((desk.folder() + "/door.doorjob").toStdString()), std::nullopt);
}

TEST(Journey, DrawsADoorFromTheKeyboardAlone)
{
    TestWindow desk;
    CountedUser user;
    user.presses(desk.window(), Qt::Key_L,
                 Qt::ControlModifier); // to the typed line, which keeps the keyboard
    auto& line = desk.the<QLineEdit>("typedLine");
    const auto types = [&](const QString& words) {
        user.types(line, words);
        ASSERT_TRUE(line.text().isEmpty())
            << qPrintable(words) << ": " << qPrintable(desk.the<QLabel>("typedAnswer").text());
    };
    for (const Piece& piece : pieces)
        types(QString("place %1 %2").arg(piece.kind, piece.place) +
              (piece.words ? QString(" \"%1\"").arg(piece.words) : QString()));
    for (const Pull& pull : pulls)
        types(QString("pull %1 %2 %3").arg(pull.type, pull.from, pull.to));
    for (const Joining& each : joinings)
        types(QString("%1 %2 %3 %4").arg(each.device, each.terminal, each.otherDevice, each.otherTerminal));
    types("set lm1 k1 wet");
    types("set lm1 k3 wet");
    expectClean(desk, user, "by keyboard");
    expectFile(desk.folder() + "/door.doorjob", "journey-keyboard.doorjob");
}

// Where a device's terminal, or its head, is on the sheet.
QPoint spotOf(TestWindow& desk, const char* tag, const char* printed = nullptr)
{
    const Device* device = deviceTagged(desk.job(), tag);
    EXPECT_NE(device, nullptr) << tag;
    if (!printed)
        return desk.window().sheet().rectOf(device->id.number).topLeft() + QPoint(12, 12);
    const std::string name = std::string(printed) == "-"           ? "−"
                             : std::string(printed).ends_with("-") ? "L−"
                                                                   : printed;
    const Terminal* terminal = findPrinted(*kindOf(desk.job(), *device), name);
    EXPECT_NE(terminal, nullptr) << tag << " " << printed;
    return desk.window().sheet().rectOf(device->id.number, terminal->key).center();
}

QString titleOf(TestWindow& desk, std::string_view name)
{
    for (const Kind& kind : desk.window().surroundings().kinds)
        if (kind.name == name)
            return shown(kind.title);
    ADD_FAILURE() << "no kind " << name;
    return {};
}

void clickOnShelf(TestWindow& desk, CountedUser& user, const QString& words)
{
    auto& list = desk.the<QTreeWidget>("shelfList");
    const QList<QTreeWidgetItem*> found = list.findItems(words, Qt::MatchStartsWith | Qt::MatchRecursive);
    ASSERT_FALSE(found.isEmpty()) << qPrintable(words);
    list.scrollToItem(found.front(), QAbstractItemView::PositionAtCenter); // as far as people scroll, not to the edge
    user.clicks(*list.viewport(), list.visualItemRect(found.front()).center());
}

TEST(Journey, DrawsADoorByMouse)
{
    TestWindow desk;
    desk.window().resize(2560, 1440);
    QCoreApplication::processEvents();
    CountedUser user;
    SheetView& sheet = desk.window().sheet();
    auto& place = desk.the<QComboBox>("shelfPlace");
    QPoint spot(60, 60);
    for (const Piece& piece : pieces) {
        if (piece.words) {
            user.clicks(*place.lineEdit());
            user.types(*place.lineEdit(), QString("%1 %2").arg(piece.place, piece.words));
        }
        clickOnShelf(desk, user, titleOf(desk, piece.kind));
        user.clicks(sheet, spot);
        spot = spot.x() < sheet.width() - 700 ? spot + QPoint(340, 0) : QPoint(60, sheet.height() / 2);
    }
    ASSERT_EQ(desk.job().devices.size(), std::size(pieces));
    const std::map<std::string, const char*> tagAt = {
        {"CAB", "LM1"}, {"STK", "ES1"}, {"HEAD", "DPS1"}, {"OUT", "WO1"}, {"INS", "PB1"}};
    const auto lands = [&](const Joining& each) {
        const std::size_t before = desk.window().open().generation();
        user.drags(sheet, spotOf(desk, each.device, each.terminal),
                   spotOf(desk, each.otherDevice, each.otherTerminal));
        EXPECT_EQ(desk.window().open().generation(), before + 1)
            << each.device << " " << each.terminal << ": "
            << qPrintable(desk.the<QLabel>("noticeWords").text());
    };
    user.clicks(sheet, spotOf(desk, "LM1"));
    for (const char* button : {"all K1 wet", "all K3 wet"}) {
        QCoreApplication::processEvents(); // the form is made anew after each change
        auto& both = desk.the<QPushButton>(button);
        desk.the<QScrollArea>("detailsScroll").ensureWidgetVisible(&both);
        user.clicks(both);
    }
    const Joining* next = std::begin(joinings);
    for (int wire = 0; wire < wiresInCabinet; ++wire)
        lands(*next++);
    for (const Pull& pull : pulls) {
        clickOnShelf(desk, user, QString("%1 ·").arg(pull.type));
        user.drags(sheet, spotOf(desk, tagAt.at(pull.from)), spotOf(desk, tagAt.at(pull.to)));
        for (int core = 0; core < pull.cores; ++core)
            lands(*next++);
    }
    ASSERT_EQ(next, std::end(joinings));
    expectClean(desk, user, "by mouse");
    expectFile(desk.folder() + "/door.doorjob", "journey-mouse.doorjob");
}

} // namespace
} // namespace doorloom
