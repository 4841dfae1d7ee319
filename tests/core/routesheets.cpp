#include "core/routesheets.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace doorloom::routing {
namespace {

constexpr double same = 0.05;
constexpr double ignored = 0.5; // shared stretches up to this

struct Piece {
    std::size_t connector;
    Spot from, to;

    bool isLevel() const { return std::abs(from.y - to.y) <= same; }
    bool isUpright() const { return std::abs(from.x - to.x) <= same; }
    double low() const { return isLevel() ? std::min(from.x, to.x) : std::min(from.y, to.y); }
    double high() const { return isLevel() ? std::max(from.x, to.x) : std::max(from.y, to.y); }
    double line() const { return isLevel() ? from.y : from.x; }
};

std::vector<Piece> piecesOf(const std::vector<Route>& routes)
{
    std::vector<Piece> pieces;
    for (std::size_t i = 0; i < routes.size(); ++i)
        for (std::size_t k = 1; k < routes[i].size(); ++k)
            if (!(routes[i][k - 1] == routes[i][k]))
                pieces.push_back({i, routes[i][k - 1], routes[i][k]});
    return pieces;
}

bool isInside(const Piece& piece, const Box& box)
{
    const double left = box.corner.x + same, right = box.corner.x + box.width - same;
    const double top = box.corner.y + same, bottom = box.corner.y + box.height - same;
    return std::max(piece.from.x, piece.to.x) > left && std::min(piece.from.x, piece.to.x) < right &&
           std::max(piece.from.y, piece.to.y) > top && std::min(piece.from.y, piece.to.y) < bottom;
}

bool leavesSquare(const Port& port, Spot next)
{
    const double dx = next.x - port.at.x, dy = next.y - port.at.y;
    switch (port.side) {
    case Side::Left:
        return dx < -same && std::abs(dy) <= same;
    case Side::Right:
        return dx > same && std::abs(dy) <= same;
    case Side::Top:
        return dy < -same && std::abs(dx) <= same;
    case Side::Bottom:
        return dy > same && std::abs(dx) <= same;
    }
    return false;
}

bool isOn(Spot spot, const Piece& piece)
{
    const double along = piece.isLevel() ? spot.x : spot.y, aside = piece.isLevel() ? spot.y : spot.x;
    return std::abs(aside - piece.line()) <= same && along >= piece.low() - same &&
           along <= piece.high() + same;
}

class Rules {
public:
    Rules(const Sheet& sheet, const std::vector<Route>& routes, double gap)
        : sheet_(sheet), routes_(routes), pieces_(piecesOf(routes)), gap_(gap)
    {
    }

    std::vector<std::string> broken()
    {
        for (std::size_t i = 0; i < routes_.size(); ++i)
            checkEnds(i);
        for (const Piece& piece : pieces_) {
            if (!piece.isLevel() && !piece.isUpright())
                say("oblique", piece.connector, piece.from);
            for (const Box& box : sheet_.boxes)
                if (isInside(piece, box))
                    say("through " + box.id, piece.connector, piece.from);
        }
        for (std::size_t i = 0; i < pieces_.size(); ++i)
            for (std::size_t k = i + 1; k < pieces_.size(); ++k)
                checkPair(pieces_[i], pieces_[k]);
        checkBends();
        return faults_;
    }

private:
    void say(const std::string& what, std::size_t connector, Spot at)
    {
        faults_.push_back(sheet_.connectors[connector].id + " " + what + " at " + std::to_string(at.x) + "," +
                          std::to_string(at.y));
    }
    void checkEnds(std::size_t i)
    {
        const Connector& connector = sheet_.connectors[i];
        const Port& from = sheet_.ports[static_cast<std::size_t>(connector.from)];
        const Port& to = sheet_.ports[static_cast<std::size_t>(connector.to)];
        const Route& route = routes_[i];
        if (route.size() < 2)
            return say("missing", i, from.at);
        if (!(route.front() == from.at) || !(route.back() == to.at))
            say("wrong end", i, from.at);
        if (from.at == to.at)
            return;
        if (!leavesSquare(from, route[1]) || !leavesSquare(to, route[route.size() - 2]))
            say("not square to the side", i, from.at);
    }
    void checkPair(const Piece& a, const Piece& b)
    {
        if (a.isLevel() != b.isLevel())
            return;
        const double shared = std::min(a.high(), b.high()) - std::max(a.low(), b.low());
        const double apart = std::abs(a.line() - b.line());
        if (shared <= ignored)
            return;
        if (apart <= same)
            say("on the line of " + sheet_.connectors[b.connector].id, a.connector, a.from);
        else if (a.connector != b.connector && apart < gap_ - same)
            say("too near " + sheet_.connectors[b.connector].id, a.connector, a.from);
    }
    void checkBends()
    {
        for (std::size_t i = 0; i < routes_.size(); ++i)
            for (std::size_t k = 1; k + 1 < routes_[i].size(); ++k)
                for (const Piece& piece : pieces_)
                    if (piece.connector != i && isOn(routes_[i][k], piece))
                        say("bends on " + sheet_.connectors[piece.connector].id, i, routes_[i][k]);
    }

