#include "bench/canvasfloor.h"

#include <QPaintDevice>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>

#include <unordered_map>

namespace doorloom::bench {

// A paint device that keeps what is painted on it.
class Recorder : public QPaintEngine, public QPaintDevice {
public:
    Recorder(PaintedPrimitives& kept, QSize size, double ratio)
        : QPaintEngine(AllFeatures), kept_(kept), size_(size), ratio_(ratio)
    {
    }

    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    Type type() const override { return User; }
    QPaintEngine* paintEngine() const override { return const_cast<Recorder*>(this); }

    void updateState(const QPaintEngineState& now) override
    {
        if (now.state() & DirtyTransform)
            transform_ = now.transform();
        if (now.state() & DirtyBrush)
            brush_ = now.brush().color();
        if (now.state() & DirtyPen)
            pen_ = now.pen().color();
        if (now.state() & DirtyFont)
            font_ = now.font();
    }
    void drawRects(const QRectF* rects, int count) override
    {
        for (int i = 0; i < count; ++i)
            add(PaintedPrimitives::Sort::Rectangle, kept_.rectangles_,
                {transform_.mapRect(rects[i]).toRect(), brush_});
    }
    void drawRects(const QRect* rects, int count) override
    {
        for (int i = 0; i < count; ++i)
            add(PaintedPrimitives::Sort::Rectangle, kept_.rectangles_,
                {transform_.mapRect(rects[i]), brush_});
    }
    void drawPath(const QPainterPath& path) override // fillRect comes as this on an engine of one's own
    {
        add(PaintedPrimitives::Sort::Rectangle, kept_.rectangles_,
            {transform_.mapRect(path.boundingRect()).toRect(), brush_});
    }
    void drawPolygon(const QPointF* points, int count, PolygonDrawMode) override
    {
        QPolygonF polygon;
        for (int i = 0; i < count; ++i)
            polygon << points[i];
        add(PaintedPrimitives::Sort::Rectangle, kept_.rectangles_,
            {transform_.mapRect(polygon.boundingRect()).toRect(), brush_});
    }
    void drawPixmap(const QRectF& rect, const QPixmap& pixmap, const QRectF&) override
    {
        add(PaintedPrimitives::Sort::Mark, kept_.marks_, {transform_.mapRect(rect).toRect(), pixmap});
    }
    void drawTextItem(const QPointF& at, const QTextItem& item) override
    {
        const auto [text, isNew] = texts_.try_emplace(item.text(), item.text());
        text->second.setTextFormat(Qt::PlainText);
        const QPointF top = transform_.map(at) - QPointF(0, item.ascent());
        add(PaintedPrimitives::Sort::Words, kept_.words_, {top, text->second, item.font(), pen_});
    }

protected:
    int metric(PaintDeviceMetric which) const override
    {
        switch (which) {
        case PdmWidth:
            return size_.width();
        case PdmHeight:
            return size_.height();
        case PdmDevicePixelRatio:
            return static_cast<int>(ratio_);
        case PdmDevicePixelRatioScaled:
            return static_cast<int>(ratio_ * devicePixelRatioFScale());
        case PdmDpiX:
        case PdmDpiY:
        case PdmPhysicalDpiX:
        case PdmPhysicalDpiY:
            return 96;
        default:
            return 0;
        }
    }

private:
    template <class List> void add(PaintedPrimitives::Sort sort, List& list, typename List::value_type one)
    {
        kept_.order_.push_back(sort);
        list.push_back(std::move(one));
    }

    PaintedPrimitives& kept_;
    QSize size_;
    double ratio_;
    QTransform transform_;
    QColor brush_, pen_;
    QFont font_;
    std::unordered_map<QString, QStaticText> texts_;
};

PaintedPrimitives PaintedPrimitives::of(QWidget& widget)
{
    PaintedPrimitives kept;
    Recorder recorder(kept, widget.size() * widget.devicePixelRatio(), widget.devicePixelRatioF());
    widget.render(&recorder, {}, {}, {});
    return kept;
}

void PaintedPrimitives::paint(QImage& image) const
{
    QPainter painter(&image);
    std::size_t rectangle = 0, words = 0, mark = 0;
    for (const Sort sort : order_) {
        switch (sort) {
        case Sort::Rectangle:
            painter.fillRect(rectangles_[rectangle].rect, rectangles_[rectangle].colour);
            ++rectangle;
            break;
        case Sort::Words:
            painter.setFont(words_[words].font);
            painter.setPen(words_[words].colour);
            painter.drawStaticText(words_[words].at, words_[words].text);
            ++words;
            break;
        case Sort::Mark:
            painter.drawPixmap(marks_[mark].rect.topLeft(), marks_[mark].pixmap);
            ++mark;
            break;
        }
    }
}

} // namespace doorloom::bench
