#pragma once

#include <string>

namespace web {

/// A link as a QR code for a terminal: the light modules are drawn, two a character, so that it stands the right way
/// round where letters are light on dark.
/// @throws text::BadInput for a text too long for a QR code.
std::string qr_for_terminal(const std::string& text);

/// A link as a QR code for a page: an SVG path of the dark modules, each a unit square, within a square of `size` units.
struct QrPath {
  int size = 0;  ///< with its margin of four modules
  std::string path;
};

/// @throws text::BadInput for a text too long for a QR code.
QrPath qr_for_page(const std::string& text);

}  // namespace web
