#include "ui/sheetdesk.h"
#include "ui/sheetjobs.h"

#include "catalogue/stockcables.h"

#include <QAccessible>
#include <QPushButton>
#include <QVBoxLayout>

#include <gtest/gtest.h>

namespace doorloom {
namespace {

// Keys until the sheet says this of what has the focus.
void walkUntil(SheetDesk& desk, Qt::Key key, const std::string& words)
{
    std::string said;
    const auto listening = QObject::connect(&desk.view, &SheetView::hovered, &desk.view,
                                            [&](const Message& message) { said = inWords(message); });
    for (int i = 0; i < 60 && said.rfind(words, 0) != 0; ++i)
        desk.key(key);
    QObject::disconnect(listening);
    EXPECT_EQ(said.substr(0, words.size()), words);
}

TEST(SheetKeys, ATerminalIsLandedOnAnotherByTheKeyboardAlone)
{
    SheetDesk desk(cabinetAndFrame());

    walkUntil(desk, Qt::Key_Tab, "PS1: ");
    walkUntil(desk, Qt::Key_Down, "PS1:−: ");
    desk.key(Qt::Key_Return);
    walkUntil(desk, Qt::Key_Tab, "LM1: ");
    walkUntil(desk, Qt::Key_Down, "LM1:−: ");
    desk.key(Qt::Key_Return);

    EXPECT_EQ(allEnds(desk.job()), Strings{"PS1:− LM1:−"});
    EXPECT_TRUE(desk.refusals.empty());
}

TEST(SheetKeys, ACableIsPulledAndUsedUpByTheKeyboardAlone)
{
    SheetDesk desk(cabinetAndFrame());
    desk.view.pull(*stockCableNamed("18/2"));

    walkUntil(desk, Qt::Key_Tab, "LM1: ");
    desk.key(Qt::Key_Return);
    walkUntil(desk, Qt::Key_Tab, "ES1: ");
    desk.key(Qt::Key_Return);
    ASSERT_EQ(desk.job().cables.size(), 1u);
    walkUntil(desk, Qt::Key_Down, "ES1:1: ");
    desk.key(Qt::Key_Return);
    walkUntil(desk, Qt::Key_Down, "ES1:2: ");
    desk.key(Qt::Key_Return);

    EXPECT_EQ(allEnds(desk.job()), (Strings{"– ES1:1", "– ES1:2"}));
    EXPECT_TRUE(desk.refusals.empty());
}

TEST(SheetKeys, TabVisitsEveryDeviceOnceAndThenLeavesTheSheet)
{
    QWidget window;
    auto* layout = new QVBoxLayout(&window); // of the window
    SheetDesk desk(cabinetAndFrame());
    auto* before = new QPushButton("before", &window); // of the window
    auto* after = new QPushButton("after", &window);   // of the window
    layout->addWidget(before);
    layout->addWidget(&desk.view);
    layout->addWidget(after);
    QWidget::setTabOrder(before, &desk.view);
    QWidget::setTabOrder(&desk.view, after);
    window.show();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    before->setFocus();

    std::vector<std::string> said;
    QObject::connect(&desk.view, &SheetView::hovered, &desk.view,
                     [&](const Message& message) { said.push_back(inWords(message).substr(0, 3)); });
    for (int i = 0; i < 20 && QApplication::focusWidget() != after; ++i)
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);

