#include "print/labelpages.h"

#include "print/labeltext.h"
#include "print/offsetpage.h"
#include "print/papersheet.h"
#include "print/printwords.h"
#include "print/qr.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace doorloom {
namespace {

constexpr Text noSheet = {.en = "No label sheet is chosen.", .es = "No se eligió ninguna hoja de etiquetas."};
constexpr Text chooseSheet = {.en = "Choose a sheet or tape of labels.", .es = "Elija una hoja o cinta de etiquetas."};
constexpr Text noSuchLabel = {.en = "'{sheet}' has no label {start}.", .es = "'{sheet}' no tiene la etiqueta {start}."};
constexpr Text startFrom = {.en = "Start at a label from 1 to {count}.", .es = "Comience en una etiqueta de 1 a {count}."};
constexpr Text nothingToTag = {.en = "There is nothing to tag.", .es = "No hay nada que etiquetar."};
constexpr Text drawFirst = {.en = "Draw devices, cables or conductors first, or print all kinds of tags.",
                            .es = "Dibuje antes equipos, cables o hilos, o imprima todas las clases de etiquetas."};
constexpr Text tooLong = {.en = "'{text}' does not fit on a label of '{sheet}'.", .es = "'{text}' no cabe en una etiqueta de '{sheet}'."};
constexpr Text tooLongToo = {.en = "'{text}' does not fit on a label of '{sheet}', nor do {count} others.",
                             .es = "'{text}' no cabe en una etiqueta de '{sheet}', ni otros {count}."};
constexpr Text largerLabel = {.en = "Take a larger label or wider tape, or shorten that name.",
                              .es = "Use una etiqueta mayor o cinta más ancha, o acorte ese nombre."};
constexpr Text codeTooFine = {.en = "The code of '{text}' would be too fine to read on '{sheet}': with its white border it takes {side} mm.",
                              .es = "El código de '{text}' sería demasiado fino para leerlo en '{sheet}': con su borde blanco ocupa {side} mm."};
constexpr Text codeRound = {.en = "A code that is wrapped round a cable can't be read.", .es = "Un código envuelto en un cable no se puede leer."};
constexpr Text largerOrNone = {.en = "Take a larger label, or print without codes.", .es = "Use una etiqueta mayor, o imprima sin códigos."};
constexpr Text flagsOrNone = {.en = "Take plain or flag labels, or print without codes.",
                              .es = "Use etiquetas planas o banderolas, o imprima sin códigos."};

constexpr double endless = std::numeric_limits<double>::infinity();
constexpr double largestWrapped = 1, largestPlain = 1.5; // of the print that is wished for: a wrap label rather shows it again
constexpr double codeGap = 1.5;                            // points
constexpr double largestModule = 1.8 * leastModule, textShare = 0.45; // of the width is left to the text beside a code

// What goes on one label, both halves of a flag alike.
struct LabelFace {
    LabelText text;
    Qr code;
    double module = 0;
    double codeSide() const { return code.modules ? sideOf(code, module) + codeGap : 0; }
    double width() const { return codeSide() + text.width; }
};

class LabelMaker {
public:
    LabelMaker(const TagSheet& tags, const PaperFont& font, const LabelSetup& setup, Language language)
        : tags_(tags), font_(font), setup_(setup), sheet_(setup.sheet), language_(language)
    {
    }

    Result<LabelPages> pages()
    {
        if (const auto refused = whatIsAmiss())
            return *refused;
        std::vector<LabelFace> faces;
        for (const Tag& tag : tags_.tags)
            if (!setup_.only || tag.kind == *setup_.only)
                if (auto face = faceOf(tag))
                    faces.push_back(std::move(*face));
        if (!font_.lettersMissing().isEmpty())
            return lettersMissing(font_, tagsTitle);
        if (const auto refused = whatDidNotFit())
            return *refused;
        if (faces.empty())
            return Problem{nothingToTag, inWords(Message(tagsTitle)), drawFirst};
        return sheet_.tape ? onTape(faces) : onSheets(faces);
    }

private:
    std::optional<Problem> whatIsAmiss() const
    {
        const int count = labelsOn(sheet_);
        if (count < 1)
            return Problem{noSheet, inWords(Message(tagsTitle)), chooseSheet};
        if (setup_.start < 1 || setup_.start > count)
            return Problem{{noSuchLabel, {{"sheet", sheet_.name}, {"start", std::to_string(setup_.start)}}},
                           inWords(Message(tagsTitle)),
                           {startFrom, {{"count", std::to_string(count)}}}};
        if (setup_.withQr && sheet_.form == LabelForm::Wrap)
            return Problem{codeRound, sheet_.name, flagsOrNone};
        return std::nullopt;
    }

