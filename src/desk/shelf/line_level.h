#pragma once

#include <algorithm>
#include <limits>
#include <optional>

#include "desk/shelf/known_line.h"
#include "electrical/facts/corner.h"
#include "electrical/load.h"

namespace desk {

/// From the least to the greatest of the values taken.
struct Span {
  double least = std::numeric_limits<double>::infinity(), greatest = -least;

  void take(double value) {
    least = std::min(least, value);
    greatest = std::max(greatest, value);
  }
};

/// What one cable does between a line output and a line input.
struct LineLevel {
  double source_ohm = 0, load_ohm = 0;        ///< |Z| of the load at `top_hz`
  double reference_hz = 20, top_hz = 20'000;  ///< nearer together where the load is not known so far
  double top_level_db = 0;                    ///< at `top_hz` less that at `reference_hz`
  std::optional<double> corner_hz;            ///< exact, 3.01 dB below `reference_hz`; none below 1 GHz
  std::optional<double> one_pole_hz;          ///< the usual estimate, for a resistive load
  std::optional<Span>
      possible_corner_hz;            ///< over `possible_lines`, where something is unknown and all have one
  electrical::LevelShares shares{};  ///< of the level at `top_hz`
};

/// @param band  within 20 Hz to 20 kHz, where the load is known.
LineLevel line_level(const electrical::Source& source, const KnownLine& line, const electrical::Load& load,
                     const electrical::Band& band);

}  // namespace desk
