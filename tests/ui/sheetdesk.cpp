#include "ui/sheetdesk.h"

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