    std::optional<Problem> whatDidNotFit() const
    {
        const auto problem = [&](Text what, const Tag& tag, Text remedy) {
            return Problem{{what,
                            {{"text", inWords(tag.large, language_)},
                             {"sheet", sheet_.name},
                             {"count", std::to_string(tooLong_ - 1)},
                             {"side", std::to_string(static_cast<int>(std::ceil(neededSide_ / pointsIn(Millimetres{1}))))}}},
                           inWords(Message(tagsTitle)),
                           remedy};
        };
        if (firstTooLong_)
            return problem(tooLong_ > 1 ? tooLongToo : tooLong, *firstTooLong_, largerLabel);
        if (firstTooFine_)
            return problem(codeTooFine, *firstTooFine_, largerOrNone);
        return std::nullopt;
    }

    static double pointsIn(Millimetres length) { return length.value * 72 / 25.4; }

    // ---- What is written.

    bool isEndless() const { return sheet_.tape && sheet_.form != LabelForm::Wrap; }
    double margins() const { return 2 * pointsIn(sheet_.margin); }
    double fold() const { return pointsIn(sheet_.fold.value_or(Millimetres{0})); }

    // Of a face, within its margins.
    PageSize room() const
    {
        if (sheet_.tape)
            return sheet_.form == LabelForm::Wrap ? PageSize{pointsIn(*sheet_.tape) - margins(), endless}
                                                  : PageSize{endless, pointsIn(*sheet_.tape) - margins()};
        const double wide = sheet_.form == LabelForm::Flag ? (pointsIn(sheet_.label.width) - fold()) / 2 : pointsIn(sheet_.label.width);
        return {wide - margins(), pointsIn(sheet_.written.value_or(sheet_.label.height)) - margins()};
    }

    std::optional<LabelFace> faceOf(const Tag& tag)
    {
        LabelFace face;
        const PageSize whole = room();
        if (setup_.withQr && tag.kind != TagKind::ConductorEnd && !addCode(face, tag, whole))
            return std::nullopt;
        const double largest = sheet_.form == LabelForm::Wrap ? largestWrapped : largestPlain;
        auto text = fittedLabel(labelWords(tag, language_), font_, whole.width - face.codeSide(), whole.height, largest);
        if (!text) {
            ++tooLong_;
            firstTooLong_ = firstTooLong_ ? firstTooLong_ : &tag;
            return std::nullopt;
        }
        face.text = std::move(*text);
        return face;
    }

    bool addCode(LabelFace& face, const Tag& tag, PageSize whole)
    {
        face.code = qrOf(codeText(tag));
        const double room = std::min(whole.height, whole.width * (1 - textShare));
        const double units = std::floor(room * PaperFont::unitsPerPoint / (face.code.modules + 2 * quietModules));
        face.module = std::min(units / PaperFont::unitsPerPoint, largestModule);
        if (face.code.modules > 0 && face.module >= leastModule)
            return true;
        firstTooFine_ = firstTooFine_ ? firstTooFine_ : &tag;
        neededSide_ = std::max(neededSide_, sideOf(face.code, leastModule));
        return false;
    }

    std::string codeText(const Tag& tag) const
    {
        std::string text = inWords(tag.large, language_) + "\n" + inWords(tag.small, language_) + "\n";
        for (const std::string& each : {tags_.title.number, tags_.title.revision, tags_.title.digest})
            if (!each.empty())
                text += (text.back() == '\n' ? "" : " ") + each;
        return text;
    }

