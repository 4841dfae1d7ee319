#include "papers/labelsheet.h"

#include "base/jsonfiles.h"
#include "catalogue/kindshape.h"

#include <algorithm>

namespace doorloom {

template <> inline constexpr auto wordsOf<LabelForm> = std::to_array<std::string_view>({"plain", "wrap", "flag"});
template <> inline constexpr auto shapeOf<Extent> = std::tuple(must("width", &Extent::width), must("height", &Extent::height));
template <> inline constexpr auto shapeOf<LabelSpot> = std::tuple(must("left", &LabelSpot::left), must("top", &LabelSpot::top));
template <> inline constexpr auto shapeOf<Pitch> = std::tuple(must("across", &Pitch::across), must("down", &Pitch::down));
template <> inline constexpr auto shapeOf<LabelCount> = std::tuple(must("across", &LabelCount::across), must("down", &LabelCount::down));
template <> inline constexpr auto shapeOf<LabelSheet> =
    std::tuple(must("name", &LabelSheet::name), must("words", &LabelSheet::words), may("form", &LabelSheet::form), may("page", &LabelSheet::page),
               may("first", &LabelSheet::first), may("pitch", &LabelSheet::pitch), may("count", &LabelSheet::count), may("label", &LabelSheet::label),
               may("tape", &LabelSheet::tape), must("margin", &LabelSheet::margin), may("written", &LabelSheet::written), may("fold", &LabelSheet::fold));

namespace {

constexpr Text noFolder = {.en = "The folder of label sheets cannot be read: {reason}.",
                           .es = "No se puede leer la carpeta de hojas de etiquetas: {reason}."};
constexpr Text putItBack = {.en = "Put the program's folder resources/labels back as it came.",
                            .es = "Restaure la carpeta resources/labels del programa."};
constexpr Text otherName = {.en = "The label sheet '{name}' does not bear its file's name.",
                            .es = "La hoja de etiquetas '{name}' no lleva el nombre de su archivo."};
constexpr Text renameFile = {.en = "Call the file {name}.json, or the sheet as the file.",
                             .es = "Llame al archivo {name}.json, o a la hoja como el archivo."};

constexpr Text wrongMargin = {.en = "'margin' leaves nothing of a label to write on.",
                              .es = "'margin' no deja nada de la etiqueta para escribir."};
constexpr Text wrongTape = {.en = "'tape' is no width from 3 to 100 mm.", .es = "'tape' no es un ancho de 3 a 100 mm."};
constexpr Text wrongPage = {.en = "'page' is no size from 20 to 1000 mm.", .es = "'page' no es un tamaño de 20 a 1000 mm."};
constexpr Text wrongCount = {.en = "'count' is not from 1 to 100 each way.", .es = "'count' no va de 1 a 100 en cada sentido."};
constexpr Text wrongPitch = {.en = "'pitch' is less than a label: they lie on one another.",
                             .es = "'pitch' es menor que una etiqueta: quedan una sobre otra."};
constexpr Text wrongFit = {.en = "The labels reach beyond the page.", .es = "Las etiquetas se salen de la página."};
constexpr Text wrongWritten = {.en = "'written' belongs to a wrap label on a sheet, and is no more than its height.",
                               .es = "'written' es de una etiqueta envolvente en hoja, y no pasa de su alto."};
constexpr Text wrongFold = {.en = "'fold' belongs to a flag, and leaves room on both sides.",
                            .es = "'fold' es de una banderola, y deja lugar a ambos lados."};
constexpr Text mendIt = {.en = "Measure the labels and write what is true, in mm.", .es = "Mida las etiquetas y escriba lo correcto, en mm."};

constexpr double slack = 1e-6; // mm

double endOf(Millimetres first, Millimetres pitch, int count, Millimetres size)
{
    return first.value + pitch.value * (count - 1) + size.value;
}

std::optional<Text> wrongInPage(const LabelSheet& sheet)
{
    const auto [width, height] = sheet.page;
    if (!(width.value >= 20 && width.value <= 1000 && height.value >= 20 && height.value <= 1000))
        return wrongPage;
    if (sheet.count.across < 1 || sheet.count.across > 100 || sheet.count.down < 1 || sheet.count.down > 100)
        return wrongCount;
    if (sheet.pitch.across < sheet.label.width || sheet.pitch.down < sheet.label.height)
        return wrongPitch;
    if (sheet.first.left.value < 0 || sheet.first.top.value < 0 ||
        endOf(sheet.first.left, sheet.pitch.across, sheet.count.across, sheet.label.width) > width.value + slack ||
        endOf(sheet.first.top, sheet.pitch.down, sheet.count.down, sheet.label.height) > height.value + slack)
        return wrongFit;
    return std::nullopt;
}

std::optional<Text> wrongIn(const LabelSheet& sheet)
{
    const bool isWrapOnSheet = sheet.form == LabelForm::Wrap && !sheet.tape;
    if (sheet.tape && !(sheet.tape->value >= 3 && sheet.tape->value <= 100))
        return wrongTape;
    if (const auto wrong = sheet.tape ? std::nullopt : wrongInPage(sheet))
        return wrong;
    if (sheet.written.has_value() != isWrapOnSheet || (isWrapOnSheet && !(sheet.written->value > 0 && *sheet.written <= sheet.label.height)))
        return wrongWritten;
    if (sheet.fold.has_value() != (sheet.form == LabelForm::Flag) || (sheet.fold && !(sheet.fold->value > 0)))
        return wrongFold;
    const double high = sheet.tape ? sheet.tape->value : sheet.written.value_or(sheet.label.height).value;
    const double wide = sheet.tape ? high : (sheet.label.width - sheet.fold.value_or(Millimetres{0})).value / (sheet.fold ? 2 : 1);
    if (!(sheet.margin.value >= 0 && 2 * sheet.margin.value < high && 2 * sheet.margin.value < wide))
        return sheet.fold && !sheet.tape && wide <= 0 ? wrongFold : wrongMargin;
    return std::nullopt;
}

Result<LabelSheet> readLabelSheet(const std::filesystem::path& file)
{
    const Result<Json> json = jsonIn(file);
    if (!json.ok())
        return json.problem();
    JsonReader reader(json.value(), file.string());
    LabelSheet sheet;
    if (!reader.read(json.value(), sheet))
        return *reader.problem;
    if (sheet.name != file.stem().string())
        return Problem{{otherName, {{"name", sheet.name}}}, file.string(), {renameFile, {{"name", sheet.name}}}};
    if (const auto wrong = wrongIn(sheet))
        return Problem{*wrong, file.string(), mendIt};
    return sheet;
}

} // namespace

const LabelSheet* LabelSheets::find(const std::string& name) const
{
    const auto found = std::find_if(sheets.begin(), sheets.end(), [&](const LabelSheet& each) { return each.name == name; });
    return found == sheets.end() ? nullptr : &*found;
}

std::string LabelSheets::names() const
{
    std::string names;
    for (const LabelSheet& sheet : sheets)
        names += (names.empty() ? "" : ", ") + sheet.name;
    return names;
}

Result<LabelSheets> readLabelSheets(const std::string& folder)
{
    const auto files = jsonFilesIn(folder, noFolder, putItBack);
    if (!files.ok())
        return files.problem();
    LabelSheets all;
    for (const auto& file : files.value()) {
        Result<LabelSheet> sheet = readLabelSheet(file);
        if (!sheet.ok())
            return sheet.problem();
        all.sheets.push_back(std::move(sheet.value()));
    }
    return all;
}

int labelsOn(const LabelSheet& sheet)
{
    return sheet.tape ? 1 : sheet.count.across * sheet.count.down;
}

PlacedLabel placedLabel(const LabelSheet& sheet, LabelOrder order, std::size_t number)
{
    const auto most = static_cast<std::size_t>(labelsOn(sheet));
    if (sheet.tape)
        return {number, {}};
    const auto on = static_cast<int>(number % most);
    const bool byRows = order == LabelOrder::ByRows;
    const int line = byRows ? sheet.count.across : sheet.count.down;
    const int column = byRows ? on % line : on / line, row = byRows ? on / line : on % line;
    return {number / most, {sheet.first.left + column * sheet.pitch.across, sheet.first.top + row * sheet.pitch.down}};
}

} // namespace doorloom
