#include "circuit.h"

namespace doorloom {

JobBuilder withDevices(std::string_view text)
{
    JobBuilder builder(Clamps::Roomy);
    while (!text.empty()) {
        const auto end = std::min(text.find(';'), text.size());
        const std::vector<std::string> words = splitWords(text.substr(0, end));
        for (std::size_t i = 0; i + 1 < words.size(); ++i)
            builder.device(words[i], words.back());
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return builder;
}

JobBuilder& addModule(JobBuilder& builder, const std::string& tag)
{
    return builder.device(tag, "relay-module-negative").option(tag, "K1", "dry").option(tag, "K3", "dry");
}

std::vector<JudgedCircuit> allCircuits()
{
    std::vector<JudgedCircuit> all;
    for (auto circuits : {wetOutputCircuits, twoSupplyCircuits, relayCircuits, lampInputCircuits,
                          whichContactCircuits, doorOperatorCircuits, releaseCircuits, currentCircuits, numberCircuits, trapCircuits})
        for (JudgedCircuit& circuit : circuits())
            all.push_back(std::move(circuit));
    return all;
}

} // namespace doorloom