    // ---- Where it is.

    // A face in the middle of this strip.
    void putFace(PrintedPage& page, const LabelFace& face, double centre, double middle) const
    {
        const double left = centre - face.width() / 2;
        if (face.code.modules) {
            const double side = sideOf(face.code, face.module);
            putQr(page, face.code, face.module, left, middle - side / 2);
        }
        putLabelText(page, face.text, left + face.codeSide() + face.text.width / 2, middle);
    }

    void putLabel(PrintedPage& page, const LabelFace& face, double left, double top, PageSize label) const
    {
        const double middle = top + label.height / 2;
        if (sheet_.form == LabelForm::Flag) {
            const double half = (label.width - fold()) / 2;
            putFace(page, face, left + half / 2, middle);
            putFace(page, face, left + label.width - half / 2, middle);
        } else if (sheet_.form == LabelForm::Wrap) {
            putAgainAndAgain(page, face, left + label.width / 2, top, label.height);
        } else {
            putFace(page, face, left + label.width / 2, middle);
        }
    }

    // Seen from every side of what it is wrapped round.
    void putAgainAndAgain(PrintedPage& page, const LabelFace& face, double centre, double top, double height) const
    {
        const double each = wrapStep(face);
        const double times = std::max(1.0, std::floor((height - margins()) / each));
        for (int i = 0; i < static_cast<int>(times); ++i)
            putFace(page, face, centre, top + height * (i + 0.5) / times);
    }

    static double wrapStep(const LabelFace& face) { return face.text.height + 1.5 * face.text.lines.back().points; }

    Result<LabelPages> onSheets(const std::vector<LabelFace>& faces) const
    {
        const PageSize label{pointsIn(sheet_.label.width), pointsIn(sheet_.written.value_or(sheet_.label.height))};
        LabelPages all{{pointsIn(sheet_.page.width), pointsIn(sheet_.page.height)}, {}};
        for (std::size_t i = 0; i < faces.size(); ++i) {
            const PlacedLabel placed = placedLabel(sheet_, setup_.order, i + static_cast<std::size_t>(setup_.start - 1));
            all.pages.resize(placed.page + 1);
            putLabel(all.pages.back(), faces[i], pointsIn(placed.at.left + setup_.shift.across), pointsIn(placed.at.top + setup_.shift.down), label);
        }
        return all;
    }

    Result<LabelPages> onTape(const std::vector<LabelFace>& faces) const
    {
        const PageSize label = labelOfTape(faces);
        LabelPages all{label, {}};
        for (const LabelFace& face : faces)
            putLabel(all.pages.emplace_back(), face, 0, 0, label);
        return all;
    }

    // As long as the longest must be, in whole millimetres.
    PageSize labelOfTape(const std::vector<LabelFace>& faces) const
    {
        double longest = 0;
        for (const LabelFace& face : faces)
            longest = std::max(longest, isEndless() ? face.width() : 2 * wrapStep(face));
        longest += margins();
        if (sheet_.form == LabelForm::Flag)
            longest = 2 * longest + fold();
        const double length = pointsIn(Millimetres{std::ceil(longest * 25.4 / 72)}), tape = pointsIn(*sheet_.tape);
        return isEndless() ? PageSize{length, tape} : PageSize{tape, length};
    }

    const TagSheet& tags_;
    const PaperFont& font_;
    const LabelSetup& setup_;
    const LabelSheet& sheet_;
    Language language_;
    int tooLong_ = 0;
    const Tag *firstTooLong_ = nullptr, *firstTooFine_ = nullptr;
    double neededSide_ = 0;
};

} // namespace

Result<LabelPages> labelPages(const TagSheet& tags, const PaperFont& font, const LabelSetup& setup, Language language)
{
    if (setup.offsetPage)
        return offsetPages(font, setup, language);
    return LabelMaker(tags, font, setup, language).pages();
}

} // namespace doorloom
