#include "openjob/edit.h"

#include <algorithm>
#include <unordered_set>
#include <utility>

namespace doorloom {

namespace {

constexpr Text undoing = {.en = "undo: {what}", .es = "deshacer: {what}"}; // as an edit of its own

std::uint32_t rowOf(const Step& step)
{
    return std::visit([](const auto& put) { return put.id.number; }, step);
}

// The undoing of two edits at once: of a row that both altered, the older one knows how it was.
Change undoOfBoth(Change older, const Change& newer)
{
    std::unordered_set<std::uint32_t> known;
    for (const Step& step : older.steps)
        known.insert(rowOf(step));
    for (const Step& step : newer.steps)
        if (!known.contains(rowOf(step)))
            older.steps.push_back(step);
    return older;
}

} // namespace

bool isSo(const Job& job, const Change& change)
{
    const auto isStepSo = [&]<class Row>(const Put<Row>& put) {
        const Row* row = tableOf<Row>(job).find(put.id);
        return put.after ? row && *row == *put.after : !row;
    };
    return std::all_of(change.steps.begin(), change.steps.end(),
                       [&](const Step& step) { return std::visit(isStepSo, step); });
}

Edit::Edit(Words what, Language language, Change undo, int run, const Job& job, Apply apply)
    : QUndoCommand(QString::fromStdString(inWords(what, language))), what_(std::move(what)),
      next_(std::move(undo)), run_(run), job_(job), apply_(std::move(apply))
{
}

void Edit::undo()
{
    const Message undone{undoing, {{"what", what_}}};
    next_ = apply_(next_, {inWords(undone, Language::English), inWords(undone, Language::Spanish)});
}

void Edit::redo()
{
    if (std::exchange(isPushed_, true))
        next_ = apply_(next_, what_);
}

bool Edit::mergeWith(const QUndoCommand* newer)
{
    const auto& edit = static_cast<const Edit&>(*newer); // the history's commands are all of this class
    next_ = undoOfBoth(std::move(next_), edit.next_);
    what_ = edit.what_;
    setText(edit.text());
    setObsolete(isSo(job_, next_));
    return true;
}

} // namespace doorloom
