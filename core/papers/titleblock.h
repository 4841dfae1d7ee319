#pragma once

#include "model/job.h"

#include <string>
#include <vector>

namespace doorloom {

// What stands on every sheet of every paper, besides its page number.
struct TitleBlock {
    std::string number, title, site, client, author, revision, date;
    std::string digest; // short, of the job's content: two sheets with different ones are of different jobs
    std::vector<Message> dangers; // that nobody has mended: at the head of every sheet
};

// In: the digest, digestOf(job) (core/file)
TitleBlock titleBlockOf(const Job& job, std::string digest);

// 'J-7 · Staff restroom', or that the job has no title yet
Message jobInWords(const TitleBlock& block);
// 'Revision B · digest 12ab34cd56ef · destroy older copies'
Message revisionLine(const TitleBlock& block);
// 'Site: … · Client: … · Drawn by: … · Date: …', what is not said left out
std::vector<Message> titleLines(const TitleBlock& block);

// What the units of a paper are.
extern const Text unitsLine;
// For the first sheet of every paper, in every language whatever the paper's own is.
std::vector<Message> cautions();
// For the foot of every sheet.
extern const Text shortCaution;

} // namespace doorloom
