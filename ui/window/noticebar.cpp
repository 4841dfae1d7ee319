#include "window/noticebar.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStyle>
#include <QToolButton>

namespace doorloom {

NoticeBar::NoticeBar(QWidget* parent) : QFrame(parent), label_(new QLabel(this))
{
    setObjectName("notice");
    setFrameShape(QFrame::StyledPanel);
    setAutoFillBackground(true);
    setBackgroundRole(QPalette::ToolTipBase);
    setForegroundRole(QPalette::ToolTipText);
    label_->setObjectName("noticeWords");
    label_->setWordWrap(true);
    label_->setForegroundRole(QPalette::ToolTipText);
    label_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* sign = new QLabel(this);
    const int size = fontMetrics().height();
    sign->setPixmap(style()->standardIcon(QStyle::SP_MessageBoxWarning).pixmap(size, size));
    auto* away = new QToolButton(this);
    away->setText(tr("Put away"));
    away->setAutoRaise(true);
    connect(away, &QToolButton::clicked, this, [this] { say({}); });
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(8, 4, 4, 4);
    layout->addWidget(sign);
    layout->addWidget(label_, 1);
    layout->addWidget(away);
    hide();
}

void NoticeBar::say(const QString& words)
{
    label_->setText(words);
    setVisible(!words.isEmpty());
    setAccessibleName(words);
    if (!words.isEmpty()) {
        QAccessibleEvent event(this, QAccessible::Alert);
        QAccessible::updateAccessibility(&event);
    }
}

QString NoticeBar::words() const
{
    return isHidden() ? QString() : label_->text();
}

} // namespace doorloom
