#pragma once

#include "edit/change.h"

#include <QUndoCommand>

#include <functional>

namespace doorloom {

// Whether every row is already as the change puts it.
bool isSo(const Job& job, const Change& change);

// One step of the history. Its redo and undo are the same line: what applying gives back is the way back.
class Edit final : public QUndoCommand {
public:
    using Apply = std::function<Change(const Change&, const Words& what)>;

    // In: what:  the edit made already, in words
    //     undo:  how to undo it
    //     run:   edits of one run become one step, or none when they come to nothing; -1: of no run
    //     job:   the one that was edited; it stays where it is
    Edit(Words what, Language language, Change undo, int run, const Job& job, Apply apply);

    void undo() override;
    void redo() override; // the first is none: it has been made
    int id() const override { return run_; }
    bool mergeWith(const QUndoCommand* newer) override;

private:
    Words what_;
    Change next_;
    int run_;
    bool isPushed_ = false;
    const Job& job_;
    Apply apply_;
};

} // namespace doorloom
