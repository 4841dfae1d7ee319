#include "papers/naturalorder.h"

#include <algorithm>

namespace doorloom {
namespace {

bool isDigit(char letter)
{
    return letter >= '0' && letter <= '9';
}

// The digits at the front without leading zeros, however many there are; takes them off the text.
std::string_view takeNumber(std::string_view& text)
{
    const auto end =
        static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), isDigit) - text.begin());
    std::string_view number = text.substr(0, end);
    text.remove_prefix(end);
    number.remove_prefix(std::min(number.find_first_not_of('0'), number.size()));
    return number;
}

} // namespace

bool naturallyLess(std::string_view a, std::string_view b)
{
    std::string_view x = a, y = b;
    while (!x.empty() && !y.empty()) {
        if (isDigit(x.front()) && isDigit(y.front())) {
            const std::string_view one = takeNumber(x), other = takeNumber(y);
            if (one.size() != other.size())
                return one.size() < other.size();
            if (one != other)
                return one < other;
        } else {
            if (x.front() != y.front())
                return static_cast<unsigned char>(x.front()) < static_cast<unsigned char>(y.front());
            x.remove_prefix(1);
            y.remove_prefix(1);
        }
    }
    if (x.empty() != y.empty())
        return x.empty();
    return a < b; // '07' and '7'
}

} // namespace doorloom
