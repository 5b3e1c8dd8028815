#include "app/office/qr.hpp"

#include <memory>
#include <qrencode.h>

namespace sillwalk::office {

engine::Result<std::string> qr_text(const std::string& text) {
    constexpr int border = 4;
    const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
        QRcode_encodeString(text.c_str(), 0, QR_ECLEVEL_M, QR_MODE_8, 1), &QRcode_free);
    if (!code) return engine::bad_input("the text does not fit into a QR code");
    const auto light = [&](int row, int column) {
        if (row < 0 || column < 0 || row >= code->width || column >= code->width) return true;
        return (code->data[row * code->width + column] & 1) == 0;
    };
    std::string out;
    for (int row = -border; row < code->width + border; row += 2) {
        for (int column = -border; column < code->width + border; ++column) {
            const bool upper = light(row, column), lower = light(row + 1, column);
            out += upper && lower ? "█" : upper ? "▀" : lower ? "▄" : " ";
        }
        out += '\n';
    }
    return out;
}

}  // namespace sillwalk::office
