#include "web/qr.h"

#include <qrcodegen.hpp>

#include "text/error.h"

namespace web {
namespace {

constexpr int margin = 4;  // modules (ISO/IEC 18004)

qrcodegen::QrCode code_of(const std::string& text) try {
  return qrcodegen::QrCode::encodeText(text.c_str(), qrcodegen::QrCode::Ecc::MEDIUM);
} catch (const qrcodegen::data_too_long&) {
  throw text::BadInput("the link is too long for a QR code");
}

}  // namespace

std::string qr_for_terminal(const std::string& text) {
  const qrcodegen::QrCode code = code_of(text);
  constexpr const char* halves[] = {"\u2588", "\u2580", "\u2584", " "};  // light is drawn, dark left out
  std::string lines;
  for (int y = -margin; y < code.getSize() + margin; y += 2) {
    for (int x = -margin; x < code.getSize() + margin; ++x)
      lines += halves[(code.getModule(x, y) ? 2 : 0) + (code.getModule(x, y + 1) ? 1 : 0)];
    lines += "\n";
  }
  return lines;
}

QrPath qr_for_page(const std::string& text) {
  const qrcodegen::QrCode code = code_of(text);
  QrPath drawn{code.getSize() + 2 * margin, ""};
  for (int y = 0; y < code.getSize(); ++y)
    for (int x = 0; x < code.getSize(); ++x)
      if (code.getModule(x, y))
        drawn.path += "M" + std::to_string(x + margin) + " " + std::to_string(y + margin) + "h1v1h-1z";
  return drawn;
}

}  // namespace web
