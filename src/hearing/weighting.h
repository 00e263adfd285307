#pragma once

#include <span>
#include <string_view>
#include <variant>

namespace hearing {

/// All the power at one frequency.
struct Tone {
  double frequency_hz;
};

/// Power per constant relative bandwidth (per octave, per ln f), in dB with a free reference: pink noise is
/// 0 dB everywhere. The function takes a frequency above 0.
struct Spectrum {
  double (*level_db)(double frequency_hz);
};

/// How the levels at all frequencies are weighted into one number.
struct Weighting {
  std::string_view name;    ///< as typed: "pink-a"
  std::string_view title;   ///< as printed: "pink noise, A-weighted, 20 Hz to 20 kHz"
  std::string_view source;  ///< where its numbers come from
  std::variant<Tone, Spectrum> shape;
};

/// The one list of weightings: 1khz, pink, pink-a, pink-k, programme.
std::span<const Weighting> catalogue();

/// The weighting of this name.
/// @throws std::domain_error  listing the names there are.
const Weighting& find(std::string_view name);

/// A-weighting in dB, 0 at 1 kHz.
/// @param frequency_hz  above 0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: within 0.05 dB of IEC 61672-1 Table 3 at the exact third-octave centres (tests/hearing).
/// Source: IEC 61672-1, Annex E (poles from memory, checked against Table 3).
double a_weighting_db(double frequency_hz);

/// K-weighting of the 48 kHz filters in dB, not normalised: 0.698 at 1 kHz.
/// @param frequency_hz  above 0, up to 24 000 (half the sampling rate).
/// @throws std::domain_error  naming the argument, its value and its range.
/// Source: ITU-R BS.1770-4, Annex 1, Tables 1 and 2.
double k_weighting_db(double frequency_hz);

/// The simulated programme's third-octave level in dB, linear in log f between the exact centres, constant
/// below 19.95 Hz and above 19 953 Hz.
/// @param frequency_hz  above 0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Source: IEC 60268-1:1985, clause 7, Table II.
double programme_spectrum_db(double frequency_hz);

}  // namespace hearing
