#include "desk/shelf/line_level.h"

#include <cmath>

namespace desk {
namespace {

std::optional<Span> span_of_corners_hz(const electrical::Source& source, const KnownLine& line,
                                       const electrical::Load& load, double reference_hz) {
  Span span;
  for (const electrical::Cable& possible : possible_lines(line)) {
    const auto corner_hz = electrical::corner_frequency_hz(source, possible, load, reference_hz);
    if (!corner_hz) return std::nullopt;
    span.take(*corner_hz);
  }
  return span;
}

}  // namespace

LineLevel line_level(const electrical::Source& source, const KnownLine& line, const electrical::Load& load,
                     const electrical::Band& band) {
  const auto level_db = [&](double frequency_hz) {
    return electrical::level_db(electrical::response(source, line.cable, load, frequency_hz));
  };
  LineLevel found;
  found.reference_hz = band.low_hz;
  found.top_hz = band.high_hz;
  found.source_ohm = source.resistance_ohm;
  found.load_ohm = std::abs(electrical::impedance_ohm(load, band.high_hz));
  found.top_level_db = level_db(band.high_hz) - level_db(band.low_hz);
  found.corner_hz = electrical::corner_frequency_hz(source, line.cable, load, band.low_hz);
  if (const auto* resistor = std::get_if<electrical::Resistor>(&load))
    found.one_pole_hz = electrical::one_pole_corner_hz(source, line.cable, *resistor);
  if (line.inductance == Origin::unknown || line.capacitance == Origin::unknown)
    found.possible_corner_hz = span_of_corners_hz(source, line, load, band.low_hz);
  found.shares = electrical::level_shares(source, line.cable, load, band.high_hz);
  return found;
}

}  // namespace desk
