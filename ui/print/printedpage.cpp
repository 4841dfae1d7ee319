#include "print/printedpage.h"

#include <QBuffer>
#include <QMarginsF>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>

#include <map>

namespace doorloom {
namespace {

QPageSize::PageSizeId idOf(SheetSize size)
{
    return size == SheetSize::A4 ? QPageSize::A4 : QPageSize::Letter;
}

class PagePainter {
public:
    PagePainter(QPainter& painter, const PaperFont& font) : painter_(painter), font_(font) {}

    void draw(const PrintedPage& page)
    {
        for (const Rule& rule : page.rules) {
            painter_.setPen(QPen(Qt::black, rule.width * units, Qt::SolidLine, Qt::FlatCap));
            painter_.drawLine(at(rule.x1, rule.y1), at(rule.x2, rule.y2));
        }
        painter_.setPen(Qt::black);
        for (const PlacedText& text : page.texts) {
            use(text.points, text.weight);
            painter_.drawText(at(text.x, text.baseline), text.text);
        }
    }

private:
    static constexpr double units = PaperFont::unitsPerPoint;
    static QPointF at(double x, double y) { return {x * units, y * units}; }

    void use(double points, Weight weight)
    {
        const auto wanted = std::pair(points, weight);
        if (current_ == wanted)
            return;
        current_ = wanted;
        auto known = fonts_.find(wanted);
        if (known == fonts_.end())
            known = fonts_.emplace(wanted, font_.at(points, weight)).first;
        painter_.setFont(known->second);
    }

    QPainter& painter_;
    const PaperFont& font_;
    std::map<std::pair<double, Weight>, QFont> fonts_;
    std::pair<double, Weight> current_{0, Weight::Plain};
};

} // namespace

PageSize landscapeOf(SheetSize size)
{
    const QSizeF portrait = QPageSize(idOf(size)).size(QPageSize::Point);
    return {portrait.height(), portrait.width()};
}

namespace {

QPageLayout fullPage(const QPageSize& size, QPageLayout::Orientation orientation)
{
    QPageLayout layout(size, orientation, QMarginsF(0, 0, 0, 0));
    layout.setMode(QPageLayout::FullPageMode);
    return layout;
}

} // namespace

QPageLayout layoutOf(SheetSize size)
{
    return fullPage(QPageSize(idOf(size)), QPageLayout::Landscape);
}

QPageLayout layoutOf(PageSize size)
{
    constexpr double millimetre = 72 / 25.4;
    const QPageSize page(QSizeF(size.width / millimetre, size.height / millimetre), QPageSize::Millimeter);
    return fullPage(page, QPageLayout::Portrait);
}

bool drawPages(const std::vector<PrintedPage>& pages, const PaperFont& font, QPagedPaintDevice& device)
{
    QPainter painter;
    if (!painter.begin(&device))
        return false;
    const double scale = device.logicalDpiX() / (72.0 * PaperFont::unitsPerPoint);
    painter.scale(scale, scale);
    PagePainter pagePainter(painter, font);
    for (const PrintedPage& page : pages) {
        if (&page != &pages.front() && !device.newPage())
            return false;
        pagePainter.draw(page);
    }
    return true;
}

std::string pdfOf(const std::vector<PrintedPage>& pages, const PaperFont& font, const QPageLayout& layout,
                  const QString& title)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(72 * PaperFont::unitsPerPoint);
        writer.setPageLayout(layout);
        writer.setTitle(title);
        writer.setCreator("Doorloom");
        drawPages(pages, font, writer);
    }
    return bytes.toStdString();
}

} // namespace doorloom
