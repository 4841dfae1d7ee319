#include "model/tags.h"

namespace doorloom {

Id<TagBucket> bucketOfTag(std::string_view tag)
{
    std::uint32_t hash = 2166136261u; // FNV-1a
    for (char letter : tag)
        hash = (hash ^ static_cast<unsigned char>(letter)) * 16777619u;
    return {hash % 4096 + 1};
}

} // namespace doorloom
