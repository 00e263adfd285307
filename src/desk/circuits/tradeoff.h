#pragma once

#include <string>

#include "desk/shelf/shelf.h"

namespace desk {

/// Resistance, inductance, capacitance, characteristic impedance and speed of every cable of a campaign.
struct Tradeoff {
  std::string text, json;
};

/// @throws text::BadInput when the campaign has no cable.
Tradeoff tradeoff(const Path& campaign);

/// The same in one picture: an HTML page and an SVG file; "" where none is wanted. Both are made before either is written.
/// @throws text::BadInput when inductance and capacitance are known of no cable, or a file may not be replaced.
void write_tradeoff(const Path& campaign, const Path& page, const Path& svg, bool replace);

}  // namespace desk
