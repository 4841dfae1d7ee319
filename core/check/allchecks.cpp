#include "check/check.h"

#include <algorithm>

namespace doorloom {

extern const Check shortedSource, nearlyShorted, batteryWrong, wetOutput, twoFeeds, jumpersDisagree,
    reversePolarity, wrongCurrent, foreignVolts, voltsThroughLoad, neverFed, halfFed, overVoltage,
    underVoltage, overloadedSupply, noSpareForRecharging, shortStandby, overloadedContact,
    overloadedFuse, directRelease, releaseInMinus, wrongInSituation, operatorInSituation, startsEarly,
    buzzes, alwaysFed, sharedLoop, endOfLineValue, neverOperated, alwaysOperated, endOfLinePlace,
    solidState, contactLeast, varistorRating, thinConductor, largeFuse, class2Limit, wireRange,
    suppression, optionNotChosen, emptyTerminal, waitingEnd, overfilledTerminal, duplicateTag, heldOn,
    sidesShareInput, loopAtRest, unlatchedInFire, shortRelease, dataCrossed, loneEnd, earthedTwice,
    mainsBeside, dataBesidePower, shieldEarthing, noTransfer, colourMisleads, shortRequest,
    startOnRelease, doesNothing, closeActuators, bridgedContact, operatedAtRest, idleContact;

// The order in which one speaks before another when each would mend the other.
static constexpr const Check* checks[] = {
    &shortedSource, &nearlyShorted, &batteryWrong, &wetOutput, &twoFeeds, &jumpersDisagree,
    &reversePolarity, &wrongCurrent, &foreignVolts, &voltsThroughLoad, &neverFed, &halfFed,
    &overVoltage, &underVoltage, &overloadedSupply, &noSpareForRecharging, &shortStandby,
    &overloadedContact, &overloadedFuse, &directRelease, &releaseInMinus, &wrongInSituation,
    &operatorInSituation, &heldOn, &sidesShareInput, &unlatchedInFire, &shortRelease, &startsEarly,
    &shortRequest, &startOnRelease, &doesNothing, &buzzes, &alwaysFed, &sharedLoop, &endOfLineValue,
    &neverOperated, &alwaysOperated, &loopAtRest, &operatedAtRest, &bridgedContact, &idleContact,
    &endOfLinePlace, &solidState, &contactLeast, &dataCrossed, &varistorRating, &thinConductor,
    &largeFuse, &class2Limit, &wireRange, &mainsBeside, &dataBesidePower, &shieldEarthing,
    &earthedTwice, &noTransfer, &suppression, &closeActuators,
    &optionNotChosen, &emptyTerminal, &waitingEnd, &loneEnd,
    &overfilledTerminal, &duplicateTag, &colourMisleads,
};

std::span<const Check* const> allChecks() { return checks; }

const Check* checkCalled(std::string_view code)
{
    const auto found = std::find_if(std::begin(checks), std::end(checks), [&](const Check* each) { return each->code == code; });
    return found == std::end(checks) ? nullptr : *found;
}

} // namespace doorloom
