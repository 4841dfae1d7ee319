#include "panels/jumperpicture.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace doorloom {

JumperPicture::JumperPicture(const QString& name, const QStringList& positions, int position, QWidget* parent)
    : QWidget(parent), name_(name), positions_(positions), position_(position)
{
    setFocusPolicy(Qt::StrongFocus);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setCursor(Qt::PointingHandCursor);
    setAccessibleName(position < 0 ? tr("%1: not chosen yet").arg(name)
                                   : tr("%1: at %2").arg(name, positions[position]));
    setToolTip(tr("Click a position, or use the arrow keys. Set jumpers with the power off."));
}

int JumperPicture::pitch() const
{
    int widest = fontMetrics().height() * 2;
    for (const QString& each : positions_)
        widest =
            std::max(widest, fontMetrics().horizontalAdvance(each) + fontMetrics().averageCharWidth() * 2);
    return widest;
}

QRect JumperPicture::headerFor(int width) const
{
    const int high = fontMetrics().height() + 4;
    const int room = std::max(width - 4, pitch());
    const QRect words = fontMetrics().boundingRect(QRect(0, 0, room, 1000), Qt::TextWordWrap, name_);
    return {2, words.height() + 4, pitch() * static_cast<int>(positions_.size() + 1), high};
}

int JumperPicture::heightForWidth(int width) const
{
    return headerFor(width).bottom() + fontMetrics().height() + 6;
}

QSize JumperPicture::sizeHint() const
{
    return {header().right() + 3, header().bottom() + fontMetrics().height() + 6};
}

void JumperPicture::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPalette colours = palette();
    painter.setPen(colours.color(QPalette::WindowText));
    painter.drawText(QRect(2, 0, width() - 4, header().top()), Qt::TextWordWrap, name_);

    const QRect pins = header();
    const int high = pins.height();
    const auto pin = [&](int number) {
        return QPoint(pins.left() + pitch() / 2 + number * pitch(), pins.center().y());
    };
    painter.setPen(QPen(colours.color(QPalette::Mid), 1));
    painter.setBrush(colours.color(QPalette::Base));
    painter.drawRoundedRect(QRectF(pins).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);

    if (position_ >= 0) { // the shunt, over two pins
        painter.setBrush(colours.color(QPalette::WindowText));
        painter.setPen(Qt::NoPen);
        const QRect shunt(pin(position_) - QPoint(high / 2 - 2, high / 2 - 2),
                          pin(position_ + 1) + QPoint(high / 2 - 3, high / 2 - 3));
        painter.drawRoundedRect(shunt, 3, 3);
    }
    painter.setPen(QPen(colours.color(QPalette::WindowText), 1.5));
    for (int number = 0; number <= positions_.size(); ++number) {
        const bool covered = position_ >= 0 && (number == position_ || number == position_ + 1);
        painter.setBrush(covered ? colours.color(QPalette::Base) : colours.color(QPalette::WindowText));
        painter.drawRect(QRect(pin(number) - QPoint(2, 2), QSize(5, 5)));
    }
    for (int position = 0; position < positions_.size(); ++position) {
        QFont font = painter.font();
        font.setBold(position == position_);
        painter.setFont(font);
        painter.setPen(colours.color(QPalette::WindowText));
        const QRect words((pin(position).x() + pin(position + 1).x()) / 2 - pitch() / 2, pins.bottom() + 2,
                          pitch(), fontMetrics().height() + 2);
        painter.drawText(words, Qt::AlignCenter, positions_[position]);
    }
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(colours.color(QPalette::Highlight), 2));
        painter.drawRoundedRect(QRectF(pins).adjusted(-0.5, -0.5, 0.5, 0.5), 4, 4);
    }
}

void JumperPicture::moveTo(int position)
{
    position = std::clamp(position, 0, static_cast<int>(positions_.size()) - 1);
    if (position != position_)
        emit moved(position);
}

void JumperPicture::mousePressEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton)
        moveTo((event->pos().x() - header().left() - pitch() / 2) / pitch());
}

void JumperPicture::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Left)
        moveTo(position_ - 1);
    else if (event->key() == Qt::Key_Right || event->key() == Qt::Key_Space)
        moveTo(position_ + 1);
    else
        QWidget::keyPressEvent(event);
}

void JumperPicture::focusInEvent(QFocusEvent*)
{
    update();
}

void JumperPicture::focusOutEvent(QFocusEvent*)
{
    update();
}

} // namespace doorloom
