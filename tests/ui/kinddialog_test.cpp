#include "catalogue/kindjson.h"
#include "dialogs/kindtree.h"
#include "file/ownshelf.h"
#include "ui/dialogturns.h"
#include "ui/testwindow.h"

#include <QComboBox>
#include <QFile>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTreeWidget>

namespace doorloom {
namespace {

// A user at the form.
class AtForm {
public:
    explicit AtForm(QDialog& dialog) : dialog_(dialog), tree_(childOf<KindTree>(dialog, "kindTree")) {}

    // Clicks the value beside this member, writes another, ends with Return.
    void write(const std::string& path, const QString& value)
    {
        QWidget* editor = begun(path);
        if (auto* line = qobject_cast<QLineEdit*>(editor)) {
            line->selectAll();
            QTest::keyClicks(line, value);
            QTest::keyClick(line, Qt::Key_Return);
        } else if (auto* choose = qobject_cast<QComboBox*>(editor)) {
            choose->setCurrentText(value);
            QTest::keyClick(choose, Qt::Key_Return);
        } else {
            ADD_FAILURE() << path << " can't be written";
        }
        QCoreApplication::processEvents();
    }
    void choose(const std::string& path)
    {
        tree_.goTo(path);
        QCoreApplication::processEvents(); // columns fit what was opened
        QTest::mouseClick(tree_.viewport(), Qt::LeftButton, {},
                          tree_.visualItemRect(tree_.currentItem()).center());
    }
    std::string chosen() const { return tree_.currentItem()->text(0).toStdString(); }
    void press(const char* button)
    {
        QTest::mouseClick(&childOf<QPushButton>(dialog_, button), Qt::LeftButton);
    }
    bool canKeep() const { return childOf<QPushButton>(dialog_, "kindKeep").isEnabled(); }
    std::string value(const std::string& path) const { return tree_.at(path)->text(1).toStdString(); }
    std::string trial() const
    {
        return childOf<QPlainTextEdit>(dialog_, "kindTrial").toPlainText().toStdString();
    }
    std::vector<std::string> problems() const
    {
        const auto& list = childOf<QListWidget>(dialog_, "kindProblems");
        std::vector<std::string> words;
        for (int row = 0; row < list.count(); ++row)
            words.push_back(list.item(row)->text().toStdString());
        return words;
    }

private:
    QWidget* begun(const std::string& path)
    {
        tree_.goTo(path);
        QTest::keyClick(&tree_, Qt::Key_F2);
        for (QWidget* editor :
             tree_.findChildren<QWidget*>("kindCell")) // one that has ended may not be gone yet
            if (editor->isVisible())
                return editor;
        return nullptr;
    }
    QDialog& dialog_;
    KindTree& tree_;
};

DialogTurns::Turn takeTheFirst() // of a list to choose from: an empty kind
{
    return [](QDialog& dialog) { dialog.accept(); };
}

void giveUp(QDialog& dialog)
{
    QTest::keyClick(&dialog, Qt::Key_Escape);
}

// Of a question.
DialogTurns::Turn press(const QString& button)
{
    return [button](QDialog& dialog) {
        for (auto* each : dialog.findChildren<QAbstractButton*>())
            if (each->text().remove('&') == button)
                return QTest::mouseClick(each, Qt::LeftButton);
        ADD_FAILURE() << "no button says so: " << qPrintable(button);
    };
}

// An empty kind of this name and title, kept.
void keepNamed(TestWindow& desk, const QString& name, const QString& title)
{
    DialogTurns turns({takeTheFirst(), [&](QDialog& dialog) {
                           AtForm form(dialog);
                           form.write("name", name);
                           form.write("title.en", title);
                           form.press("kindKeep");
                       }});
    desk.action("editKind").trigger();
    ASSERT_TRUE(turns.allTaken());
}

TEST(KindDialog, MakesAKindTriedLiveAndKeepsItInTheJobAndOnTheShelf)
{
    TestWindow desk;
    const Job before = desk.job();
    DialogTurns turns({takeTheFirst(), [](QDialog& dialog) {
                           AtForm form(dialog);
                           EXPECT_TRUE(form.canKeep()) << "two terminals and nothing else";
                           form.write("name", "sign-lamp");
                           form.write("title.en", "Sign lamp");
                           form.write("family", "lamp");
                           form.choose("parts");
                           form.press("kindAdd");
                           EXPECT_FALSE(form.canKeep());
                           form.write("parts[0].type", "load");
                           form.write("parts[0].key", "light");
                           form.write("parts[0].a", "1");
                           form.write("parts[0].b", "9");
                           form.write("parts[0].use", "lamp");
                           form.choose("parts[0].rated");
                           form.press("kindAdd");
                           EXPECT_EQ(form.chosen(), "volts");
                           form.write("parts[0].rated[0].volts", "24");
                           form.write("parts[0].rated[0].amperes", "0.1");
                           ASSERT_EQ(form.problems().size(), 1u) << testing::PrintToString(form.problems());
                           EXPECT_EQ(form.problems()[0], "parts behind the terminals › 1: load light › other "
                                                         "end: '9' is not there. Use one of: 1, 2.");
                           EXPECT_EQ(form.trial(), "Nothing is tried while the kind contradicts itself.");
                           form.press("kindKeep");
                           EXPECT_TRUE(dialog.isVisible()) << "a kind that contradicts itself is not kept";

                           form.write("parts[0].b", "2");
                           EXPECT_TRUE(form.problems().empty()) << testing::PrintToString(form.problems());
                           EXPECT_NE(form.trial().find("Fed: 24 V DC between 1 and 2."), std::string::npos)
                               << form.trial();
                           EXPECT_NE(form.trial().find("    1: 24.00 V against 2\n"), std::string::npos)
                               << form.trial();
                           form.press("kindKeep");
                       }});
    desk.action("editKind").trigger();
    ASSERT_TRUE(turns.allTaken());

    ASSERT_NE(kindNamed(desk.job(), "sign-lamp"), nullptr);
    const OwnShelf shelf = readOwnShelf((desk.folder() + "/kinds").toStdString());
    ASSERT_EQ(shelf.kinds.size(), 1u);
    EXPECT_EQ(shelf.kinds[0], kindNamed(desk.job(), "sign-lamp")->kind);
    desk.action("toShelf").trigger();
    QTest::keyClicks(&desk.the<QLineEdit>("shelfLetters"), "sign");
    auto& list = desk.the<QTreeWidget>("shelfList");
    ASSERT_EQ(list.topLevelItemCount(), 1);
    EXPECT_EQ(list.topLevelItem(0)->child(0)->text(0), "Sign lamp");
    desk.action("undo").trigger();
    EXPECT_EQ(desk.job(), before);
}

TEST(KindDialog, ChangesTheDevicesOfTheKindThatIsChosen)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    const Device* strike = deviceTagged(desk.job(), "ES1");
    const std::size_t terminals = terminalsOf(*kindOf(desk.job(), *strike)).size();
    desk.window().selection().choose({strike->id.number});
    DialogTurns turns({[&](QDialog& dialog) {
        AtForm form(dialog);
        ASSERT_EQ(form.problems().size(), 1u) << "the name is the program's";
        EXPECT_TRUE(
            form.problems()[0].starts_with("name (lower case, no maker): The program itself has a kind "))
            << form.problems()[0];
        form.write("name", "strike-own");
        form.choose("strips[0].terminals[0].key");
        form.press("kindAddAlike");
        EXPECT_FALSE(form.canKeep()) << "a key twice";
        form.write("strips[0].terminals[1].key", "SH");
        form.write("strips[0].terminals[1].printed", "SH");
        EXPECT_TRUE(form.canKeep()) << testing::PrintToString(form.problems());
        QTest::mouseClick(&childOf<QAbstractButton>(dialog, "kindDevices"), Qt::LeftButton, {}, QPoint(6, 6));
        form.press("kindKeep");
    }});
    desk.action("editKind").trigger();
    ASSERT_TRUE(turns.allTaken());
    const Kind& now = *kindOf(desk.job(), *deviceTagged(desk.job(), "ES1"));
    EXPECT_EQ(now.name, "strike-own");
    EXPECT_EQ(terminalsOf(now).size(), terminals + 1);
    EXPECT_TRUE(verifyJob(desk.job()).empty());
}

TEST(KindDialog, TakesPartsOutAgain)
{
    TestWindow desk;
    desk.window().openSample("restroom-staff.doorjob");
    desk.window().selection().choose({deviceTagged(desk.job(), "PS1")->id.number});
    DialogTurns turns({[&](QDialog& dialog) {
                           AtForm form(dialog);
                           form.write("name", "supply-own");
                           form.choose("parts");
                           form.press("kindAdd");
                           EXPECT_FALSE(form.canKeep());
                           form.press("kindTakeOut");
                           EXPECT_TRUE(form.canKeep()) << testing::PrintToString(form.problems());
                           giveUp(dialog);
                       },
                       press("Let it go")});
    const Job before = desk.job();
    desk.action("editKind").trigger();
    EXPECT_TRUE(turns.allTaken());
    EXPECT_EQ(desk.job(), before) << "given up";
}

TEST(KindDialog, HandsKindsOnAsFilesAndTakesThemIn)
{
    TestWindow desk;
    const QString path = desk.folder() + "/handed on.json";
    {
        DialogTurns turns({takeTheFirst(),
                           [&](QDialog& dialog) {
                               AtForm form(dialog);
                               form.write("name", "handed-on");
                               form.press("kindWrite"); // comes back once the file is named
                               giveUp(dialog);          // nothing is lost by it
                           },
                           DialogTurns::nameFile(path)});
        desk.action("editKind").trigger();
        ASSERT_TRUE(turns.allTaken());
    }
    ASSERT_TRUE(QFile::exists(path));
    EXPECT_EQ(kindNamed(desk.job(), "handed-on"), nullptr);

    DialogTurns turns(
        {DialogTurns::nameFile(path), [](QDialog& dialog) { AtForm(dialog).press("kindKeep"); }});
    desk.action("importKind").trigger();
    ASSERT_TRUE(turns.allTaken());
    EXPECT_NE(kindNamed(desk.job(), "handed-on"), nullptr);
}

TEST(KindDialog, RefusesAFileWhoseKindContradictsItselfAndSaysWhere)
{
    TestWindow desk;
    QFile file(desk.folder() + "/wrong.json");
    ASSERT_TRUE(file.open(QFile::WriteOnly));
    file.write("{\"name\":\"wrong\",\"title\":{\"en\":\"W\"},\"family\":\"part\",\n\"parts\":[{\"type\":"
               "\"link\",\"key\":\"l\",\"a\":\"1\",\"b\":\".x\"}]}");
    file.close();
    DialogTurns turns({DialogTurns::nameFile(file.fileName())});
    desk.action("importKind").trigger();
    EXPECT_TRUE(turns.allTaken());
    EXPECT_NE(desk.notice().find("wrong.json, line 2, parts[0].a: '1' is not there."), std::string::npos)
        << desk.notice();
}

TEST(KindDialog, LetsNothingGoThatWasWrittenUnlessAskedTo)
{
    TestWindow desk;
    DialogTurns turns({takeTheFirst(),
                       [](QDialog& dialog) {
                           AtForm form(dialog);
                           form.write("title.en", "Written for an hour");
                           giveUp(dialog);
                           EXPECT_TRUE(dialog.isVisible());
                           EXPECT_EQ(form.value("title.en"), "Written for an hour");
                           form.write("title.en", "Own kind");
                           giveUp(dialog); // nothing differs any more
                       },
                       press("Back to the form")});
    desk.action("editKind").trigger();
    EXPECT_TRUE(turns.allTaken());
    EXPECT_TRUE(desk.job().kinds.empty());
}

TEST(KindDialog, ReplacesAnotherKindOfTheShelfOnlyWhenAskedTo)
{
    TestWindow desk;
    keepNamed(desk, "twice", "First");
    const std::string own = (desk.folder() + "/kinds").toStdString();
    DialogTurns turns({takeTheFirst(),
                       [&](QDialog& dialog) {
                           AtForm form(dialog);
                           form.write("name", "twice");
                           form.write("title.en", "Second");
                           form.press("kindKeep");
                           EXPECT_TRUE(dialog.isVisible());
                           EXPECT_EQ(readOwnShelf(own).kinds.at(0).title.en, "First");
                           form.press("kindKeep");
                       },
                       press("Back to the form"), press("Replace it")});
    desk.action("editKind").trigger();
    EXPECT_TRUE(turns.allTaken());
    ASSERT_EQ(readOwnShelf(own).kinds.size(), 1u);
    EXPECT_EQ(readOwnShelf(own).kinds[0].title.en, "Second");
}

TEST(KindDialog, PutsAKindIntoTheJobEvenWhereTheShelfCanNotBeWritten)
{
    TestWindow desk;
    QFile inTheWay(desk.folder() + "/kinds"); // a file where the folder should be
    ASSERT_TRUE(inTheWay.open(QFile::WriteOnly));
    inTheWay.write("mine");
    inTheWay.close();
    keepNamed(desk, "kept-anyway", "Kept anyway");
    EXPECT_NE(kindNamed(desk.job(), "kept-anyway"), nullptr);
    EXPECT_NE(desk.notice().find("The folder of your own kinds can't be made"), std::string::npos)
        << desk.notice();
    ASSERT_TRUE(inTheWay.open(QFile::ReadOnly));
    EXPECT_EQ(inTheWay.readAll(), "mine");
}

TEST(KindDialog, LeavesItsKindsToJobsThatAreOpenedWithoutTheShelf)
{
    TestWindow here;
    keepNamed(here, "travels", "Travels");
    here.action("toShelf").trigger();
    QTest::keyClicks(&here.the<QLineEdit>("shelfLetters"), "travels");
    QTest::keyClick(&here.the<QLineEdit>("shelfLetters"), Qt::Key_Return);
    ASSERT_EQ(here.job().devices.size(), 1u);
    const QString file = here.folder() + "/job.doorjob";
    ASSERT_FALSE(here.window().open().saveAs(file.toStdString()));

    TestWindow elsewhere;
    EXPECT_EQ(elsewhere.window().ownKind("travels"), nullptr);
    ASSERT_TRUE(elsewhere.window().openFile(file));
    EXPECT_EQ(elsewhere.job(), here.job());
    EXPECT_EQ(*kindOf(elsewhere.job(), *elsewhere.job().devices.begin()), *here.window().ownKind("travels"));
}

TEST(KindDialog, TellsOfFilesOnTheShelfThatItCanNotRead)
{
    QTemporaryDir own;
    QFile file(own.path() + "/broken.json");
    ASSERT_TRUE(file.open(QFile::WriteOnly));
    file.write("{");
    file.close();
    TestWindow desk(SOURCE_FOLDER "/resources", own.path());
    desk.window().tellUnreadKinds();
    EXPECT_NE(desk.notice().find("broken.json"), std::string::npos) << desk.notice();
}

TEST(KindDialog, ShowsEveryValueOfEveryKindAndGivesItBackUnchanged)
{
    TestWindow desk;
    KindTree tree;
    for (const Kind& kind : desk.window().stock().kinds) {
        const std::string text = kindText(kind);
        tree.fill(parseJson(text, "kind").value());
        const Result<Json> again = parseJson(tree.text(), "form");
        ASSERT_TRUE(again.ok()) << kind.name << " " << inWords(again.problem());
        const Result<Kind> back = readKind(again.value(), "form", "");
        ASSERT_TRUE(back.ok()) << kind.name << " " << inWords(back.problem());
        EXPECT_EQ(kindText(back.value()), text);
    }
}

} // namespace
} // namespace doorloom
