#include "print/offsetpage.h"

#include "print/printwords.h"

#include <fmt/format.h>

#include <cmath>

namespace doorloom {
namespace {

constexpr Text noTape = {.en = "A tape has no offset page.", .es = "Una cinta no tiene hoja de ajuste."};
constexpr Text takeSheet = {.en = "Choose a sheet of labels.", .es = "Elija una hoja de etiquetas."};
constexpr Text heading = {.en = "Where does this printer print? {sheet}", .es = "¿Dónde imprime esta impresora? {sheet}"};
constexpr Text lines[] = {
    {.en = "Printed at full size ('actual size', 100 %), on plain paper of the labels' size.",
     .es = "Impresa a tamaño real ('tamaño real', 100 %), en papel común del tamaño de las etiquetas."},
    {.en = "1. Measure from the LEFT edge of the paper to the upright line. True: {true} mm. Measured: ______ mm",
     .es = "1. Mida desde el borde IZQUIERDO del papel hasta la línea vertical. Exacto: {true} mm. Medido: ______ mm"},
    {.en = "2. Measure from the UPPER edge of the paper to the level line. True: {true} mm. Measured: ______ mm",
     .es = "2. Mida desde el borde SUPERIOR del papel hasta la línea horizontal. Exacto: {true} mm. Medido: ______ mm"},
    {.en = "3. Enter both where the tags are printed. Entered so far: {across} mm and {down} mm.",
     .es = "3. Anote ambas donde se imprimen las etiquetas. Anotado hasta ahora: {across} mm y {down} mm."},
    {.en = "4. The bar below is 100 mm long. If it is not, the page was scaled: print it again at full size.",
     .es = "4. La barra de abajo mide 100 mm. Si no, la hoja se escaló: imprímala otra vez a tamaño real."},
    {.en = "5. Hold the next page and a sheet of labels in front of a light: the outlines should lie on the labels.",
     .es = "5. Ponga la hoja siguiente y una de etiquetas a contraluz: los contornos deben caer sobre las etiquetas."},
};

constexpr double print = 9, headingPrint = 14, hair = 0.35, line = 0.6;

double pointsIn(Millimetres length)
{
    return length.value * 72 / 25.4;
}

PrintedPage measuringPage(const PaperFont& font, const LabelSetup& setup, Language language)
{
    PrintedPage page;
    const double width = pointsIn(setup.sheet.page.width), height = pointsIn(setup.sheet.page.height);
    const double x = pointsIn(offsetLines), y = x;
    page.rules.push_back({x, 0, x, height, line});
    page.rules.push_back({0, y, width, y, line});
    const double left = x + 12, room = width - left - 20;
    double baseline = y + 30;
    page.texts.push_back({left, baseline, headingPrint, Weight::Bold, printWords({heading, {{"sheet", setup.sheet.words}}}, language)});
    baseline += 12;
    for (const Text& each : lines) {
        const Message words{each,
                            {{"true", fmt::format("{:g}", offsetLines.value)},
                             {"across", fmt::format("{:.1f}", (offsetLines - setup.shift.across).value)},
                             {"down", fmt::format("{:.1f}", (offsetLines - setup.shift.down).value)}}};
        baseline += 6;
        for (const QString& text : wrapped(font, printWords(words, language), print, Weight::Plain, room)) {
            baseline += 12;
            page.texts.push_back({left, baseline, print, Weight::Plain, text});
        }
    }
    baseline += 30;
    const double bar = pointsIn(Millimetres{100});
    page.rules.push_back({left, baseline, left + bar, baseline, line});
    for (const double end : {left, left + bar})
        page.rules.push_back({end, baseline - 8, end, baseline + 8, line});
    return page;
}

PrintedPage outlines(const PaperFont& font, const LabelSetup& setup)
{
    PrintedPage page;
    for (int number = 0; number < labelsOn(setup.sheet); ++number) {
        const LabelSpot at = placedLabel(setup.sheet, setup.order, static_cast<std::size_t>(number)).at;
        const double left = pointsIn(at.left + setup.shift.across), top = pointsIn(at.top + setup.shift.down);
        const double right = left + pointsIn(setup.sheet.label.width), foot = top + pointsIn(setup.sheet.label.height);
        page.rules.insert(page.rules.end(), {{left, top, right, top, hair}, {left, foot, right, foot, hair}, {left, top, left, foot, hair}, {right, top, right, foot, hair}});
        const QString count = QString::number(number + 1);
        page.texts.push_back({(left + right - font.widthOf(count, print, Weight::Plain)) / 2, (top + foot) / 2 + print / 3, print, Weight::Plain, count});
    }
    return page;
}

} // namespace

std::optional<Pitch> shiftFor(Millimetres measuredFromLeft, Millimetres measuredFromTop)
{
    const Pitch shift{offsetLines - measuredFromLeft, offsetLines - measuredFromTop};
    const bool isPossible = std::abs(shift.across.value) <= mostShift.value && std::abs(shift.down.value) <= mostShift.value;
    return isPossible ? std::optional(shift) : std::nullopt;
}

Result<LabelPages> offsetPages(const PaperFont& font, const LabelSetup& setup, Language language)
{
    if (setup.sheet.tape || labelsOn(setup.sheet) < 1)
        return Problem{noTape, setup.sheet.name, takeSheet};
    return LabelPages{{pointsIn(setup.sheet.page.width), pointsIn(setup.sheet.page.height)},
                      {measuringPage(font, setup, language), outlines(font, setup)}};
}

} // namespace doorloom
