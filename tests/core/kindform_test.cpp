#include "catalogue/kindform.h"

#include "base/json.h"
#include "catalogue/kindjson.h"
#include "catalogue/memberwords.h"
#include "core/fullkind.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <set>

namespace doorloom {
namespace {

using Sort = FormType::Sort;

// What every part has stands once, under no type.
std::string memberPath(const std::string& path, const std::string& name)
{
    const bool isOfEveryPart =
        path.ends_with(')') && (name == "type" || name == "key" || name == "when" || name == "standing");
    return (isOfEveryPart ? path.substr(0, path.find('(')) : path) + "." + name;
}

// Every key of the file has a member in the form, and every member is met somewhere in the file.
class Walk {
public:
    void meet(const std::string& path, const FormType& type, const Json& value)
    {
        if (type.sort == Sort::List && type.item->sort != Sort::Text) {
            for (const Json& each : std::get<Json::Array>(value.value))
                meet(path, *type.item, each);
        } else if (type.sort == Sort::Object) {
            meetMembers(path, type.members, value);
        } else if (type.sort == Sort::Part) {
            const std::string& word = std::get<std::string>(value.find("type")->value);
            const auto which = std::find(type.words.begin(), type.words.end(), word) - type.words.begin();
            meetMembers(path + "(" + word + ")", type.alternatives.at(static_cast<std::size_t>(which)),
                        value);
        }
    }
    const std::set<std::string>& met() const { return met_; }

private:
    void meetMembers(const std::string& path, const std::vector<FormMember>& members, const Json& value)
    {
        for (const JsonMember& each : std::get<Json::Object>(value.value)) {
            const auto member = std::find_if(members.begin(), members.end(),
                                             [&](const FormMember& one) { return one.name == each.key; });
            if (member == members.end()) {
                ADD_FAILURE() << path << " has no member " << each.key;
                continue;
            }
            met_.insert(memberPath(path, each.key));
            meet(path + "." + each.key, member->type, each.value);
        }
    }
    std::set<std::string> met_;
};

void listMembers(const std::string& path, const std::vector<FormMember>& members, std::set<std::string>& all);

void listIn(const std::string& path, const FormType& type, std::set<std::string>& all)
{
    if (type.sort == Sort::List)
        listIn(path, *type.item, all);
    else if (type.sort == Sort::Object)
        listMembers(path, type.members, all);
    for (std::size_t each = 0; each < type.alternatives.size(); ++each)
        listMembers(path + "(" + type.words[each] + ")", type.alternatives[each], all);
}

void listMembers(const std::string& path, const std::vector<FormMember>& members, std::set<std::string>& all)
{
    for (const FormMember& member : members) {
        all.insert(memberPath(path, member.name));
        listIn(path + "." + member.name, member.type, all);
    }
}

TEST(KindForm, HasEveryMemberThatAKindsFileCanHaveAndNoOther)
{
    const Result<Json> full = parseJson(kindText(fullKind()), "full");
    ASSERT_TRUE(full.ok());
    Walk walk;
    walk.meet("", kindForm(), full.value());
    std::set<std::string> all;
    listIn("", kindForm(), all);
    std::vector<std::string> notMet;
    std::set_difference(all.begin(), all.end(), walk.met().begin(), walk.met().end(),
                        std::back_inserter(notMet));
    EXPECT_EQ(notMet, std::vector<std::string>()) << "members that the full kind has not";
    EXPECT_GT(all.size(), 120u);
}

TEST(KindForm, PutsEveryMemberIntoWordsOfBothLanguages)
{
    std::set<std::string> all;
    listIn("", kindForm(), all);
    for (const std::string& path : all) {
        const std::string name = path.substr(path.rfind('.') + 1);
        const Words words = wordsOfMember(name);
        EXPECT_FALSE(words.en.empty() || words.es.empty()) << path;
        EXPECT_TRUE(words.en != words.es) << path << " has no words of its own: " << words.en;
    }
    EXPECT_EQ(wordsOfMember("clampCapacity").en, "conductors that a clamp takes");
}

} // namespace
} // namespace doorloom
