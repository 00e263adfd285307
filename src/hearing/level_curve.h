#pragma once

#include <functional>
#include <span>
#include <vector>

#include "electrical/frequency_grid.h"
#include "electrical/response.h"

namespace hearing {

/// Level in dB against frequency, with the band in which it is known: a prediction or a measurement.
class LevelCurve {
 public:
  /// A curve given by a function of frequency in Hz, trusted within `band`.
  LevelCurve(std::function<double(double)> level_db, const electrical::Band& band);

  /// A measured response: dB linear in ln f between its frequencies, known between the first and the last.
  ///
  /// @param frequency_hz  at least 2, above 0, rising.
  /// @param level_db      as many, finite.
  /// @throws std::domain_error  naming the argument, its value and its range.
  LevelCurve(std::vector<double> frequency_hz, std::vector<double> level_db);

  /// @throws std::domain_error  naming the band when `frequency_hz` is outside it.
  double level_db(double frequency_hz) const;

  const electrical::Band& band() const { return band_; }

  /// The frequencies of a measured response, empty for a function.
  std::span<const double> points_hz() const { return points_hz_; }

 private:
  std::function<double(double)> level_db_;
  electrical::Band band_;
  std::vector<double> points_hz_;
};

/// The level at the load over the source's e.m.f., known where the load is.
/// @throws std::domain_error  on use, as `electrical::response`.
LevelCurve predicted_curve(const electrical::Source& source, const electrical::Cable& cable,
                           const electrical::Load& load);

/// The band common to both curves and to 20 Hz to 20 kHz.
/// @throws std::domain_error  naming the bands, if there is none.
electrical::Band common_audio_band(const LevelCurve& first, const LevelCurve& second);

/// The mean of a function over ln f: Simpson's rule on 2001 log-spaced points.
///
/// Accuracy: for responses of cables on the tests' loudspeaker over 20 Hz to 20 kHz, below 1e-9 dB in a
/// level difference; 5e-9 dB with a spectrum that has kinks (tests/hearing). A measured response with
/// more than a few hundred points to a decade and strong narrow ripple is met only at these 2001 points.
/// @throws std::domain_error  for an impossible band; and whatever the function throws.
double log_mean(const std::function<double(double)>& of_frequency_hz, const electrical::Band& band);

}  // namespace hearing
