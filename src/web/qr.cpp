#include "web/qr.h"

#include <qrcodegen.hpp>

#include "text/error.h"

namespace web {

std::string qr_for_terminal(const std::string& text) try {
  const auto code = qrcodegen::QrCode::encodeText(text.c_str(), qrcodegen::QrCode::Ecc::MEDIUM);
  constexpr int margin = 2;
  constexpr const char* halves[] = {"\u2588", "\u2580", "\u2584", " "};  // light is drawn, dark left out
  std::string lines;
  for (int y = -margin; y < code.getSize() + margin; y += 2) {
    for (int x = -margin; x < code.getSize() + margin; ++x)
      lines += halves[(code.getModule(x, y) ? 2 : 0) + (code.getModule(x, y + 1) ? 1 : 0)];
    lines += "\n";
  }
  return lines;
} catch (const qrcodegen::data_too_long&) {
  throw text::BadInput("the link is too long for a QR code");
}

}  // namespace web
