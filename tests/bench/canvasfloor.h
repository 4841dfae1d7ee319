#pragma once

#include <QFont>
#include <QPixmap>
#include <QStaticText>
#include <QWidget>

#include <vector>

namespace doorloom::bench {

// What a widget paints, as flat arrays: the same rectangles, words and marks without anything around them.
// Painting these with a bare QPainter is the least that the picture can cost.
class PaintedPrimitives {
public:
    // Of the whole widget as it is now, in device pixels.
    static PaintedPrimitives of(QWidget& widget);

    void paint(QImage& image) const;
    std::size_t count() const { return order_.size(); }

private:
    friend class Recorder;
    enum class Sort : unsigned char { Rectangle, Words, Mark };
    struct Rectangle {
        QRect rect;
        QColor colour;
    };
    struct Words {
        QPointF at;
        QStaticText text;
        QFont font;
        QColor colour;
    };
    struct Mark {
        QRect rect;
        QPixmap pixmap;
    };
    std::vector<Sort> order_;
    std::vector<Rectangle> rectangles_;
    std::vector<Words> words_;
    std::vector<Mark> marks_;
};

} // namespace doorloom::bench
