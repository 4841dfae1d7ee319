#include "panels/findingsmodel.h"

#include "judge/findingtext.h"
#include "judge/report.h"
#include "openjob/shown.h"

namespace doorloom {
namespace {

QString linesOf(const Job& job, const Finding& finding)
{
    QString lines = FindingsModel::tr("%1  %2\n%3")
                        .arg(shown(severityWord(finding.severity)).toUpper(), shown(atText(job, finding)),
                             shown(titleOf(finding)));
    if (finding.undecided)
        lines = FindingsModel::tr("%1 (not proved and not excluded)").arg(lines);
    if (setAsideFor(job, finding))
        lines = FindingsModel::tr("%1 (set aside)").arg(lines);
    return lines;
}

} // namespace

void FindingsModel::show(const Job& job, const std::vector<Finding>& findings)
{
    beginResetModel();
    job_ = &job;
    findings_ = &findings;
    endResetModel();
}

void FindingsModel::clear()
{
    beginResetModel();
    findings_ = nullptr;
    endResetModel();
}

const Finding* FindingsModel::at(int row) const
{
    return row < 0 || row >= rowCount() ? nullptr : &(*findings_)[static_cast<std::size_t>(row)];
}

int FindingsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() || !findings_ ? 0 : static_cast<int>(findings_->size());
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const
{
    const Finding* finding = at(index.row());
    const bool isWords = role == Qt::DisplayRole || role == Qt::ToolTipRole;
    return finding && isWords ? QVariant(linesOf(*job_, *finding)) : QVariant();
}

} // namespace doorloom
