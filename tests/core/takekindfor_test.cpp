#include "edit/takekindfor.h"

#include "core/desk.h"
#include "core/smallkinds.h"

namespace doorloom {
namespace {

TEST(TakeKindFor, ChangesEveryDeviceThatItIsToldAndNoOther)
{
    Desk desk;
    const DeviceId one = desk.device("LM1", smallModule()), other = desk.device("LM2", smallModule()),
                   third = desk.device("LM3", smallModule());
    desk.make(setOption(desk.job(), one, "out1", "wet"));
    Kind newer = smallModule();
    newer.title.en = "Newer";
    newer.options[0].jumpers.pop_back();

    const KindSwap swap = desk.make(takeKindFor(desk.job(), newer, {one, other}));

    ASSERT_EQ(swap.leftBehind.size(), 1u);
    EXPECT_EQ(inWords(swap.leftBehind[0]), "LM1: jumper JB at 'wet' (out1) was not carried over.");
    EXPECT_EQ(*kindOf(desk.job(), one), newer);
    EXPECT_EQ(*kindOf(desk.job(), other), newer);
    EXPECT_EQ(*kindOf(desk.job(), third), smallModule());
}

TEST(TakeKindFor, TakesTheKindAloneWhereNoDeviceIsTold)
{
    Desk desk;
    desk.make(takeKindFor(desk.job(), smallModule(), {}));
    EXPECT_EQ(desk.job().kinds.size(), 1u);
    EXPECT_TRUE(takeKindFor(desk.job(), smallModule(), {}).value().change.steps.empty())
        << "it is there already";
}

TEST(TakeKindFor, SaysWhichDeviceCanNotBeChanged)
{
    Desk desk;
    const DeviceId one = desk.device("LM1", smallModule()), other = desk.device("LM2", smallModule());
    desk.make(addWire(desk.job(), desk.numbers(), {EndState::Landed, Landing{other, "NO1"}}, {}).second);
    Kind bare = smallModule();
    for (Strip& strip : bare.strips)
        std::erase_if(strip.terminals, [](const Terminal& each) { return each.key == "NO1"; });
    const std::string words = refusal(takeKindFor(desk.job(), bare, {one, other}));
    EXPECT_TRUE(words.starts_with("LM2: ")) << words;
}

} // namespace
} // namespace doorloom
