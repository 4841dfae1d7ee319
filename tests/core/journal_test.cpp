#include "file/journal.h"

#include "base/sha256.h"
#include "core/fulljob.h"
#include "core/random.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace doorloom {

namespace {

const FileHash theFile{sha256("the file")}, otherFile{sha256("another file")};

JournalEdit edit(int number)
{
    Sheet sheet;
    sheet.id = {static_cast<std::uint32_t>(number)};
    sheet.title = "sheet " + std::to_string(number);
    return {{"add " + sheet.title, "añadir " + sheet.title},
            number % 2 ? "" : "typing",
            {{Put<Sheet>{sheet.id, sheet}}}};
}

// The journal of some edits, its lines kept apart.
struct Sketch {
    std::vector<std::string> lines;
    std::vector<JournalEdit> edits;

    explicit Sketch(int count, const JournalStart& start = theFile)
    {
        lines.push_back(journalRecord(1, start));
        for (int number = 1; number <= count; ++number) {
            edits.push_back(edit(number));
            lines.push_back(journalRecord(static_cast<std::uint64_t>(number) + 1, edits.back()));
        }
    }
    std::string text() const
    {
        std::string all;
        for (const std::string& line : lines)
            all += line;
        return all;
    }
};

Result<Journal> read(const std::string& text)
{
    return readJournal(text, "x.journal", theFile);
}

std::string refusal(const std::string& text, const std::optional<FileHash>& file = theFile)
{
    const Result<Journal> journal = readJournal(text, "x.journal", file);
    return journal.ok() ? "was read" : inWords(journal.problem());
}

std::string damageOf(const std::string& text)
{
    const Result<Journal> journal = read(text);
    if (!journal.ok())
        return "refused: " + inWords(journal.problem());
    return journal.value().damage ? inWords(*journal.value().damage) : "none";
}

std::size_t editsIn(const std::string& text)
{
    const Result<Journal> journal = read(text);
    return journal.ok() ? journal.value().edits.size() : 0;
}

// What was read is a beginning of what was written.
void expectBeginning(const Journal& journal, const std::vector<JournalEdit>& written)
{
    ASSERT_LE(journal.edits.size(), written.size());
    EXPECT_TRUE(std::equal(journal.edits.begin(), journal.edits.end(), written.begin()));
}

} // namespace

TEST(Journal, ReadsBackItsEdits)
{
    const Sketch sketch(5);
    const Result<Journal> journal = read(sketch.text());
    ASSERT_TRUE(journal.ok()) << inWords(journal.problem());
    EXPECT_EQ(journal.value().edits, sketch.edits);
    EXPECT_EQ(journal.value().damage, std::nullopt);
    EXPECT_EQ(journal.value().goodBytes, sketch.text().size());
    EXPECT_EQ(journal.value().nextNumber, 7u);
    EXPECT_FALSE(journal.value().job);
}

TEST(Journal, LooksAsItsHeaderSays)
{
    const std::string json = R"({"journal":1,"file":")" + theFile.sha256 + R"("})";
    EXPECT_EQ(journalRecord(1, theFile), "1 87 " + sha256("1 87 " + json).substr(0, 16) + " " + json + "\n");
    EXPECT_NE(journalRecord(2, edit(3))
                  .find(R"( {"what":{"en":"add sheet 3","es":"añadir sheet 3"},"change":[)"
                        R"({"sheets":{"id":3,"title":"sheet 3"}}]})"),
              std::string::npos);
}

TEST(Journal, BringsBackAJobThatHasNoFile)
{
    Sketch sketch(2, fullJob());
    const Result<Journal> journal = readJournal(sketch.text(), "x.journal", std::nullopt);
    ASSERT_TRUE(journal.ok()) << inWords(journal.problem());
    EXPECT_EQ(journal.value().job, fullJob());
    EXPECT_EQ(journal.value().job->nextNumber, fullJob().nextNumber);
    EXPECT_EQ(journal.value().edits, sketch.edits);
}

