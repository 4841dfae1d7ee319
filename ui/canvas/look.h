#pragma once

#include "model/rows.h"

#include <QColor>
#include <QPalette>

#include <optional>
#include <string_view>

namespace doorloom {

// The colours of the sheet: one row for light and one for dark. None of them carries meaning alone.
struct Look {
    QRgb paper, frame, frameEdge, frameInk;
    QRgb device, head, deviceEdge, cellLine, ink, softInk;
    QRgb conductorEdge; // shows every insulation on the paper and on devices
    QRgb jacket, jacketInk;
    QRgb chosen, chosenWash;
    QRgb lit, litDash;
    QRgb waiting, focus, note, noteEdge;
};

const Look& lookOf(const QPalette& palette);

struct Insulation {
    QRgb base = 0;
    std::optional<QRgb> stripe;

    friend bool operator==(const Insulation&, const Insulation&) = default;
};

// Of IEC 60757 letters: "RD", "GNYE", "WH+BU"; a calm grey for none, or for letters that are no code.
Insulation insulationOf(std::string_view letters);

} // namespace doorloom
