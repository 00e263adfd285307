#include "hearing/level_difference.h"

#include <cmath>

#include "electrical/argument.h"

namespace hearing {
namespace {

double power(double level_db) { return std::pow(10, level_db / 10); }

double level_under(const Tone& tone, const LevelCurve& curve, const electrical::Band& band) {
  electrical::require_within("frequency of the weighting's tone", tone.frequency_hz, band.low_hz,
                             band.high_hz);
  return curve.level_db(tone.frequency_hz);
}

double level_under(const Spectrum& spectrum, const LevelCurve& curve, const electrical::Band& band) {
  const double passed =
      log_mean([&](double f) { return power(spectrum.level_db(f) + curve.level_db(f)); }, band);
  const double sent = log_mean([&](double f) { return power(spectrum.level_db(f)); }, band);
  return 10 * std::log10(passed / sent);
}

}  // namespace

double weighted_level_db(const Weighting& weighting, const LevelCurve& curve, const electrical::Band& band) {
  return std::visit([&](const auto& shape) { return level_under(shape, curve, band); }, weighting.shape);
}

LevelDifference level_difference(const Weighting& weighting, const LevelCurve& first,
                                 const LevelCurve& second) {
  const electrical::Band band = common_audio_band(first, second);
  return {weighted_level_db(weighting, first, band) - weighted_level_db(weighting, second, band), band};
}

}  // namespace hearing
