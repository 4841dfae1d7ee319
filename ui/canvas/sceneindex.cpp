#include "canvas/sceneindex.h"

#include <boost/function_output_iterator.hpp>
#include <boost/geometry.hpp>
#include <boost/geometry/index/rtree.hpp>

#include <utility>

namespace doorloom {
namespace {

namespace geometry = boost::geometry;
using Corner = geometry::model::point<int, 2, geometry::cs::cartesian>;
using Box = geometry::model::box<Corner>;
using Value = std::pair<Box, Handle>;

Box boxOf(const Area& area)
{
    return {{area.left, area.top}, {area.right, area.bottom}};
}

} // namespace

struct SceneIndex::Tree {
    geometry::index::rtree<Value, geometry::index::quadratic<16>> values;
};

SceneIndex::SceneIndex() : tree_(std::make_unique<Tree>()) {}

SceneIndex::~SceneIndex() = default;

SceneIndex::SceneIndex(SceneIndex&&) noexcept = default;

SceneIndex& SceneIndex::operator=(SceneIndex&&) noexcept = default;

void SceneIndex::fill(const std::vector<Indexed>& all)
{
    std::vector<Value> values;
    values.reserve(all.size());
    for (const Indexed& one : all)
        values.emplace_back(boxOf(one.area), one.what);
    tree_->values = decltype(tree_->values)(values);
}

void SceneIndex::insert(const Indexed& one)
{
    tree_->values.insert(Value(boxOf(one.area), one.what));
}

void SceneIndex::remove(const Indexed& one)
{
    tree_->values.remove(Value(boxOf(one.area), one.what));
}

void SceneIndex::lookUp(const Area& area, std::vector<Handle>& found) const
{
    if (area.isEmpty())
        return;
    const auto keep = [&](const Value& value) { found.push_back(value.second); };
    tree_->values.query(geometry::index::intersects(boxOf(area)), boost::make_function_output_iterator(keep));
}

} // namespace doorloom
