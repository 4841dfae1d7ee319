#include "panels/findingspanel.h"

#include "judge/findingtext.h"
#include "judge/report.h"
#include "openjob/shown.h"

#include <QGridLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSplitter>
#include <QTextBrowser>
#include <QVBoxLayout>

#include <algorithm>

namespace doorloom {
namespace {

// Wrapped lines have to be measured one by one: a longer list has one line for each, cut short at its end.
constexpr std::size_t mostWrapped = 500;

QString severityShown(Severity severity)
{
    return shown(severityWord(severity)).toUpper();
}

QString lineOf(const Job& job, const Finding& finding)
{
    QString line =
        FindingsPanel::tr("%1  %2: %3")
            .arg(severityShown(finding.severity), shown(atText(job, finding)), shown(titleOf(finding)));
    if (finding.undecided)
        line = FindingsPanel::tr("%1 (not proved and not excluded)").arg(line);
    if (setAsideFor(job, finding))
        line = FindingsPanel::tr("%1 (set aside)").arg(line);
    return line;
}

QString paragraph(const QString& head, const QString& words)
{
    return QStringLiteral("<p style=\"margin:0 0 6px 0\"><b>%1</b> %2</p>")
        .arg(head.toHtmlEscaped(), words.toHtmlEscaped());
}

QString pathShown(const Job& job, const Finding& finding)
{
    QStringList steps;
    for (const Origin& origin : pathForPeople(job, finding))
        steps << shown(originText(job, origin));
    return steps.join(QStringLiteral(" · "));
}

QString wordsOf(const Job& job, const Finding& finding)
{
    QString html = paragraph(FindingsPanel::tr("When:"), shown(inPosition(job, finding))) +
                   paragraph(FindingsPanel::tr("Why:"), shown(finding.why));
    if (finding.remedies.empty())
        html += paragraph(FindingsPanel::tr("To do:"), shown(finding.remedy));
    if (!finding.path.empty())
        html += paragraph(FindingsPanel::tr("Way:"), pathShown(job, finding));
    for (const Finding& line : finding.lines)
        html += paragraph(FindingsPanel::tr("Same cause:"),
                          FindingsPanel::tr("%1 (%2, %3): %4")
                              .arg(shown(titleOf(line)), shown(atText(job, line)),
                                   shown(inPosition(job, line)), shown(line.why)));
    if (const SetAside* aside = setAsideFor(job, finding))
        html += paragraph(FindingsPanel::tr("Set aside:"),
                          FindingsPanel::tr("%1, %2, %3")
                              .arg(shown(aside->reason), shown(aside->name), shown(aside->date)));
    return html;
}

QString summaryOf(const Judged& judged)
{
    const auto count = [&](Severity severity) {
        return std::count_if(judged.check.findings.begin(), judged.check.findings.end(),
                             [&](const Finding& finding) { return finding.severity == severity; });
    };
    QString words = judged.check.findings.empty()
                        ? FindingsPanel::tr("Nothing was found by the rules that there are.")
                        : FindingsPanel::tr("Dangers %1 · faults %2 · doubts %3 · hints %4")
                              .arg(count(Severity::Danger))
                              .arg(count(Severity::Fault))
                              .arg(count(Severity::Doubt))
                              .arg(count(Severity::Hint));
    if (!judged.check.everyQuestionAnswered)
        words += FindingsPanel::tr("\nSome questions were too large to answer.");
    return words;
}

// What was not looked at, and who decides: never hidden behind a clean list.
QString limitsOfChecks()
{
    QStringList notLookedAt, cautions;
    for (const Text& text : notExamined())
        notLookedAt << shown(text);
    for (const Text& text : checkCautions())
        cautions << shown(text);
    return paragraph(FindingsPanel::tr("Not examined:"), notLookedAt.join(QStringLiteral("; "))) +
           paragraph(FindingsPanel::tr("Cautions:"), cautions.join(QStringLiteral(" ")));
}

std::vector<std::uint32_t> rowsOf(const Finding& finding)
{
    std::vector<std::uint32_t> rows;
    for (const Spot& spot : finding.at)
        for (std::uint32_t number : {spot.device.number, spot.conductor.number, spot.cable.number})
            if (number != 0)
                rows.push_back(number);
    return rows;
}

std::string knownBy(const Job& job, const Finding& finding)
{
    return ruleOf(finding) + " " + atText(job, finding) + " " + throwsKey(job, finding);
}

} // namespace

FindingsPanel::FindingsPanel(OpenJob& open, Selection& selection, QWidget* parent)
    : QWidget(parent), open_(open), selection_(selection), summary_(new QLabel(this)),
      list_(new QListWidget(this)), words_(new QTextBrowser(this)), remedies_(new QWidget(this))
{
    summary_->setWordWrap(true);
    summary_->setObjectName("findingsSummary");
    summary_->setAccessibleName(tr("Summary of findings"));
    list_->setObjectName("findingsList");
    list_->setAccessibleName(tr("Findings"));
    list_->setWordWrap(true);
    list_->setUniformItemSizes(false);
    list_->setAlternatingRowColors(true);
    words_->setObjectName("findingWords");
    words_->setAccessibleName(tr("The finding in words"));
    words_->setFrameShape(QFrame::NoFrame);

    auto* below = new QWidget(this);
    below_ = new QVBoxLayout(below);
    below_->setContentsMargins({});
    below_->addWidget(words_, 1);

    auto* parts = new QSplitter(Qt::Vertical, this);
    parts->addWidget(list_);
    parts->addWidget(below);
    parts->setStretchFactor(0, 1);
    parts->setStretchFactor(1, 2);
    parts->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(6, 6, 6, 6);
    layout->addWidget(summary_);
    layout->addWidget(parts, 1);

    connect(&open_, &OpenJob::judgedChanged, this, &FindingsPanel::showJudged);
    connect(list_, &QListWidget::currentRowChanged, this, &FindingsPanel::showOnSheet);
    connect(list_, &QListWidget::itemActivated, this, &FindingsPanel::showOnSheet);
    showJudged();
}

void FindingsPanel::showJudged()
{
    const Judged* judged = open_.judged();
    const QSignalBlocker quiet(list_);
    list_->clear();
    summary_->setText(judged ? summaryOf(*judged) : tr("Looking at the job …"));
    if (judged)
        fill(judged->check.findings);
    showWords();
}

void FindingsPanel::fill(const std::vector<Finding>& findings)
{
    const Job& job = open_.job();
    const bool isLong = findings.size() > mostWrapped;
    list_->setWordWrap(!isLong);
    list_->setUniformItemSizes(isLong);
    QStringList lines;
    for (const Finding& finding : findings)
        lines << lineOf(job, finding);
    list_->addItems(lines);
    const auto isChosen = [&](const Finding& finding) { return knownBy(job, finding) == chosen_; };
    if (!chosen_.empty())
        if (const auto again = std::find_if(findings.begin(), findings.end(), isChosen);
            again != findings.end())
            list_->setCurrentRow(static_cast<int>(again - findings.begin()));
}

const Finding* FindingsPanel::current() const
{
    const Judged* judged = open_.judged();
    const int row = list_->currentRow();
    if (!judged || row < 0 || static_cast<std::size_t>(row) >= judged->check.findings.size())
        return nullptr;
    return &judged->check.findings[static_cast<std::size_t>(row)];
}

void FindingsPanel::showOnSheet()
{
    const Finding* finding = current();
    chosen_ = finding ? knownBy(open_.job(), *finding) : std::string();
    showWords();
    if (!finding)
        return;
    const std::vector<std::uint32_t> rows = rowsOf(*finding);
    selection_.choose(rows);
    emit jump(rows);
}

void FindingsPanel::showWords()
{
    delete remedies_;
    remedies_ = new QWidget(this);
    auto* layout = new QGridLayout(remedies_);
    layout->setContentsMargins({});
    layout->setColumnStretch(0, 1);
    below_->addWidget(remedies_);
    const Finding* finding = current();
    words_->setHtml(finding ? wordsOf(open_.job(), *finding) : limitsOfChecks());
    selection_.light(finding ? finding->path : std::vector<Origin>());
    if (finding)
        offerRemedies(*finding);
}

void FindingsPanel::offerRemedies(const Finding& finding)
{
    for (const Remedy& remedy : finding.remedies) {
        auto* words = new QLabel(shown(remedy.words), remedies_);
        words->setWordWrap(true);
        auto* button = new QPushButton(tr("Do it"), remedies_);
        button->setObjectName("doIt");
        button->setToolTip(tr("Changes the drawing so; it can be undone."));
        button->setAccessibleName(tr("Do it: %1").arg(words->text()));
        // The finding goes with the job that it was found in: words and change come along.
        connect(button, &QPushButton::clicked, this, [this, what = remedy.words, change = remedy.change] {
            if (const auto problem = open_.make(what, change))
                emit refused(*problem);
        });
        auto* layout = static_cast<QGridLayout*>(remedies_->layout());
        const int row = layout->rowCount();
        layout->addWidget(words, row, 0);
        layout->addWidget(button, row, 1, Qt::AlignTop);
    }
    if (finding.severity == Severity::Danger)
        return;
    auto* aside = new QPushButton(tr("Set aside …"), remedies_);
    aside->setToolTip(tr("With your reason, name and the date; it is printed on the sign-off."));
    connect(aside, &QPushButton::clicked, this, [this, finding] { emit setAsideAsked(finding); });
    auto* layout = static_cast<QGridLayout*>(remedies_->layout());
    layout->addWidget(aside, layout->rowCount(), 0, 1, 2);
}

void FindingsPanel::goTo(int steps)
{
    const int count = list_->count();
    if (count == 0)
        return;
    const int from = list_->currentRow() < 0 ? (steps > 0 ? -1 : 0) : list_->currentRow();
    list_->setCurrentRow(((from + steps) % count + count) % count);
}

} // namespace doorloom
