#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace doorloom {
namespace {

// A folder of core includes only itself and the folders before it.
constexpr std::array coreOrder = {"base",  "model",    "edit",  "catalogue", "file",  "graph", "verdict",
                                  "solve", "rehearse", "check", "judge",     "route", "sheet", "papers"};
// The folders of ui know openjob but not each other; window puts them together.
constexpr std::array uiFolders = {"openjob", "window", "canvas", "panels", "dialogs", "print"};

template <class Names> std::size_t placeIn(const Names& names, std::string_view name)
{
    return static_cast<std::size_t>(std::find(names.begin(), names.end(), name) - names.begin());
}

struct Include {
    std::string path;
    bool isQuoted = false;
};

bool startsWith(const std::string& text, std::string_view start)
{
    return text.compare(0, start.size(), start) == 0;
}

std::string firstFolder(const std::string& path)
{
    return path.substr(0, path.find('/'));
}

std::string whyCoreMayNot(const std::string& folder, const std::string& file, const Include& include)
{
    if (!include.isQuoted) {
        const bool isQt = std::regex_search(include.path, std::regex("^(Q[A-Z]|Qt)"));
        if (isQt)
            return "core has no Qt";
        if (startsWith(include.path, "boost/") && (folder != "graph" || !file.ends_with(".cpp")))
            return "Boost stays in the .cpp files of core/graph";
        if (startsWith(include.path, "Eigen/") && folder != "solve")
            return "Eigen stays in core/solve";
        return "";
    }
    const std::string wanted = firstFolder(include.path);
    if (placeIn(coreOrder, wanted) == coreOrder.size())
        return "core includes core alone";
    if (placeIn(coreOrder, wanted) > placeIn(coreOrder, folder))
        return "core/" + folder + " comes before core/" + wanted;
    return "";
}

std::string whyUiMayNot(const std::string& folder, const std::string& file, const Include& include)
{
    if (!include.isQuoted) {
        const bool isIndex = folder == "canvas" && file.ends_with("/sceneindex.cpp"); // of the sheet
        const bool computes = startsWith(include.path, "boost/") || startsWith(include.path, "Eigen/");
        return computes && !isIndex ? "ui computes nothing" : "";
    }
    const std::string wanted = firstFolder(include.path);
    if (placeIn(coreOrder, wanted) < coreOrder.size())
        return "";
    if (placeIn(uiFolders, wanted) == uiFolders.size())
        return "ui includes ui and core alone";
    if (wanted != folder && wanted != "openjob" && folder != "window")
        return "the folders of ui know openjob but not each other";
    return "";
}

// In:  file as "core/check/neverfed.cpp"
// Out: "core/check/neverfed.cpp:3: #include "papers/rows.h": why it breaks the order of the layers", one for
// each
std::vector<std::string> brokenLayers(const std::string& file, const std::string& text)
{
    static const std::regex includeLine(R"re(^\s*#\s*include\s*(["<])([^">]+)[">])re");
    const std::string layer = firstFolder(file);
    const std::string inLayer = file.substr(layer.size() + 1);
    const std::string folder = firstFolder(inLayer);
    std::vector<std::string> broken;
    if (layer == "core" && placeIn(coreOrder, folder) == coreOrder.size())
        broken.push_back(file + ": core/" + folder + " has no place in the order of the layers");
    if (layer == "ui" && placeIn(uiFolders, folder) == uiFolders.size())
        broken.push_back(file + ": ui/" + folder + " has no place among the folders of ui");

    std::istringstream lines(text);
    std::string line;
    for (int number = 1; std::getline(lines, line); ++number) {
        std::smatch match;
        if (!std::regex_search(line, match, includeLine))
            continue;
        const Include include{match[2], match[1] == "\""};
        const std::string why =
            layer == "core" ? whyCoreMayNot(folder, file, include) : whyUiMayNot(folder, file, include);
        if (!why.empty())
            broken.push_back(file + ":" + std::to_string(number) + ": " + include.path + ": " + why);
    }
    return broken;
}

using Lines = std::vector<std::string>;

// "doorloom::End" of each type that a header defines.
std::set<std::string> typesDefinedIn(const std::string& text)
{
    static const std::regex opening(R"(^namespace ([a-z:]+) \{)"),
        type(R"(^(?:struct|class|enum class) ([A-Z]\w*)(?: final)?(?: : .*)? \{)");
    std::set<std::string> types;
    std::string name_space;
    std::istringstream lines(text);
    std::smatch match;
    for (std::string line; std::getline(lines, line);)
        if (std::regex_search(line, match, opening))
            name_space = match[1];
        else if (std::regex_search(line, match, type))
            types.insert(name_space + "::" + match[1].str());
    return types;
}

