#include "dialogs/finddialog.h"

#include "edit/found.h"
#include "openjob/shown.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QVBoxLayout>

namespace doorloom {

FindDialog::FindDialog(const Job& job, QWidget* parent)
    : QDialog(parent), job_(job), letters_(new QLineEdit(this)), list_(new QListWidget(this))
{
    setWindowTitle(tr("Find"));
    letters_->setObjectName("findLetters");
    letters_->setAccessibleName(tr("A tag or words"));
    letters_->setPlaceholderText(tr("a tag or words: es1, W2.3, cabinet"));
    letters_->installEventFilter(this);
    list_->setObjectName("findList");
    list_->setAccessibleName(tr("Found"));
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(letters_);
    layout->addWidget(list_);
    resize(fontMetrics().averageCharWidth() * 60, fontMetrics().lineSpacing() * 18);
    connect(letters_, &QLineEdit::textChanged, this, &FindDialog::fill);
    connect(letters_, &QLineEdit::returnPressed, this, &QDialog::accept);
    connect(list_, &QListWidget::itemActivated, this, &QDialog::accept);
    connect(list_, &QListWidget::currentItemChanged, this, [this](QListWidgetItem* item) {
        if (item)
            emit chosen(item->data(Qt::UserRole).toUInt());
    });
}

void FindDialog::fill()
{
    list_->clear();
    for (const Found& each : found(job_, letters_->text().toStdString(), windowLanguage)) {
        auto* item = new QListWidgetItem(tr("%1   %2").arg(shown(each.tag), shown(each.words)), list_);
        item->setData(Qt::UserRole, each.row);
    }
    list_->setCurrentRow(0);
}

bool FindDialog::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == letters_ && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Down || key == Qt::Key_Up) {
            QCoreApplication::sendEvent(list_, event);
            return true;
        }
    }
    return QDialog::eventFilter(watched, event);
}

} // namespace doorloom
