#pragma once

#include "mutations.h"

#include "core/jobs.h"

namespace doorloom {

using Edit = std::function<void(JobBuilder&)>;

inline Mutant mutant(const Job& job, std::string name, Edit edit)
{
    return {std::move(name), [&job, edit = std::move(edit)] {
                JobBuilder builder(job, Clamps::Roomy);
                edit(builder);
                return builder.job();
            }};
}

inline void change(JobBuilder& builder, const Result<Change>& change)
{
    if (!change.ok())
        throw std::runtime_error(inWords(change.problem().what));
    builder.apply(change.value());
}

bool isLanded(const Job& job, const Device& device, const Key& terminal);
std::string nameOf(const Job& job, const Device& device, const Key& terminal);

template <class Body> void forEachPart(const Job& job, const std::function<void(const Device&, const Part&, const Body&)>& visit)
{
    for (const Device& device : job.devices)
        for (const Part& part : kindOf(job, device)->parts)
            if (const auto* body = std::get_if<Body>(&part.body); body && holds(device, part.when))
                visit(device, part, *body);
}

} // namespace doorloom
