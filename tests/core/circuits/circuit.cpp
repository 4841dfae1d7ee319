#include "circuit.h"

#include <stdexcept>
#include <string>

namespace doorloom {

namespace {

void setOptions(JobBuilder& job, std::string_view text)
{
    for (const std::string& word : splitWords(text)) {
        const auto dot = word.find('.'), equals = word.find('=');
        if (dot == std::string::npos || equals == std::string::npos || equals < dot)
            throw std::runtime_error("DEVICE.OPTION=value or DEVICE.SETTING=number is needed: '" + word + "'");
        const std::string tag = word.substr(0, dot), key = word.substr(dot + 1, equals - dot - 1), value = word.substr(equals + 1);
        if (value.find_first_not_of("0123456789.") == std::string::npos)
            job.setting(tag, key, std::stod(value));
        else
            job.option(tag, key, value);
    }
}

} // namespace

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

Job drawnJob(std::string_view devices, std::string_view wires, std::string_view options, const std::vector<OpeningSketch>& openings)
{
    JobBuilder job = withDevices(devices);
    setOptions(job, options);
    job.wires(wires);
    for (const OpeningSketch& opening : openings)
        job.opening(opening);
    return job.job();
}

JobBuilder& addModule(JobBuilder& builder, const std::string& tag)
{
    return builder.device(tag, "relay-module-negative").option(tag, "K1", "dry").option(tag, "K3", "dry");
}

void gaugeAll(JobBuilder& job, const std::string& gauge, double metres)
{
    Change change;
    for (Conductor row : job.job().conductors) {
        row.gauge = gauge;
        row.length = {metres};
        change.steps.emplace_back(Put<Conductor>{row.id, row});
    }
    job.apply(change);
}

std::vector<JudgedCircuit> allCircuits()
{
    std::vector<JudgedCircuit> all;
    for (auto circuits : {wetOutputCircuits, twoSupplyCircuits, relayCircuits, lampInputCircuits,
                          whichContactCircuits, doorOperatorCircuits, releaseCircuits, currentCircuits, numberCircuits,
                          supervisedCircuits, ratingCircuits, topologyCircuits, trapCircuits})
        for (JudgedCircuit& circuit : circuits())
            all.push_back(std::move(circuit));
    return all;
}

} // namespace doorloom
