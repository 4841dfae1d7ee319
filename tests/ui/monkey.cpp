#include "ui/monkey.h"

#include "catalogue/stockcables.h"
#include "core/jobs.h"
#include "edit/lineforms.h"
#include "edit/removeany.h"
#include "edit/typedline.h"
#include "window/actions.h"

#include <QAbstractButton>
#include <QClipboard>
#include <QComboBox>
#include <QFileDialog>
#include <QMenu>
#include <QTimer>
#include <QWheelEvent>
#include <QWindow>

#include <cstdio>
#include <fstream>

namespace doorloom {
namespace {

constexpr std::size_t mostDevices = 40;
constexpr int longestPopup = 50; // turns of the event loop: some menus wait in a loop of their own

// The mouse is meant to leave the window, and a test without a screen has no more to say.
void tellWhatIsNews(QtMsgType, const QMessageLogContext&, const QString& words)
{
    if (!words.contains("occurs outside target") && !words.startsWith("This plugin does not support"))
        std::fprintf(stderr, "%s\n", qUtf8Printable(words));
}

} // namespace

Monkey::Monkey(TestWindow& desk, Random& random) : desk_(desk), random_(random), opened_(desk.job())
{
    connect(&window().open(), &OpenJob::jobChanged, this, [this](const Touched& touched) {
        changed_ = true;
        if (touched.everything)
            opened_ = desk_.job();
    });
    qInstallMessageHandler(tellWhatIsNews);
    watch();
}

Monkey::~Monkey()
{
    qInstallMessageHandler(nullptr);
}

void Monkey::act()
{
    using Event = void (Monkey::*)();
    struct Row {
        std::size_t weight;
        Event event;
    };
    static constexpr Row rows[] = {
        {40, &Monkey::press},      {40, &Monkey::release},      {60, &Monkey::move},
        {25, &Monkey::drag},       {6, &Monkey::doubleClick},   {12, &Monkey::wheel},
        {30, &Monkey::stroke},     {14, &Monkey::shortcut},     {12, &Monkey::typeALine},
        {8, &Monkey::typeLetters}, {5, &Monkey::trigger},       {8, &Monkey::chooseRows},
        {8, &Monkey::placeOrPull}, {2, &Monkey::soilClipboard}, {1, &Monkey::soilDisk},
        {1, &Monkey::resize},
    };
    std::size_t all = 0;
    for (const Row& row : rows)
        all += row.weight;
    std::size_t chosen = random_.below(all);
    const Row* row = rows;
    for (; chosen >= row->weight; ++row)
        chosen -= row->weight;
    ++events_;
    turnsOfPopup_ = 0;
    (this->*row->event)();
    QApplication::processEvents();
    if (!window().isVisible()) // it was quit
        window().QWidget::show();
    if (!QApplication::activePopupWidget())
        QApplication::setActiveWindow(&window());
    if (desk_.job().devices.size() > mostDevices)
        thinOut();
}

void Monkey::settle()
{
    for (const Qt::MouseButton each : {Qt::LeftButton, Qt::MiddleButton, Qt::RightButton})
        QTest::mouseRelease(screen(), each, {}, {5, 5});
    held_.clear();
    while (QWidget* popup = QApplication::activePopupWidget())
        popup->close();
    QApplication::setActiveWindow(&window());
    window().sheet().setFocus();
    for (int times = 0; times < 4; ++times)
        key(Qt::Key_Escape);
    EXPECT_EQ(QWidget::mouseGrabber(), nullptr);
    EXPECT_EQ(QWidget::keyboardGrabber(), nullptr);
    EXPECT_EQ(window().sheet().tool(), SheetView::Tool::Choose);
    const std::uint64_t before = window().open().generation();
    for (int times = 0; times < 4; ++times)
        QTest::mouseMove(screen(), window().sheet().mapTo(&window(), onTheSheet()));
    EXPECT_EQ(window().open().generation(), before) << "the pointer alone changes nothing";
}

void Monkey::undoAll()
{
    QUndoStack& history = window().open().history();
    const Job now = desk_.job();
    const int done = history.index();
    history.setIndex(0);
    EXPECT_EQ(desk_.job(), opened_);
    history.setIndex(done);
    EXPECT_EQ(desk_.job(), now);
}

// ---- The pointer

Qt::KeyboardModifiers Monkey::modifiers()
{
    static constexpr Qt::KeyboardModifier any[] = {Qt::NoModifier,      Qt::NoModifier,    Qt::NoModifier,
                                                   Qt::ControlModifier, Qt::ShiftModifier, Qt::AltModifier};
    return any[random_.below(std::size(any))];
}

Qt::MouseButton Monkey::button()
{
    static constexpr Qt::MouseButton any[] = {Qt::LeftButton, Qt::LeftButton,   Qt::LeftButton,
                                              Qt::LeftButton, Qt::MiddleButton, Qt::RightButton};
    return any[random_.below(std::size(any))];
}

QPoint Monkey::onTheSheet()
{
    SheetView& sheet = window().sheet();
    std::vector<QPoint> points;
    for (const Device& device : desk_.job().devices) {
        points.push_back(sheet.rectOf(device.id.number).topLeft() + QPoint(3, 3));
        for (const Terminal* terminal : terminalsOf(*kindOf(desk_.job(), device)))
            points.push_back(sheet.rectOf(device.id.number, terminal->key).center());
    }
    for (const Conductor& conductor : desk_.job().conductors)
        points.push_back(sheet.rectOf(conductor.id.number).topLeft() +
                         QPoint(random_.between(0, 40), random_.between(0, 40)));
    std::erase_if(points, [&](QPoint each) { return !sheet.rect().contains(each); });
    if (points.empty() && random_.oneIn(4)) // it has scrolled everything away
        sheet.fit();
    return points.empty() ? sheet.rect().center() : random_.oneOf(points);
}

QPoint Monkey::onAControl()
{
    std::vector<QWidget*> visible;
    for (QWidget* each : window().findChildren<QWidget*>())
        if (each->isVisible() && each->window() == &window() && each != &window().sheet())
            visible.push_back(each);
    QWidget* chosen = random_.oneOf(visible);
    return chosen->mapTo(&window(), QPoint(random_.between(0, chosen->width()), chosen->height() / 2));
}

QPoint Monkey::anywhere()
{
    switch (random_.below(6)) {
    case 0:
        return onAControl();
    case 1:
        return {random_.between(-80, window().width() + 80), random_.between(-80, window().height() + 80)};
    default:
        return window().sheet().mapTo(&window(), onTheSheet());
    }
}

void Monkey::press()
{
    held_.push_back(button());
    QTest::mousePress(screen(), held_.back(), modifiers(), anywhere());
}

// Mostly of what is held down, all of it; now and then of what is not.
void Monkey::release()
{
    if (held_.empty() || random_.oneIn(8))
        held_.push_back(button());
    for (const Qt::MouseButton each : std::exchange(held_, {}))
        QTest::mouseRelease(screen(), each, modifiers(), anywhere());
}

void Monkey::move()
{
    QTest::mouseMove(screen(), anywhere());
}

void Monkey::doubleClick()
{
    QTest::mouseDClick(screen(), button(), modifiers(), anywhere());
}

void Monkey::drag()
{
    if (!held_.empty() && !random_.oneIn(4))
        release();
    const Qt::MouseButton held = button();
    const QPoint from = anywhere(), to = anywhere();
    QTest::mousePress(screen(), held, modifiers(), from);
    for (int step = 1; step <= 3; ++step)
        QTest::mouseMove(screen(), from + (to - from) * step / 3);
    if (random_.oneIn(4))
        key(Qt::Key_Escape); // while it is held
    QTest::mouseRelease(screen(), held, modifiers(), to);
}

void Monkey::wheel()
{
    const QPoint at = anywhere();
    QWidget* below = window().childAt(at);
    if (!below)
        return;
    QWheelEvent event(QPointF(below->mapFrom(&window(), at)), window().mapToGlobal(QPointF(at)), {},
                      {0, random_.between(-480, 480)}, Qt::NoButton, modifiers(), Qt::NoScrollPhase, false);
    QApplication::sendEvent(below, &event);
}

// ---- The keyboard

void Monkey::key(Qt::Key key, Qt::KeyboardModifiers keys)
{
    const bool isLetter = key >= Qt::Key_Space && key <= Qt::Key_AsciiTilde;
    const bool isTyped = isLetter && (keys & (Qt::ControlModifier | Qt::AltModifier)) == Qt::NoModifier;
    QTest::sendKeyEvent(QTest::Click, screen(), key, isTyped ? QString(QChar(key)).toLower() : QString(),
                        keys);
}

void Monkey::letters(const std::string& text)
{
    for (const char letter : text)
        if (letter >= ' ' && letter <= '~') // the test's keyboard has no others
            QTest::keyClick(screen(), letter);
}

void Monkey::stroke()
{
    static constexpr Qt::Key any[] = {
        Qt::Key_Tab,    Qt::Key_Backtab, Qt::Key_Up,     Qt::Key_Down,   Qt::Key_Left,     Qt::Key_Right,
        Qt::Key_Return, Qt::Key_Return,  Qt::Key_Escape, Qt::Key_Space,  Qt::Key_Menu,     Qt::Key_A,
        Qt::Key_Delete, Qt::Key_Home,    Qt::Key_End,    Qt::Key_PageUp, Qt::Key_PageDown, Qt::Key_Backspace};
    if (random_.oneIn(3))
        window().sheet().setFocus();
    key(any[random_.below(std::size(any))], modifiers());
}

void Monkey::shortcut()
{
    const auto actions = allActions();
    const Action& action = actions[random_.below(actions.size())];
    for (const QKeySequence& keys : QKeySequence::listFromString(action.shortcut, QKeySequence::PortableText))
        key(keys[0].key(), keys[0].keyboardModifiers());
}

std::string Monkey::garbage()
{
    static const std::vector<std::string> pieces{"ps1",    "lm1 ", "+",    " - ",   "es1",  "red",
                                                 " k1.c ", "\"",   "wire", "pull ", "22/4", "set ",
                                                 "wet ",   "9999", "-1",   "{"};
    std::string text;
    for (std::size_t left = random_.below(6); left > 0; --left)
        text += random_.oneOf(pieces);
    return text;
}

// A form that is understood, now and then with a piece of it in another's place.
void Monkey::typeALine()
{
    const auto forms = lineForms();
    std::string line(forms[random_.below(forms.size())].example);
    if (random_.oneIn(2))
        line = line.substr(0, random_.below(line.size())) + garbage();
    key(Qt::Key_L, Qt::ControlModifier);
    letters(line);
    static constexpr Qt::Key any[] = {Qt::Key_Return, Qt::Key_Return, Qt::Key_Return,
                                      Qt::Key_Tab,    Qt::Key_Down,   Qt::Key_Escape};
    key(any[random_.below(std::size(any))]);
    key(any[random_.below(std::size(any))]);
}

// Wherever the focus is.
void Monkey::typeLetters()
{
    letters(garbage());
    key(random_.oneIn(2) ? Qt::Key_Return : Qt::Key_Tab);
}

// ---- The rest

void Monkey::trigger()
{
    std::vector<QAction*> actions;
    for (QAction* each : window().findChildren<QAction*>())
        if (each->isEnabled() && !each->menu())
            actions.push_back(each);
    random_.oneOf(actions)->trigger();
}

void Monkey::chooseRows()
{
    std::vector<std::uint32_t> rows;
    forEachTable(desk_.job(), [&](const char*, const auto& table) {
        for (const auto& row : table)
            if (random_.oneIn(12))
                rows.push_back(row.id.number);
    });
    window().selection().choose(rows);
    if (random_.oneIn(4))
        window().jumpTo(rows);
}

void Monkey::placeOrPull()
{
    const std::vector<Kind>& kinds = window().surroundings().kinds;
    if (random_.oneIn(3))
        window().sheet().pull(random_.oneOf(stockCables()));
    else
        window().sheet().place(random_.oneOf(kinds), {});
}

void Monkey::soilClipboard()
{
    QString text = QApplication::clipboard()->text();
    if (random_.oneIn(2))
        text.truncate(random_.between(0, static_cast<int>(text.size())));
    if (random_.oneIn(4))
        text = QString::fromStdString(garbage());
    QApplication::clipboard()->setText(text);
    window().sheet().setFocus();
    key(Qt::Key_V, Qt::ControlModifier);
}

// Somebody else writes the file that is open.
void Monkey::soilDisk()
{
    const QString path = QString::fromStdString(window().open().path());
    if (!path.startsWith(desk_.folder()))
        return;
    if (random_.oneIn(4))
        QFile::remove(path);
    std::ofstream(path.toStdString(), std::ios::app) << (random_.oneIn(2) ? "\n" : garbage());
}

void Monkey::resize()
{
    window().QWidget::resize(random_.between(500, 1600), random_.between(400, 1200));
}

void Monkey::thinOut()
{
    std::vector<std::uint32_t> rows;
    for (const Device& device : desk_.job().devices)
        if (random_.oneIn(2))
            rows.push_back(device.id.number);
    window().make({}, removeAny(desk_.job(), rows));
}

// ---- What waits for an answer

// Is asked at every turn of every event loop, those of dialogs too.
void Monkey::watch()
{
    QTimer::singleShot(0, this, [this] {
        watch();
        if (QWidget* menu = QApplication::activePopupWidget(); menu && ++turnsOfPopup_ > longestPopup)
            return QTest::keyClick(menu, random_.oneIn(2) ? Qt::Key_Return : Qt::Key_Escape);
        QWidget* dialog = QApplication::activeModalWidget();
        if (!dialog || dialog == answered_)
            return;
        const QPointer<QWidget> before = std::exchange(answered_, dialog);
        ++events_;
        if (dialog->inherits("QPrintDialog")) // it would print, or write a file where it pleases
            QTest::keyClick(dialog, Qt::Key_Escape);
        else if (qobject_cast<QFileDialog*>(dialog))
            answerWithFile(*dialog);
        else
            answer(*dialog);
        answered_ = before;
    });
}

void Monkey::answer(QWidget& dialog)
{
    const QPointer<QWidget> still = &dialog;
    for (std::size_t left = random_.below(4); left > 0; --left) {
        QWidget* focus = dialog.focusWidget() ? dialog.focusWidget() : &dialog;
        if (random_.oneIn(2))
            QTest::keyClicks(focus, QString::fromStdString(garbage()));
        else
            QTest::keyClick(focus, random_.oneIn(2) ? Qt::Key_Tab : Qt::Key_Down);
        if (!still)
            return;
    }
    std::vector<QAbstractButton*> buttons;
    for (QAbstractButton* each : dialog.findChildren<QAbstractButton*>())
        if (each->isVisible() && each->isEnabled())
            buttons.push_back(each);
    if (buttons.empty() || random_.oneIn(3))
        QTest::keyClick(&dialog, random_.oneIn(2) ? Qt::Key_Return : Qt::Key_Escape);
    else
        QTest::mouseClick(random_.oneOf(buttons), Qt::LeftButton);
}

void Monkey::answerWithFile(QWidget& dialog)
{
    static const std::vector<QString> names{"/a.doorjob", "/b.doorjob", "/c", "/nowhere/d.doorjob"};
    auto* name = dialog.findChild<QLineEdit*>("fileNameEdit");
    ASSERT_NE(name, nullptr);
    name->setText(desk_.folder() + random_.oneOf(names));
    QTest::keyClick(name, random_.oneIn(3) ? Qt::Key_Escape : Qt::Key_Return);
}

} // namespace doorloom
