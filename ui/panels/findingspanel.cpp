#include "panels/findingspanel.h"

#include "judge/findingtext.h"
#include "judge/report.h"
#include "openjob/shown.h"
#include "panels/findingsmodel.h"

#include <QGridLayout>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QTextBrowser>
#include <QVBoxLayout>

#include <algorithm>

namespace doorloom {
namespace {

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
    QString html = paragraph(shown(titleOf(finding)), {}) +
                   paragraph(FindingsPanel::tr("When:"), shown(inPosition(job, finding))) +
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

// As high as its words are where there is room, and a few lines to scroll in where there is not.
class WholeOrScrolled : public QScrollArea {
public:
    explicit WholeOrScrolled(QWidget* parent) : QScrollArea(parent)
    {
        setFrameShape(QFrame::NoFrame);
        setWidgetResizable(true);
        setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
        policy.setHeightForWidth(true);
        setSizePolicy(policy);
    }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override
    {
        const QLayout* inside = widget() ? widget()->layout() : nullptr;
        return !inside || inside->isEmpty() ? 0 : inside->hasHeightForWidth() ? inside->heightForWidth(width) : inside->sizeHint().height();
    }
    QSize sizeHint() const override { return {QScrollArea::sizeHint().width(), heightForWidth(width())}; }
    QSize minimumSizeHint() const override
    {
        return {QScrollArea::minimumSizeHint().width(), std::min(heightForWidth(width()), 3 * fontMetrics().lineSpacing())};
    }
};

bool isSame(const Job& job, const Finding& a, const Finding& b)
{
    return a.at == b.at && ruleOf(a) == ruleOf(b) && throwsKey(job, a) == throwsKey(job, b);
}

} // namespace

FindingsPanel::FindingsPanel(OpenJob& open, Selection& selection, QWidget* parent)
    : QWidget(parent), open_(open), selection_(selection), summary_(new QLabel(this)),
      model_(new FindingsModel(this)), list_(new QListView(this)), words_(new QTextBrowser(this)),
      offers_(new WholeOrScrolled(this))
{
    summary_->setWordWrap(true);
    summary_->setObjectName("findingsSummary");
    summary_->setAccessibleName(tr("Summary of findings"));
    list_->setObjectName("findingsList");
    list_->setAccessibleName(tr("Findings"));
    list_->setModel(model_);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff); // the words below are whole
    list_->setUniformItemSizes(true); // two lines each: none has to be measured
    list_->setAlternatingRowColors(true);
    words_->setObjectName("findingWords");
    words_->setAccessibleName(tr("The finding in words"));
    words_->setFrameShape(QFrame::NoFrame);
    list_->setMinimumHeight(4 * fontMetrics().lineSpacing()); // two findings, where the scale leaves no more
    words_->setMinimumHeight(3 * fontMetrics().lineSpacing());

    auto* below = new QWidget(this);
    auto* layoutBelow = new QVBoxLayout(below);
    layoutBelow->setContentsMargins({});
    layoutBelow->addWidget(words_, 1);
    layoutBelow->addWidget(offers_);

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
    connect(list_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this] {
        if (!isShowing_)
            showOnSheet();
    });
    connect(list_, &QListView::activated, this, &FindingsPanel::showOnSheet);
    showJudged();
}

void FindingsPanel::showJudged()
{
    const Judged* judged = open_.judged();
    isShowing_ = true;
    summary_->setText(judged ? summaryOf(*judged) : tr("Looking at the job …"));
    if (judged)
        model_->show(open_.job(), judged->check.findings);
    else
        model_->clear();
    chooseAgain();
    isShowing_ = false;
    showWords();
}

void FindingsPanel::chooseAgain()
{
    for (int row = 0; chosen_ && row < model_->rowCount(); ++row)
        if (isSame(open_.job(), *model_->at(row), *chosen_))
            list_->setCurrentIndex(model_->index(row));
}

int FindingsPanel::row() const
{
    return list_->currentIndex().row();
}

const Finding* FindingsPanel::current() const
{
    return model_->at(row());
}

void FindingsPanel::showOnSheet()
{
    const Finding* finding = current();
    chosen_ = finding ? std::optional(*finding) : std::nullopt;
    showWords();
    if (!finding)
        return;
    const std::vector<std::uint32_t> rows = rowsOf(*finding);
    selection_.choose(rows);
    emit jump(rows);
}

void FindingsPanel::showWords()
{
    remedies_ = new QWidget;
    auto* layout = new QGridLayout(remedies_);
    layout->setContentsMargins({});
    layout->setColumnStretch(0, 1);
    const Finding* finding = current();
    words_->setHtml(finding ? wordsOf(open_.job(), *finding) : limitsOfChecks());
    selection_.light(finding ? finding->path : std::vector<Origin>());
    if (finding)
        offerRemedies(*finding);
    offers_->setWidget(remedies_); // those before go
    offers_->updateGeometry();
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
    const int count = model_->rowCount();
    if (count == 0)
        return;
    const int from = row() < 0 ? (steps > 0 ? -1 : 0) : row();
    list_->setCurrentIndex(model_->index(((from + steps) % count + count) % count));
}

} // namespace doorloom
