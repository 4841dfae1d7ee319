#pragma once

#include <QStringList>
#include <QWidget>

namespace doorloom {

// A jumper as it is on the board: pins in a row, every position named, the shunt over two of them. A click or
// the arrow keys move it. While it is not chosen the shunt lies beside the pins.
class JumperPicture : public QWidget {
    Q_OBJECT
public:
    // In: the positions in order, and which one it stands at; -1: not chosen
    JumperPicture(const QString& name, const QStringList& positions, int position, QWidget* parent = nullptr);

    int position() const { return position_; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void moved(int position);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void moveTo(int position);
    int pitch() const;
    QRect headerFor(int width) const; // the pins, under words that wrap
    QRect header() const { return headerFor(width()); }

    QString name_;
    QStringList positions_;
    int position_;
};

} // namespace doorloom