// A second type of the name elsewhere is another program, and only the linker could know.
TEST(Layers, GiveEachTypeOfAHeaderANameOfItsOwn)
{
    EXPECT_EQ(typesDefinedIn("namespace a::b {\nclass C;\nclass D : public Q {\nenum class E : int { F };"),
              (std::set<std::string>{"a::b::D", "a::b::E"}));
    std::map<std::string, std::string> files;
    for (const char* layer : {"core", "ui", "app"})
        for (const auto& entry :
             std::filesystem::recursive_directory_iterator(std::filesystem::path(SOURCE_FOLDER) / layer))
            if (entry.path().extension() == ".h") {
                std::ifstream in(entry.path());
                for (const std::string& type :
                     typesDefinedIn(std::string((std::istreambuf_iterator<char>(in)), {}))) {
                    const auto [there, isNew] = files.emplace(type, entry.path().string());
                    EXPECT_TRUE(isNew) << type << " in " << there->second << " and " << entry.path();
                }
            }
    EXPECT_GT(files.size(), 300u);
}

TEST(Layers, AreKeptByEveryIncludeLine)
{
    const std::filesystem::path source = SOURCE_FOLDER;
    std::size_t files = 0;
    for (const char* layer : {"core", "ui"}) {
        for (const auto& entry : std::filesystem::recursive_directory_iterator(source / layer)) {
            const auto extension = entry.path().extension();
            if (extension != ".h" && extension != ".cpp")
                continue;
            ++files;
            std::ifstream in(entry.path());
            const std::string text((std::istreambuf_iterator<char>(in)), {});
            for (const std::string& broken :
                 brokenLayers(entry.path().lexically_relative(source).string(), text))
                ADD_FAILURE() << broken;
        }
    }
    EXPECT_GT(files, 10u);
}

TEST(Layers, ThatBreakTheOrderAreNamedWithTheirLine)
{
    EXPECT_EQ(
        brokenLayers("core/check/neverfed.cpp", "#include \"verdict/ask.h\"\n\n#include \"papers/rows.h\"\n"),
        Lines{"core/check/neverfed.cpp:3: papers/rows.h: core/check comes before core/papers"});
    EXPECT_EQ(brokenLayers("core/model/job.h", "#include <QString>\n"),
              Lines{"core/model/job.h:1: QString: core has no Qt"});
    EXPECT_EQ(brokenLayers("core/model/job.h", "#include \"print/page.h\"\n"),
              Lines{"core/model/job.h:1: print/page.h: core includes core alone"});
    EXPECT_EQ(
        brokenLayers("core/graph/netlist.h", "#include <boost/graph/adjacency_list.hpp>\n"),
        Lines{"core/graph/netlist.h:1: boost/graph/adjacency_list.hpp: Boost stays in the .cpp files of "
              "core/graph"});
    EXPECT_EQ(brokenLayers("core/check/drop.cpp", "#include <Eigen/Core>\n"),
              Lines{"core/check/drop.cpp:1: Eigen/Core: Eigen stays in core/solve"});
    EXPECT_EQ(brokenLayers("core/misc/odds.cpp", ""),
              Lines{"core/misc/odds.cpp: core/misc has no place in the order of the layers"});
    EXPECT_EQ(
        brokenLayers("ui/canvas/canvas.cpp", "#include \"panels/shelf.h\"\n"),
        Lines{"ui/canvas/canvas.cpp:1: panels/shelf.h: the folders of ui know openjob but not each other"});
    EXPECT_EQ(brokenLayers("ui/canvas/look.cpp", "#include <boost/geometry.hpp>\n"),
              Lines{"ui/canvas/look.cpp:1: boost/geometry.hpp: ui computes nothing"});
    EXPECT_EQ(brokenLayers("ui/print/page.cpp", "#include \"verbs/verb.h\"\n"),
              Lines{"ui/print/page.cpp:1: verbs/verb.h: ui includes ui and core alone"});
}

TEST(Layers, MayLookDownTheOrder)
{
    EXPECT_EQ(brokenLayers("core/graph/netlist.cpp", "#include <boost/graph/connected_components.hpp>\n"),
              Lines{});
    EXPECT_EQ(brokenLayers("core/papers/rows.cpp", "#include \"judge/findings.h\"\n#include <vector>\n"),
              Lines{});
    EXPECT_EQ(brokenLayers("ui/window/window.cpp", "#include \"canvas/canvas.h\"\n#include <QMenu>\n"),
              Lines{});
    EXPECT_EQ(
        brokenLayers("ui/panels/shelf.cpp", "#include \"openjob/openjob.h\"\n#include \"model/job.h\"\n"),
        Lines{});
}

} // namespace
} // namespace doorloom