    const Sheet& sheet_;
    const std::vector<Route>& routes_;
    std::vector<Piece> pieces_;
    double gap_;
    std::vector<std::string> faults_;
};

// What has room on the sides of a box.
struct Room {
    std::vector<std::pair<Side, double>> slots;
};

std::vector<Room> standBoxes(Sheet& sheet, Random& random, int boxes)
{
    std::vector<Room> rooms;
    const int columns = std::max(2, static_cast<int>(std::sqrt(1.5 * boxes)));
    for (int i = 0; i < boxes; ++i) {
        const int width = 10 * random.between(6, 12), height = 10 * random.between(5, 12);
        const Spot corner{260.0 * (i % columns) + 5 * random.between(0, (190 - width) / 5),
                          240.0 * (i / columns) + 5 * random.between(0, (170 - height) / 5)};
        sheet.boxes.push_back({"b" + std::to_string(i), corner, 1.0 * width, 1.0 * height});
        Room room;
        for (int at = 10; at < height; at += 10)
            for (Side side : {Side::Left, Side::Right})
                room.slots.emplace_back(side, at);
        for (int at = 10; at < width; at += 10)
            for (Side side : {Side::Top, Side::Bottom})
                room.slots.emplace_back(side, at);
        random.shuffle(room.slots);
        rooms.push_back(std::move(room));
    }
    return rooms;
}

int addPort(Sheet& sheet, int box, std::pair<Side, double> slot)
{
    const Box& on = sheet.boxes[static_cast<std::size_t>(box)];
    const auto [side, at] = slot;
    Spot spot = on.corner;
    const bool isUpright = side == Side::Left || side == Side::Right;
    spot.x += isUpright ? (side == Side::Right ? on.width : 0) : at;
    spot.y += isUpright ? at : (side == Side::Bottom ? on.height : 0);
    sheet.ports.push_back({"p" + std::to_string(sheet.ports.size()), box, side, spot});
    return static_cast<int>(sheet.ports.size()) - 1;
}

} // namespace

Sheet randomSheet(Random& random, int boxes, int connectors)
{
    Sheet sheet;
    std::vector<Room> rooms = standBoxes(sheet, random, boxes);
    for (int i = 0; i < connectors; ++i) {
        const int from = random.between(0, boxes - 1), to = random.between(0, boxes - 1);
        std::vector<std::pair<Side, double>>& slotsFrom = rooms[static_cast<std::size_t>(from)].slots;
        std::vector<std::pair<Side, double>>& slotsTo = rooms[static_cast<std::size_t>(to)].slots;
        if (from == to || slotsFrom.empty() || slotsTo.empty())
            continue;
        Connector connector{"c" + std::to_string(i), addPort(sheet, from, slotsFrom.back()), 0};
        connector.to = addPort(sheet, to, slotsTo.back());
        slotsFrom.pop_back();
        slotsTo.pop_back();
        sheet.connectors.push_back(connector);
    }
    return sheet;
}

template <class Row> std::vector<int> shuffleRows(std::vector<Row>& rows, Random& random)
{
    std::vector<int> order;
    for (std::size_t i = 0; i < rows.size(); ++i)
        order.push_back(static_cast<int>(i));
    random.shuffle(order);
    std::vector<Row> after;
    std::vector<int> newPlace(rows.size());
    for (int old : order) {
        newPlace[static_cast<std::size_t>(old)] = static_cast<int>(after.size());
        after.push_back(rows[static_cast<std::size_t>(old)]);
    }
    rows = std::move(after);
    return newPlace;
}

Sheet shuffled(const Sheet& sheet, Random& random)
{
    Sheet after = sheet;
    const std::vector<int> boxes = shuffleRows(after.boxes, random);
    for (Port& port : after.ports)
        port.box = boxes[static_cast<std::size_t>(port.box)];
    const std::vector<int> ports = shuffleRows(after.ports, random);
    for (Connector& connector : after.connectors) {
        connector.from = ports[static_cast<std::size_t>(connector.from)];
        connector.to = ports[static_cast<std::size_t>(connector.to)];
    }
    shuffleRows(after.connectors, random);
    return after;
}

Sheet shifted(Sheet sheet, Spot by)
{
    const auto shift = [&](Spot& spot) { spot = {spot.x + by.x, spot.y + by.y}; };
    for (Box& box : sheet.boxes)
        shift(box.corner);
    for (Port& port : sheet.ports)
        shift(port.at);
    return sheet;
}

void moveOn(Sheet& sheet, int box, Spot corner)
{
    Box& moved = sheet.boxes[static_cast<std::size_t>(box)];
    const Spot by{corner.x - moved.corner.x, corner.y - moved.corner.y};
    for (Port& port : sheet.ports)
        if (port.box == box)
            port.at = {port.at.x + by.x, port.at.y + by.y};
    moved.corner = corner;
}

std::vector<std::string> faultsOf(const Sheet& sheet, const std::vector<Route>& routes, double gap)
{
    return Rules(sheet, routes, gap).broken();
}

int crossingsOf(const std::vector<Route>& routes)
{
    const std::vector<Piece> pieces = piecesOf(routes);
    int crossings = 0;
    for (const Piece& level : pieces)
        for (const Piece& upright : pieces)
            crossings += level.isLevel() && upright.isUpright() && level.connector != upright.connector &&
                         upright.line() > level.low() + same && upright.line() < level.high() - same &&
                         level.line() > upright.low() + same && level.line() < upright.high() - same;
    return crossings;
}

double lengthRatio(const Sheet& sheet, const std::vector<Route>& routes)
{
    double length = 0, least = 0;
    for (const Piece& piece : piecesOf(routes))
        length += piece.high() - piece.low();
    for (const Connector& connector : sheet.connectors) {
        const Spot from = sheet.ports[static_cast<std::size_t>(connector.from)].at;
        const Spot to = sheet.ports[static_cast<std::size_t>(connector.to)].at;
        least += std::abs(from.x - to.x) + std::abs(from.y - to.y);
    }
    return least > 0 ? length / least : 1;
}

} // namespace doorloom::routing
