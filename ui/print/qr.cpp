#include "print/qr.h"

#include <qrencode.h>

#include <memory>

namespace doorloom {

Qr qrOf(const std::string& text)
{
    const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
        QRcode_encodeData(static_cast<int>(text.size()), reinterpret_cast<const unsigned char*>(text.data()), 0, QR_ECLEVEL_M), QRcode_free);
    Qr qr;
    if (!code)
        return qr;
    qr.modules = code->width;
    for (int i = 0; i < code->width * code->width; ++i)
        qr.black.push_back((code->data[i] & 1) != 0);
    return qr;
}

double sideOf(const Qr& code, double module)
{
    return (code.modules + 2 * quietModules) * module;
}

// Each run of black in a row is one rule as wide as a module.
void putQr(PrintedPage& page, const Qr& code, double module, double x, double y)
{
    const auto isBlack = [&](int row, int column) {
        return column < code.modules && code.black[static_cast<std::size_t>(row * code.modules + column)];
    };
    x += quietModules * module;
    y += quietModules * module;
    for (int row = 0; row < code.modules; ++row)
        for (int column = 0; column < code.modules; ++column) {
            const int from = column;
            while (isBlack(row, column))
                ++column;
            const double middle = y + (row + 0.5) * module;
            if (column > from)
                page.rules.push_back({x + from * module, middle, x + column * module, middle, module});
        }
}

} // namespace doorloom
