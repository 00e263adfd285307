#include "desk/shelf/prediction.h"

#include "desk/shelf/circuit.h"
#include "electrical/damping_factor.h"
#include "electrical/line_facts.h"
#include "hearing/level_difference.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {
namespace {

constexpr int curve_points = 200;

electrical::Cable line_of(const store::Campaign& campaign, const std::string& name, const std::string& rig) {
  require_cable(campaign, name);
  const auto line = cable_evidence(campaign, name, rig).line;
  if (!line)
    throw text::BadInput("cable \"" + name +
                         "\" has no table of its resistance, inductance and capacitance yet\n"
                         "import one: cable,length_m,resistance_ohm,inductance_uH,capacitance_pF");
  return *line;
}

CablePrediction facts_of(const std::string& name, const electrical::Cable& line,
                         const electrical::Source& source, const std::string& rated_impedance_ohm) {
  const electrical::CableTotals totals = electrical::totals(line);
  CablePrediction facts{name,
                        electrical::loop_resistance_ohm(line),
                        totals.inductance_henry,
                        totals.capacitance_farad,
                        std::nullopt,
                        {}};
  if (const auto rated = text::number(rated_impedance_ohm);
      rated && source.resistance_ohm + facts.loop_resistance_ohm > 0)
    facts.damping_factor = electrical::damping_factor(*rated, source, line);
  if (electrical::capacitance_needs_caution(line))
    facts.cautions.push_back(
        name + ": more than 1 nF in all; some amplifiers can oscillate with it (a rule of thumb)");
  if (electrical::faster_than_light(line))
    facts.cautions.push_back(
        name + ": its inductance and capacitance would make it faster than light; check the readings");
  return facts;
}

}  // namespace

Prediction predict(const Path& file, const std::string& rig_name, const std::string& first,
                   const std::string& second, const std::string& weighting) {
  const store::Campaign campaign = store::Campaign::open(file);
  const findings::RigEvidence rig = rig_evidence(campaign, rig_name);
  if (!rig.source)
    throw text::BadInput("rig \"" + rig_name + "\" has no source resistance; add a rig with --source");
  if (!rig.load)
    throw text::BadInput("rig \"" + rig_name +
                         "\" has no load\nimport its impedance (frequency_Hz,magnitude_ohm,phase_deg) "
                         "with --rig " +
                         rig_name + ", or add a rig with --load");
  const electrical::Cable one = line_of(campaign, first, rig_name),
                          other = line_of(campaign, second, rig_name);
  const std::string rated_ohm = rig_named(campaign, rig_name).rated_impedance_ohm;

  Prediction prediction;
  prediction.rig = rig_name;
  prediction.rig_description = rig.description;
  prediction.first = facts_of(first, one, *rig.source, rated_ohm);
  prediction.second = facts_of(second, other, *rig.source, rated_ohm);
  const hearing::LevelCurve from = hearing::predicted_curve(*rig.source, one, *rig.load);
  const hearing::LevelCurve to = hearing::predicted_curve(*rig.source, other, *rig.load);
  for (const hearing::Weighting& each : hearing::catalogue())
    prediction.level_differences.push_back({std::string(each.name), std::string(each.title),
                                            hearing::level_difference(each, to, from).difference_db});
  const hearing::Weighting& trim = hearing::find(weighting.empty() ? "pink-k" : weighting);
  prediction.trim_weighting = trim.name;
  prediction.residual = hearing::residual(to, from, hearing::level_difference(trim, to, from).difference_db);
  const electrical::Band band = hearing::common_audio_band(from, to);
  prediction.frequency_hz = electrical::log_spaced(band, curve_points);
  for (const double frequency_hz : prediction.frequency_hz)
    prediction.difference_db.push_back(
        electrical::level_difference_db(*rig.source, other, one, *rig.load, frequency_hz));
  prediction.least_impedance_ohm = electrical::minimum_impedance(*rig.load, band);
  return prediction;
}

std::optional<double> predicted_difference_db(const findings::RigEvidence& rig,
                                              const std::optional<electrical::Cable>& first,
                                              const std::optional<electrical::Cable>& second,
                                              const std::string& weighting) {
  if (!rig.source || !rig.load || !first || !second) return std::nullopt;
  return hearing::level_difference(hearing::find(weighting),
                                   hearing::predicted_curve(*rig.source, *second, *rig.load),
                                   hearing::predicted_curve(*rig.source, *first, *rig.load))
      .difference_db;
}

}  // namespace desk