    EXPECT_EQ(QApplication::focusWidget(), after);
    EXPECT_EQ(said.size(), desk.job().devices.size());
    std::sort(said.begin(), said.end());
    EXPECT_EQ(std::unique(said.begin(), said.end()), said.end());
    QTest::keyClick(after, Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_EQ(QApplication::focusWidget(), &desk.view);
    desk.view.setParent(nullptr);
}

TEST(SheetKeys, ArrowsWalkWhileTheKeyboardHasTheFocusAndControlNudges)
{
    SheetDesk desk(cabinetAndFrame());
    walkUntil(desk, Qt::Key_Tab, "PS1: ");
    const QRect before = desk.view.rectOf(desk.device("PS1").number);

    walkUntil(desk, Qt::Key_Right, "ES1: ");
    walkUntil(desk, Qt::Key_Left, "PS1: ");
    EXPECT_EQ(desk.view.rectOf(desk.device("PS1").number), before);
    EXPECT_EQ(desk.selection.rows(), std::vector{desk.device("PS1").number});
    desk.key(Qt::Key_Down, Qt::ControlModifier);
    EXPECT_GT(desk.view.rectOf(desk.device("PS1").number).top(), before.top());
}

TEST(SheetKeys, PlacesSplicesAndNotesWithoutAPointer)
{
    SheetDesk desk;
    desk.view.place(catalogueKind("dc-supply-24"), {});

    desk.key(Qt::Key_Return);
    desk.view.useTool(SheetView::Tool::Splice);
    desk.key(Qt::Key_Tab);
    desk.key(Qt::Key_Return);

    EXPECT_EQ(desk.job().devices.size(), 1u);
    EXPECT_EQ(desk.job().splices.size(), 1u);
}

TEST(SheetKeys, EnterOnADeviceAsksForItsDetails)
{
    SheetDesk desk(cabinetAndFrame());
    std::vector<std::uint32_t> asked;
    QObject::connect(&desk.view, &SheetView::activated, &desk.view,
                     [&](std::uint32_t row) { asked.push_back(row); });

    walkUntil(desk, Qt::Key_Tab, "LM1: ");
    desk.key(Qt::Key_Return);
    QTest::mouseDClick(&desk.view, Qt::LeftButton, {}, desk.head("ES1"));

    EXPECT_EQ(asked, (std::vector{desk.device("LM1").number, desk.device("ES1").number}));
}

// ---- What a screen reader finds

std::string nameOf(QAccessibleInterface* found)
{
    return found->text(QAccessible::Name).toStdString();
}

TEST(SheetKeys, AScreenReaderFindsDevicesAndTerminalsWithNamesAndPlaces)
{
    SheetDesk desk(cabinetAndFrame());
    desk.drag(desk.terminal("PS1:+"), desk.terminal("LM1:+"));
    QAccessibleInterface* sheet = QAccessible::queryAccessibleInterface(&desk.view);
    ASSERT_TRUE(sheet);
    ASSERT_EQ(sheet->childCount(), 4);

    int terminals = 0;
    for (int i = 0; i < sheet->childCount(); ++i) {
        QAccessibleInterface* device = sheet->child(i);
        ASSERT_TRUE(device && device->isValid());
        EXPECT_EQ(device->parent(), sheet);
        EXPECT_EQ(sheet->indexOfChild(device), i);
        EXPECT_FALSE(nameOf(device).empty());
        EXPECT_EQ(sheet->childAt(device->rect().left() + 4, device->rect().top() + 4), device);
        for (int k = 0; k < device->childCount(); ++k, ++terminals) {
            QAccessibleInterface* terminal = device->child(k);
            ASSERT_TRUE(terminal && terminal->isValid());
            EXPECT_EQ(terminal->parent(), device);
            EXPECT_EQ(device->indexOfChild(terminal), k);
            EXPECT_EQ(nameOf(terminal).rfind("terminal ", 0), 0u) << nameOf(terminal);
            EXPECT_EQ(device->childAt(terminal->rect().center().x(), terminal->rect().center().y()),
                      terminal);
            EXPECT_TRUE(device->rect().adjusted(-2, -2, 2, 2).contains(terminal->rect())) << nameOf(terminal);
        }
    }
    EXPECT_EQ(terminals, 4 + 17 + 2 + 2);
    QAccessibleInterface* supply = sheet->child(0);
    EXPECT_EQ(nameOf(supply), "PS1: DC supply 24 V, 2 A, with battery, at CAB1");
    EXPECT_EQ(nameOf(supply->child(0)).substr(0, 43), "terminal +: plus of the 24 V output. Landed");
    EXPECT_EQ(nameOf(supply->child(1)),
              "terminal −: minus of the 24 V output, not joined to earth. Nothing is landed here.");
}

TEST(SheetKeys, AScreenReaderCanLandAndFollowTheFocus)
{
    SheetDesk desk(cabinetAndFrame());
    QAccessibleInterface* sheet = QAccessible::queryAccessibleInterface(&desk.view);
    QAccessibleInterface* supply = sheet->child(0);
    QAccessibleInterface* plus = supply->child(0);

    plus->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(sheet->focusChild(), plus);
    EXPECT_TRUE(plus->state().focused);
    supply->child(2)->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(allEnds(desk.job()), Strings{"PS1:+ PS1:B+"});

    Job empty;
    desk.open.begin(empty);
    EXPECT_FALSE(plus->isValid());
    EXPECT_FALSE(supply->isValid());
    EXPECT_EQ(sheet->childCount(), 0);
    EXPECT_EQ(sheet->focusChild(), nullptr);
}

} // namespace
} // namespace doorloom
