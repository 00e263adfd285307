#include "findings/circuit/specimen.h"

#include "findings/words/numbers.h"
#include "hearing/level_difference.h"

namespace findings {
namespace {

const plan::Specimen& specimen_at(const plan::Plan& plan, int specimen) {
  return plan.specimens.at(static_cast<std::size_t>(specimen));
}

bool holds(const electrical::Band& band, const hearing::Weighting& weighting) {
  const auto* tone = std::get_if<hearing::Tone>(&weighting.shape);
  return !tone || (tone->frequency_hz >= band.low_hz && tone->frequency_hz <= band.high_hz);
}

}  // namespace

const hearing::Weighting& weighting_of(const plan::Plan& plan) {
  return hearing::find(plan.trim_weighting.empty() ? "pink-k" : plan.trim_weighting);
}

const CableEvidence* cable_of(const Evidence& evidence, int specimen) {
  const auto found = evidence.cables.find(specimen_at(evidence.plan, specimen).cable);
  return found == evidence.cables.end() ? nullptr : &found->second;
}

std::optional<electrical::Cable> line_of(const Evidence& evidence, int specimen) {
  const CableEvidence* cable = cable_of(evidence, specimen);
  if (!cable || !cable->line) return std::nullopt;
  electrical::Cable line = *cable->line;
  line.load_end_resistance_ohm +=
      typed_number("series_resistance_ohm", specimen_at(evidence.plan, specimen).series_resistance_ohm)
          .value_or(0);
  return line;
}

std::optional<hearing::LevelCurve> predicted_curve_of(const Evidence& evidence, int specimen) {
  const auto line = line_of(evidence, specimen);
  if (!line || !evidence.rig.source || !evidence.rig.load) return std::nullopt;
  return hearing::predicted_curve(*evidence.rig.source, *line, *evidence.rig.load);
}

double attenuation_db(const plan::Plan& plan, int specimen) {
  if (plan.levels != "trimmed") return 0;
  return specimen_at(plan, specimen).trim_steps *
         typed_number("volume_step_db", plan.volume_step_db).value_or(0);
}

std::optional<double> weighted_level_db(const hearing::Weighting& weighting,
                                        const hearing::LevelCurve& curve) {
  const auto band = electrical::common_band(curve.band(), electrical::kAudioBand);
  if (!band || !holds(*band, weighting)) return std::nullopt;
  return hearing::weighted_level_db(weighting, curve, *band);
}

bool are_comparable(const hearing::LevelCurve& first, const hearing::LevelCurve& second,
                    const hearing::Weighting& weighting) {
  const auto shared = electrical::common_band(first.band(), second.band());
  if (!shared) return false;
  const auto band = electrical::common_band(*shared, electrical::kAudioBand);
  return band && holds(*band, weighting);
}

}  // namespace findings
