#include "base/json.h"
#include "catalogue/kindjson.h"
#include "fuzz/insist.h"

// Any bytes are read or refused in words; what is read reads back equal, and has the same hash.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    using namespace doorloom;
    const Result<Json> json = parseJson(textOf(data, size), "fuzz.json");
    const Result<Kind> kind = json.ok() ? readCheckedKind(json.value(), "fuzz.json", "") : json.problem();
    if (!kind.ok()) {
        insistOnWords(kind.problem());
        return 0;
    }
    const std::string text = kindText(kind.value());
    const Result<Json> again = parseJson(text, "fuzz.json");
    insist(again.ok(), "what was written is JSON");
    const Result<Kind> back = readCheckedKind(again.value(), "fuzz.json", "");
    insist(back.ok(), "what was written is read again");
    insist(back.value() == kind.value(), "what is read again is equal");
    insist(contentHash(back.value()) == contentHash(kind.value()), "equal kinds have equal hashes");
    return 0;
}