TEST(Journal, WithoutAnyRecordHasNothing)
{
    for (const std::string& text : {std::string(), std::string("1 88 "), Sketch(0).text()}) {
        const Result<Journal> journal = read(text);
        ASSERT_TRUE(journal.ok()) << inWords(journal.problem());
        EXPECT_TRUE(journal.value().edits.empty() && !journal.value().damage);
    }
}

TEST(Journal, IsRefusedForAnotherStateOfTheFile)
{
    const std::string words =
        "x.journal: These unsaved edits were made to the job as it was before its file was "
        "changed. Put the file back as it was then and open it again, or make the edits "
        "anew.";
    EXPECT_EQ(refusal(Sketch(2).text(), otherFile), words);
    EXPECT_EQ(refusal(Sketch(2).text(), std::nullopt), words);
    EXPECT_EQ(refusal(Sketch(2, fullJob()).text(), theFile), words);
}

TEST(Journal, KnowsWhatWasSavedByTheMarkBeforeSaving)
{
    Sketch sketch(5);
    sketch.lines.insert(sketch.lines.begin() + 4,
                        journalRecord(5, otherFile)); // three edits, saved, two edits
    sketch.lines[5] = journalRecord(6, sketch.edits[3]);
    sketch.lines[6] = journalRecord(7, sketch.edits[4]);
    const Result<Journal> saved = readJournal(sketch.text(), "x.journal", otherFile);
    ASSERT_TRUE(saved.ok()) << inWords(saved.problem());
    EXPECT_EQ(saved.value().edits, (std::vector<JournalEdit>{edit(4), edit(5)}));
    const Result<Journal> notSaved = readJournal(sketch.text(), "x.journal", theFile);
    ASSERT_TRUE(notSaved.ok());
    EXPECT_EQ(notSaved.value().edits, sketch.edits);

    sketch.lines[2][30] ^= 1; // what was damaged before the mark is in the file
    const Result<Journal> after = readJournal(sketch.text(), "x.journal", otherFile);
    ASSERT_TRUE(after.ok());
    EXPECT_EQ(after.value().edits.size(), 2u);
    EXPECT_EQ(after.value().damage, std::nullopt);
}

TEST(Journal, LosesOnlyTheLastEditWhereverItIsCutShort)
{
    const Sketch sketch(3);
    const std::string text = sketch.text();
    std::size_t whole = 0, lineEnd = sketch.lines[0].size(); // edits whose JSON is there to its last letter
    for (std::size_t bytes = 0; bytes <= text.size(); ++bytes) {
        while (whole < 3 && bytes + 1 >= lineEnd + sketch.lines[whole + 1].size())
            lineEnd += sketch.lines[++whole].size();
        const Result<Journal> journal = read(text.substr(0, bytes));
        ASSERT_TRUE(journal.ok()) << bytes << ": " << inWords(journal.problem());
        EXPECT_EQ(journal.value().edits.size(), whole) << bytes;
        EXPECT_EQ(journal.value().damage, std::nullopt) << bytes;
        expectBeginning(journal.value(), sketch.edits);
    }
}

TEST(Journal, NeverLosesInSilenceWhateverBitFlips)
{
    const Sketch sketch(4);
    const std::string text = sketch.text();
    for (std::size_t bit = 0; bit < text.size() * 8; ++bit) {
        std::string flipped = text;
        flipped[bit / 8] = static_cast<char>(flipped[bit / 8] ^ (1 << bit % 8));
        const Result<Journal> journal = read(flipped);
        if (!journal.ok())
            continue;
        expectBeginning(journal.value(), sketch.edits);
        EXPECT_TRUE(journal.value().edits.size() == 4 || journal.value().damage) << "bit " << bit;
    }
}

