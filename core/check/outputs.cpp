#include "check/outputs.h"

#include "check/tell.h"

#include <algorithm>
#include <map>

namespace doorloom {

OutputInJob::Stands OutputInJob::stands(const Job& job) const
{
    const Device* row = job.devices.find(device);
    const Kind* kind = kindOf(job, device);
    const Option* option = kind ? findOption(*kind, output->option) : nullptr;
    if (!option || output->wetValue.empty())
        return Stands::Dry;
    std::size_t wet = 0, open = 0;
    for (const Jumper& jumper : option->jumpers) {
        const std::optional<Key> value = chosen(*row, option->key, jumper.key);
        open += !value;
        wet += value == output->wetValue;
    }
    const std::size_t all = option->jumpers.size();
    return wet == all ? Stands::Wet : wet + open < all ? (wet ? Stands::Apart : Stands::Dry) : Stands::WetIfLeftSo;
}

namespace {

bool belongsTo(const SwitchedOutput& output, const Kind& kind, const Origin& origin)
{
    if (std::any_of(origin.because.begin(), origin.because.end(),
                    [&](const JumperAt& at) { return at.option == output.option; }))
        return true;
    const auto* contact = findPartAs<ContactPart>(kind, origin.part);
    return contact && std::any_of(output.terminals.begin(), output.terminals.end(),
                                  [&](const Key& key) { return key == contact->a || key == contact->b; });
}

// Sources that feed the device by its own supply terminals, whatever meets its outputs; `feeds` are those inside it.
std::vector<std::uint32_t> feedsOf(const Facts& facts, const std::vector<std::uint32_t>& elements,
                                   const std::vector<std::uint32_t>& outputs, std::vector<std::uint32_t> feeds)
{
    for (std::uint32_t number : elements) {
        const Element& element = facts.circuit().elements[number];
        const LoadPart* load = facts.loadOf(number);
        if (!load || load->use != LoadUse::Electronics)
            continue;
        for (std::uint32_t feed : facts.ask.feedsNear(element.a))
            if (facts.ask.joined(element.a, facts.circuit().feeds[feed].plus, outputs).answer != Answer::Never &&
                facts.ask.joined(element.b, facts.circuit().feeds[feed].minus, outputs).answer != Answer::Never)
                feeds.push_back(feed);
    }
    return feeds;
}

} // namespace

std::vector<OutputInJob> outputsOf(const Facts& facts)
{
    std::vector<OutputInJob> all;
    std::map<DeviceId, std::vector<std::uint32_t>> jointsOfDevice, elementsOfDevice, feedsOfDevice;
    for (std::uint32_t feed = 0; feed < facts.circuit().feeds.size(); ++feed)
        feedsOfDevice[facts.deviceOf(facts.circuit().feeds[feed].origin)].push_back(feed);
    for (std::uint32_t joint = 0; joint < facts.circuit().joints.size(); ++joint)
        jointsOfDevice[facts.deviceOf(facts.circuit().joints[joint].origin)].push_back(joint);
    for (std::uint32_t element = 0; element < facts.circuit().elements.size(); ++element)
        elementsOfDevice[facts.deviceOf(facts.circuit().elements[element].origin)].push_back(element);
    for (const Device& device : facts.job.devices) {
        const Kind* kind = kindOf(facts.job, device);
        if (!kind || kind->outputs.empty())
            continue;
        const std::size_t first = all.size();
        std::vector<std::uint32_t> joints;
        for (const SwitchedOutput& output : kind->outputs) {
            OutputInJob here{device.id, &output, {}, {}, {}};
            for (const Key& key : output.terminals)
                if (const auto vertex = facts.net.vertexOf(device.id, key))
                    here.terminals.push_back(*vertex);
            for (std::uint32_t joint : jointsOfDevice[device.id])
                if (belongsTo(output, *kind, facts.net.origin(facts.circuit().joints[joint].origin)))
                    here.joints.push_back(joint);
            joints.insert(joints.end(), here.joints.begin(), here.joints.end());
            all.push_back(std::move(here));
        }
        const std::vector<std::uint32_t> feeds = feedsOf(facts, elementsOfDevice[device.id], joints, feedsOfDevice[device.id]);
        for (std::size_t i = first; i < all.size(); ++i)
            all[i].ownFeeds = feeds;
    }
    return all;
}

} // namespace doorloom
