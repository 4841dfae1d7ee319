#pragma once

#include "graph/netlist.h"
#include "model/job.h"

#include <QObject>

#include <cstdint>
#include <vector>

namespace doorloom {

// What the user has chosen, and what is lit for them: one for a window, shared by its sheet and panels.
// Rows are the job's own numbers, of devices, splices, conductors, cables and notes. The window forgets rows
// that a change has taken out of the job.
class Selection : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;

    const std::vector<std::uint32_t>& rows() const { return rows_; } // sorted, each once
    bool holds(std::uint32_t number) const;
    void choose(std::vector<std::uint32_t> rows);
    void toggle(std::uint32_t number);

    // The way that a finding takes, pole to pole; empty: nothing is lit.
    const std::vector<Origin>& lit() const { return lit_; }
    void light(std::vector<Origin> path);

signals:
    void changed(); // once for a choice that is another one
    void litChanged();

private:
    std::vector<std::uint32_t> rows_;
    std::vector<Origin> lit_;
};

} // namespace doorloom
