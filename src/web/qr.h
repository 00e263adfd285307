#pragma once

#include <string>

namespace web {

/// A link as a QR code for a terminal: two modules a character, dark on light whatever the terminal's colours.
/// @throws text::BadInput for a text too long for a QR code.
std::string qr_for_terminal(const std::string& text);

}  // namespace web