TEST(Journal, SaysWhereItIsDamagedAndHowMuchIsLost)
{
    Sketch middle(6);
    middle.lines[3][40] ^= 4;
    EXPECT_EQ(editsIn(middle.text()), 2u);
    EXPECT_EQ(damageOf(middle.text()),
              "x.journal, line 4: The unsaved edits are damaged here: 4 of the last ones "
              "are lost. Look over the job and make the missing edits anew.");

    Sketch last(6);
    last.lines[6][40] ^= 4;
    EXPECT_EQ(editsIn(last.text()), 5u);
    EXPECT_EQ(damageOf(last.text()),
              "x.journal, line 7: The unsaved edits are damaged here: 1 of the last ones "
              "are lost. Look over the job and make the missing edits anew.");

    Sketch missing(6);
    missing.lines.erase(missing.lines.begin() + 2);
    EXPECT_EQ(editsIn(missing.text()), 1u);
    EXPECT_EQ(damageOf(missing.text()),
              "x.journal, line 3: The unsaved edits are damaged here: 5 of the last "
              "ones are lost. Look over the job and make the missing edits anew.");

    Sketch first(2);
    first.lines[0][40] ^= 4;
    EXPECT_EQ(refusal(first.text()),
              "x.journal, line 1: The beginning of the unsaved edits is damaged, so that "
              "none can be made. Look over the job and make the missing edits anew.");
}

TEST(Journal, TakesALineThatStandsTwiceOnce)
{
    for (std::size_t from = 0; from < 5; ++from)
        for (std::size_t count = 1; from + count <= 5; ++count) {
            Sketch sketch(4);
            const std::vector<std::string> again(sketch.lines.begin() + static_cast<std::ptrdiff_t>(from),
                                                 sketch.lines.begin() +
                                                     static_cast<std::ptrdiff_t>(from + count));
            sketch.lines.insert(sketch.lines.begin() + static_cast<std::ptrdiff_t>(from + count),
                                again.begin(), again.end());
            EXPECT_EQ(editsIn(sketch.text()), 4u) << from << ' ' << count;
            EXPECT_EQ(damageOf(sketch.text()), "none");
            EXPECT_EQ(editsIn(Sketch(4).text() + sketch.lines[from]), 4u);
        }
}

TEST(Journal, NeverLosesInSilenceWhenPiecesAreSpoilt)
{
    forEachSeed(3000, [](Random& random) {
        const Sketch sketch(5);
        std::string text = sketch.text();
        const std::size_t at = random.below(text.size()), count = random.below(200);
        switch (random.below(3)) {
        case 0: // a hole of zeros
            std::fill(text.begin() + static_cast<std::ptrdiff_t>(at),
                      text.begin() + static_cast<std::ptrdiff_t>(std::min(text.size(), at + count)), '\0');
            break;
        case 1: // a piece that is gone; not the end
            if (at + count >= text.size() - sketch.lines.back().size())
                return;
            text.erase(at, count);
            break;
        default: // a piece that stands twice
            text.insert(at, text.substr(at, count));
        }
        const Result<Journal> journal = read(text);
        if (!journal.ok())
            return;
        expectBeginning(journal.value(), sketch.edits);
        EXPECT_TRUE(journal.value().edits.size() == 5 || journal.value().damage);
    });
}

TEST(Journal, RefusesWhatItDoesNotKnow)
{
    const auto lineWithJson = [](std::uint64_t number, const std::string& json) {
        const std::string head = std::to_string(number) + " " + std::to_string(json.size()) + " ";
        return head + sha256(head + json).substr(0, 16) + " " + json + "\n";
    };
    EXPECT_EQ(refusal(lineWithJson(1, R"({"journal":2,"file":"x"})")),
              "x.journal, line 1: The unsaved edits have version 2; this program reads up to 1. Open the job "
              "with a "
              "newer version of this program.");
    EXPECT_EQ(
        damageOf(Sketch(1).text() + lineWithJson(3, R"({"change":[{"doors":1}]})") +
                 journalRecord(4, edit(2))),
        "x.journal, line 3: The unsaved edits are damaged here: 2 of the last ones are lost. Look over the "
        "job and make the missing edits anew.");
    EXPECT_EQ(
        refusal(journalRecord(1, edit(1))),
        "x.journal: These unsaved edits were made to the job as it was before its file was changed. Put the "
        "file back as it was then and open it again, or make the edits anew.");
}

} // namespace doorloom
