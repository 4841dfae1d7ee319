#include "dialogs/kinddialog.h"

#include "catalogue/kindjson.h"
#include "dialogs/kindtree.h"
#include "file/ownshelf.h"
#include "judge/kindtrial.h"
#include "openjob/shown.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QMessageBox>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>

#include <fmt/format.h>

#include <utility>

namespace doorloom {
namespace {

struct ReadKind {
    std::optional<Kind> kind; // nothing: there are problems
    std::vector<Problem> problems;
};

// "kind, line 3, parts[0].a" to "parts[0].a".
std::string pathIn(const std::string& where)
{
    const std::size_t comma = where.rfind(", ");
    const std::string path = comma == std::string::npos ? where : where.substr(comma + 2);
    return path.starts_with("line ") ? std::string() : path;
}

ReadKind readKindText(const std::string& text)
{
    const Result<Json> json = parseJson(text, "kind");
    if (!json.ok())
        return {std::nullopt, {json.problem()}};
    Result<Kind> kind = readKind(json.value(), "kind", "");
    if (!kind.ok()) {
        Problem problem = kind.problem();
        problem.where = pathIn(problem.where);
        return {std::nullopt, {std::move(problem)}};
    }
    std::vector<Problem> problems = checkKind(kind.value());
    if (!problems.empty())
        return {std::nullopt, std::move(problems)};
    return {std::move(kind.value()), {}};
}

QString positionInWords(const TrialPosition& position)
{
    QString words = shown(position.when) + "\n";
    for (const std::vector<std::string>& group : position.joined)
        words += KindDialog::tr("    joined: %1\n").arg(shown(fmt::format("{}", fmt::join(group, ", "))));
    for (const auto& [terminal, reads] : position.reads)
        words += KindDialog::tr("    %1: %2\n").arg(shown(terminal), shown(reads));
    return words;
}

} // namespace

KindDialog::KindDialog(Begin begin, QWidget* parent)
    : QDialog(parent), begin_(std::move(begin)), kind_(begin_.kind), tree_(new KindTree(this)),
      problems_(new QListWidget(this)), trial_(new QPlainTextEdit(this)),
      devices_(new QCheckBox(tr("Make the %n device(s) of this kind in the job ones of the changed kind",
                                nullptr, begin_.devices),
                             this)),
      add_(new QPushButton(tr("&Add an entry"), this)),
      addAlike_(new QPushButton(tr("Add one a&like"), this)),
      takeOut_(new QPushButton(tr("Take &out"), this)),
      write_(new QPushButton(tr("&Write to a file …"), this)),
      keep_(new QPushButton(tr("&Keep in the job and on the shelf"), this))
{
    setWindowTitle(tr("A kind, from the sheet in the box"));
    devices_->setObjectName("kindDevices");
    devices_->setVisible(begin_.devices > 0);
    auto* words =
        new QLabel(tr("Write down what the sheet in the box says, and leave empty what it does not. "
                      "What is bold must be there."),
                   this);
    words->setWordWrap(true);
    auto* halves = new QSplitter(this);
    halves->addWidget(form());
    halves->addWidget(side());
    halves->setStretchFactor(0, 3);
    halves->setStretchFactor(1, 2);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(words);
    layout->addWidget(halves, 1);
    layout->addWidget(devices_);
    layout->addWidget(buttons());
    resize(fontMetrics().averageCharWidth() * 150, fontMetrics().lineSpacing() * 40);

    connect(tree_, &KindTree::altered, this, &KindDialog::read);
    const auto refresh = [this] {
        add_->setEnabled(tree_->canAdd());
        addAlike_->setEnabled(tree_->canTakeOut());
        takeOut_->setEnabled(tree_->canTakeOut());
    };
    connect(tree_, &QTreeWidget::currentItemChanged, this, refresh);
    const auto goTo = [this](QListWidgetItem* item) {
        tree_->goTo(item->data(Qt::UserRole).toString().toStdString());
        tree_->setFocus();
    };
    connect(problems_, &QListWidget::itemActivated, this, goTo);
    connect(problems_, &QListWidget::itemClicked, this, goTo);
    refresh();
    const Result<Json> json = parseJson(kindText(begin_.kind), "kind");
    tree_->fill(json.value());
    begun_ = tree_->text();
}

QWidget* KindDialog::form()
{
    auto* form = new QWidget(this);
    auto* layout = new QVBoxLayout(form);
    layout->setContentsMargins({});
    layout->addWidget(tree_, 1);
    auto* entries = new QHBoxLayout; // of the list that is chosen
    layout->addLayout(entries);
    for (QPushButton* each : {add_, addAlike_, takeOut_}) {
        each->setAutoDefault(false); // Return ends the writing of a cell
        entries->addWidget(each);
    }
    entries->addStretch(1);
    return form;
}

QWidget* KindDialog::side()
{
    auto* side = new QWidget(this);
    problems_->setObjectName("kindProblems");
    problems_->setAccessibleName(tr("What the kind says against itself"));
    problems_->setWordWrap(true);
    trial_->setObjectName("kindTrial");
    trial_->setAccessibleName(tr("Tried in a small circuit"));
    trial_->setReadOnly(true);
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins({});
    layout->addWidget(new QLabel(tr("What it says against itself"), side));
    layout->addWidget(problems_, 1);
    layout->addWidget(new QLabel(tr("Tried in a small circuit"), side));
    layout->addWidget(trial_, 2);
    return side;
}

QWidget* KindDialog::buttons()
{
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    add_->setObjectName("kindAdd");
    addAlike_->setObjectName("kindAddAlike");
    takeOut_->setObjectName("kindTakeOut");
    write_->setObjectName("kindWrite");
    keep_->setObjectName("kindKeep");
    for (QPushButton* each : {write_, keep_, box->button(QDialogButtonBox::Cancel)})
        each->setAutoDefault(false);
    box->addButton(write_, QDialogButtonBox::ActionRole);
    box->addButton(keep_, QDialogButtonBox::AcceptRole);
    connect(add_, &QPushButton::clicked, tree_, &KindTree::add);
    connect(addAlike_, &QPushButton::clicked, tree_, &KindTree::addAlike);
    connect(takeOut_, &QPushButton::clicked, tree_, &KindTree::takeOut);
    connect(write_, &QPushButton::clicked, this, &KindDialog::write);
    connect(box, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    return box;
}

bool KindDialog::changesDevices() const
{
    return devices_->isChecked();
}

void KindDialog::read()
{
    ReadKind found = readKindText(tree_->text());
    if (found.kind) {
        kind_ = std::move(*found.kind);
        if (const std::optional<Problem> objection = begin_.objection(kind_))
            found.problems.push_back(*objection);
    }
    problems_->clear();
    std::vector<std::string> paths;
    for (Problem& problem : found.problems) {
        paths.push_back(problem.where);
        problem.where = tree_->wordsOf(problem.where).toStdString();
        auto* item = new QListWidgetItem(shown(problem), problems_);
        item->setData(Qt::UserRole, shown(paths.back()));
    }
    tree_->mark(paths);
    keep_->setEnabled(found.problems.empty());
    write_->setEnabled(found.kind.has_value());
    if (found.kind)
        showTrial();
    else
        trial_->setPlainText(tr("Nothing is tried while the kind contradicts itself."));
}

void KindDialog::showTrial()
{
    const KindTrial trial = kindTrial(kind_);
    QString words = tr("Fed: %1. Jumpers as from the factory.\n").arg(shown(trial.fed));
    for (const TrialPosition& position : trial.positions)
        words += "\n" + positionInWords(position);
    if (trial.cutShort)
        words += tr("\nThere are more throws, which were not tried.\n");
    trial_->setPlainText(words + tr("\nA trial of what is written here, not of the device in the box."));
}

void KindDialog::write()
{
    const QString to =
        QFileDialog::getSaveFileName(this, tr("Write the kind to"), shown(kind_.name) + ".json", "*.json");
    if (to.isEmpty())
        return;
    const Result<Done> written = writeKindFile(kind_, to.toStdString());
    if (written.ok())
        begun_ = tree_->text();
    else
        QMessageBox::warning(this, tr("The kind is not written"), shown(written.problem()));
}

void KindDialog::done(int result)
{
    tree_->setCurrentItem(nullptr); // ends the writing of a cell
    if (result == Accepted ? mayBeKept() : mayBeLetGo())
        QDialog::done(result);
}

bool KindDialog::mayBeKept()
{
    if (!keep_->isEnabled())
        return false;
    const Kind* other = begin_.replaced(kind_);
    return !other || isAnswered(tr("A kind of this name"),
                                tr("Your shelf has another kind '%1': %2. It would be replaced.")
                                    .arg(shown(other->name), shown(other->title)),
                                tr("&Replace it"), tr("&Back to the form"));
}

bool KindDialog::mayBeLetGo()
{
    return tree_->text() == begun_ ||
           isAnswered(tr("Nothing is kept yet"), tr("What you wrote in this form would be lost."),
                      tr("&Let it go"), tr("&Back to the form"));
}

bool KindDialog::isAnswered(const QString& title, const QString& question, const QString& doIt,
                            const QString& back)
{
    QMessageBox box(QMessageBox::Question, title, question, QMessageBox::NoButton, this);
    const QPushButton* yes = box.addButton(doIt, QMessageBox::DestructiveRole);
    QPushButton* no = box.addButton(back, QMessageBox::RejectRole);
    box.setDefaultButton(no);
    box.setEscapeButton(no);
    box.exec();
    return box.clickedButton() == yes;
}

} // namespace doorloom
