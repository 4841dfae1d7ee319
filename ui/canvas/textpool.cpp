#include "canvas/textpool.h"

#include <QFontMetricsF>

#include <algorithm>

namespace doorloom {
namespace {

constexpr int measuredPixels = 64; // letters this high are measured, so that hinting does not matter

bool isBold(TextStyle style)
{
    return style == TextStyle::Tag || style == TextStyle::Place || style == TextStyle::Cable;
}

} // namespace

TextPool::TextPool(const QFont& font) : font_(font), entries_(1)
{
    font_.setHintingPreference(QFont::PreferNoHinting);
}

QFont TextPool::fontOf(TextStyle style, double pixelsHigh) const
{
    QFont font = font_;
    font.setPixelSize(std::max(1, qRound(pixelsHigh)));
    font.setBold(isBold(style));
    return font;
}

double TextPool::measured(const QString& words, TextStyle style) const
{
    const QFontMetricsF metrics(fontOf(style, measuredPixels));
    return metrics.horizontalAdvance(words) * heightOf(style) / measuredPixels;
}

TextNumber TextPool::put(const std::string& words, TextStyle style, int room)
{
    if (words.empty())
        return 0;
    auto& known = known_[static_cast<std::size_t>(style)];
    const auto [found, isNew] =
        known.try_emplace(room == 0 ? words : words + '\0' + std::to_string(room), 0u);
    if (!isNew)
        return found->second;
    QString shown = QString::fromStdString(words);
    if (room > 0 && measured(shown, style) > room) {
        const QFontMetricsF metrics(fontOf(style, measuredPixels));
        shown = metrics.elidedText(shown, Qt::ElideRight, double(room) * measuredPixels / heightOf(style));
    }
    Entry entry{QStaticText(shown), measured(shown, style)};
    entry.text.setTextFormat(Qt::PlainText);
    entry.text.setPerformanceHint(QStaticText::AggressiveCaching);
    entries_.push_back(std::move(entry));
    return found->second = static_cast<TextNumber>(entries_.size() - 1);
}

} // namespace doorloom
