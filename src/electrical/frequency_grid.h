#pragma once

#include <limits>
#include <optional>
#include <vector>

namespace electrical {

/// A range of frequencies, both ends in it.
struct Band {
  double low_hz;
  double high_hz;
};

/// The band to which level differences and residuals are referred.
constexpr Band kAudioBand{20, 20000};

/// Every frequency: the band of a formula.
constexpr Band kEveryFrequency{0, std::numeric_limits<double>::infinity()};

/// The part common to both bands; nothing if they share no more than one frequency.
std::optional<Band> common_band(const Band& first, const Band& second);

/// The same. @throws std::domain_error  naming both bands, if there is none.
Band overlap(const Band& first, const Band& second);

/// `points` frequencies (at least 2) in equal ratios from low to high; both ends are hit exactly.
/// @throws std::domain_error  unless 0 < low < high, both finite, and points is 2 to 10 million.
std::vector<double> log_spaced(const Band& band, int points);

/// The exact base-10 centre of third-octave band n: 1000 Hz * 10^(n/10); n = 0 is 1 kHz, n = -17 is
/// "20 Hz" (19.9526), n = 13 is "20 kHz" (19952.6).
/// @throws std::domain_error  unless n is from -30 to 30.
/// Source: IEC 61260-1, base-10 system (from memory).
double third_octave_centre_hz(int n);

/// The 31 exact centres of "20 Hz" to "20 kHz", n = -17 to 13.
std::vector<double> third_octave_centres_hz();

}  // namespace electrical
