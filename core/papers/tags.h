#pragma once

#include "model/job.h"
#include "papers/schedule.h"

#include <string>
#include <vector>

namespace doorloom {

enum class TagKind { ConductorEnd, Cable, Device };

// One label. Conductor end: this end large, the far end small. Cable: its tag large, one label at each end.
// Device: its tag large, what it is small.
struct Tag {
    TagKind kind = TagKind::ConductorEnd;
    std::string box, boxWords; // where it is put on
    Message large, small;
    std::string conductor, cable;
    int core = 0;
    std::string colour;
};

struct TagSheet {
    TitleBlock title;
    std::vector<Tag> tags;
};

// In the order in which they are used: box by box as in the terminal schedule; in a box its devices, its
// cables, then every conductor end in the order of the rows.
TagSheet tagsOf(const Job& job, std::string digest);

extern const Text tagsTitle;

// What stands on each label and where it goes, aligned.
std::string tagsText(const TagSheet& sheet, Language language);
// Columns: tag (conductor, cable, device), box, box_name, large, small, conductor, cable, core, colour.
std::string tagsCsv(const TagSheet& sheet, Language language);

} // namespace doorloom
