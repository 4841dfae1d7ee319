#pragma once

#include "sheet/stripshape.h"

#include <QFont>
#include <QStaticText>

#include <array>
#include <string>
#include <unordered_map>
#include <vector>

namespace doorloom {

constexpr std::size_t textStyles = static_cast<std::size_t>(TextStyle::Reference) + 1;

// Words ready to be drawn: number 0 is no words. Equal words in one style are laid out once.
using TextNumber = std::uint32_t;

class TextPool {
public:
    explicit TextPool(const QFont& font);

    // In: room, in tenths of a millimetre; words that are wider end in '…'. 0: as wide as they are.
    TextNumber put(const std::string& words, TextStyle style, int room = 0);

    const QStaticText& text(TextNumber number) const { return entries_[number].text; }
    double width(TextNumber number) const { return entries_[number].width; } // in tenths of a millimetre
    QFont fontOf(TextStyle style, double pixelsHigh) const;

private:
    struct Entry {
        QStaticText text;
        double width = 0;
    };
    double measured(const QString& words, TextStyle style) const;

    QFont font_;
    std::vector<Entry> entries_;
    std::array<std::unordered_map<std::string, TextNumber>, textStyles> known_; // by words and room
};

} // namespace doorloom
