#include "file/ownshelf.h"

#include "catalogue/catalogue.h"
#include "catalogue/kindjson.h"
#include "core/fullkind.h"
#include "core/program.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

Kind named(const std::string& name)
{
    Kind kind = fullKind();
    kind.name = name;
    return kind;
}

TEST(OwnShelf, KeepsAKindAndReadsItBack)
{
    const test::TemporaryFolder folder;
    const std::string own = folder.file("deep/kinds");
    EXPECT_TRUE(readOwnShelf(own).kinds.empty()) << "no folder yet";
    ASSERT_TRUE(keepOnOwnShelf(own, named("b-kind")).ok());
    ASSERT_TRUE(keepOnOwnShelf(own, named("a-kind")).ok());
    Kind changed = named("b-kind");
    changed.title.en = "Changed";
    ASSERT_TRUE(keepOnOwnShelf(own, changed).ok());

    const OwnShelf shelf = readOwnShelf(own);

    EXPECT_TRUE(shelf.unread.empty());
    EXPECT_EQ(shelf.kinds, (std::vector<Kind>{named("a-kind"), changed}));
}

TEST(OwnShelf, NamesTheFilesThatItCanNotReadAndLeavesThemAlone)
{
    const test::TemporaryFolder folder;
    ASSERT_TRUE(keepOnOwnShelf(folder.path().string(), named("good")).ok());
    const std::string broken = folder.write("broken.json", "{\"name\":\"broken\",");
    const std::string other = folder.write("other.json", kindText(named("good")));
    folder.write("notes.txt", "no kind");

    const OwnShelf shelf = readOwnShelf(folder.path().string());

    EXPECT_EQ(shelf.kinds.size(), 1u);
    ASSERT_EQ(shelf.unread.size(), 2u);
    EXPECT_TRUE(shelf.unread[0].where.starts_with(broken)) << shelf.unread[0].where;
    EXPECT_EQ(inWords(shelf.unread[1]), other + ": The kind 'good' does not bear its file's name. Call the "
                                                "file good.json, or the kind as the file.");
    const Result<Done> kept = keepOnOwnShelf(folder.path().string(), named("broken"));
    ASSERT_FALSE(kept.ok());
    EXPECT_EQ(inWords(kept.problem()), broken + ": The file that is there can't be read as a kind. Move it "
                                                "away first, or give this kind another name.");
    EXPECT_EQ(test::contentOf(broken), "{\"name\":\"broken\",");
}

TEST(OwnShelf, RefusesAKindThatContradictsItself)
{
    const test::TemporaryFolder folder;
    Kind kind = named("wrong");
    kind.lock->load = "spool";
    const Result<Done> kept = keepOnOwnShelf(folder.path().string(), kind);
    ASSERT_FALSE(kept.ok());
    EXPECT_EQ(kept.problem(), checkKind(kind).front());
    EXPECT_FALSE(writeKindFile(kind, folder.file("wrong.json")).ok());
    Kind climber = named("../up");
    EXPECT_FALSE(keepOnOwnShelf(folder.path().string(), climber).ok())
        << "a name is no way out of the folder";
    EXPECT_TRUE(folder.names().empty());
}

TEST(OwnShelf, HandsAKindOnAsOneFile)
{
    const test::TemporaryFolder folder;
    ASSERT_TRUE(writeKindFile(named("handed-on"), folder.file("any name.json")).ok());
    const Result<Kind> back = readKindFile(folder.file("any name.json"));
    ASSERT_TRUE(back.ok()) << inWords(back.problem());
    EXPECT_EQ(back.value(), named("handed-on"));
}

} // namespace
} // namespace doorloom
