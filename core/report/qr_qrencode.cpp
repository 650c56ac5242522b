// The code from libqrencode, whose answer is copied at once.
#include "core/report/qr.h"

#include <qrencode.h>

#include <memory>

namespace cotter {

Result<QrCode> qr_code(const std::string& text) {
    struct Free {
        void operator()(QRcode* code) const { QRcode_free(code); }
    };
    const std::unique_ptr<QRcode, Free> code(QRcode_encodeString8bit(text.c_str(), 0, QR_ECLEVEL_M));
    if (!code) return fail(Errc::refused, "the text does not fit into a QR code", {}, "make it shorter");
    QrCode out;
    out.side = code->width;
    const auto count = static_cast<std::size_t>(code->width) * static_cast<std::size_t>(code->width);
    for (std::size_t i = 0; i < count; ++i) out.dark.push_back((code->data[i] & 1) != 0);
    return out;
}

}  // namespace cotter
