#include "ui/sheetdesk.h"

#include <QApplication>
#include <QWheelEvent>

#include <stdexcept>

namespace doorloom {

QPoint SheetDesk::head(const std::string& tag) const
{
    return view.rectOf(device(tag).number).topLeft() + QPoint(4, 4);
}

QPoint SheetDesk::terminal(const std::string& name) const
{
    const Landing landing = landingNamed(job(), name);
    return view.rectOf(landing.device.number, landing.terminal).center();
}

// The rings lie at the glands: the outermost points of what is drawn of the cable where its words are said.
QPoint SheetDesk::ring(CableId cable, WhichEnd which) const
{
    const QRect rect = view.rectOf(cable.number);
    const std::string words = "Cable " + job().cables.find(cable)->tag;
    const QPoint corner = which == WhichEnd::From ? rect.topLeft() : rect.bottomRight();
    const QPoint found = nearest(QPoint(corner.x(), rect.center().y()), words);
    return found;
}

QPoint SheetDesk::endOf(const std::string& terminal) const
{
    const Landing landing = landingNamed(job(), terminal);
    const QRect cell = view.rectOf(landing.device.number, landing.terminal);
    const QRect device = view.rectOf(landing.device.number);
    const bool right = cell.right() >= device.right() - 1;
    return {right ? cell.right() + 12 : cell.left() - 12, cell.center().y()};
}

QPoint SheetDesk::nearest(QPoint at, const std::string& words) const
{
    QPoint best;
    int least = 1 << 20;
    for (int y = at.y() - 60; y <= at.y() + 60; ++y)
        for (int x = at.x() - 60; x <= at.x() + 60; ++x) {
            const int far = (QPoint(x, y) - at).manhattanLength();
            if (far >= least)
                continue;
            const std::string said = wordsAt({x, y});
            if (words.empty() ? said.find(" wire ") != std::string::npos : said.rfind(words, 0) == 0) {
                best = {x, y};
                least = far;
            }
        }
    return best;
}

void SheetDesk::wheel(QPoint at, int turn, Qt::KeyboardModifiers keys)
{
    QWheelEvent event(QPointF(at), view.mapToGlobal(QPointF(at)), {}, {0, turn}, Qt::NoButton, keys,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(&view, &event);
}

QPoint SheetDesk::paper() const
{
    for (int y = view.height() - 3; y > 0; y -= 3)
        for (int x = view.width() - 3; x > 0; x -= 3)
            if (inWords(view.wordsAt({x, y})).empty())
                return {x, y};
    throw std::runtime_error("there is no bare paper in view");
}

void SheetDesk::drag(QPoint from, QPoint to)
{
    press(from);
    for (int step = 1; step <= 4; ++step)
        move(from + (to - from) * step / 4);
    release(to);
}

} // namespace doorloom
