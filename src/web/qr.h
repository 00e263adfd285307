#pragma once

#include <string>

namespace web {

/// A link as a QR code for a terminal: the light modules are drawn, two a character, so that it stands the right way
/// round where letters are light on dark.
/// @throws text::BadInput for a text too long for a QR code.
std::string qr_for_terminal(const std::string& text);

}  // namespace web
