#include "desk/shelf/prediction.h"

#include <array>
#include <cmath>

#include "desk/shelf/circuit.h"
#include "electrical/damping_factor.h"
#include "electrical/line_facts.h"
#include "hearing/level_difference.h"
#include "hearing/trim.h"
#include "text/error.h"
#include "text/number.h"
#include "text/utf8.h"

namespace desk {
namespace {

constexpr int curve_points = 200;

/// What drives and loads both cables.
struct Ends {
  electrical::Source source;
  electrical::Load load;

  hearing::LevelCurve curve(const electrical::Cable& cable) const {
    return hearing::predicted_curve(source, cable, load);
  }
};

Ends ends_of(const findings::RigEvidence& rig) {
  if (!rig.source)
    throw text::BadInput("rig " + text::quoted(rig.name) +
                         " has no source resistance; add a rig with --source");
  if (!rig.load)
    throw text::BadInput("rig " + text::quoted(rig.name) +
                         " has no load\nimport its impedance (frequency_Hz,magnitude_ohm,phase_deg) "
                         "with --rig " +
                         text::printable(rig.name) + ", or add a rig with --load");
  return {*rig.source, *rig.load};
}

KnownLine required_line(const store::Campaign& campaign, const std::string& name) {
  require_cable(campaign, name);
  auto line = known_line(campaign, name);
  if (!line)
    throw text::BadInput("cable " + text::quoted(name) +
                         " has no reading of its resistance, and its construction gives none\n"
                         "import a table: cable,length_m,resistance_ohm, with inductance_uH and "
                         "capacitance_pF where they are known;\nor add a cable whose construction says "
                         "what is missing here: " +
                         wanting_for_resistance(campaign, name));
  return *line;
}

CablePrediction facts_of(const std::string& name, const KnownLine& line, const Ends& ends,
                         const store::Rig& rig, const electrical::Band& band) {
  const electrical::Cable& cable = line.cable;
  CablePrediction facts{name, line, std::nullopt, std::nullopt, {}};
  if (rig.kind == "line level")
    facts.line_level = line_level(ends.source, line, ends.load, band);
  else if (const auto rated = text::number(rig.rated_impedance_ohm);
           rated && ends.source.resistance_ohm + electrical::loop_resistance_ohm(cable) > 0)
    facts.damping_factor = electrical::damping_factor(*rated, ends.source, cable);
  for (const std::string& caution : cautions_of(line)) facts.cautions.push_back(name + ": " + caution);
  return facts;
}

SteppedTrim stepped_trim(const hearing::LevelCurve& to, const hearing::LevelCurve& from, double difference_db,
                         double step_db) {
  const auto trims = hearing::trims(std::array{0.0, difference_db}, step_db);
  const double left_db = trims[1].level_db - trims[0].level_db;
  return {step_db, trims[0].steps, trims[1].steps, left_db, after_trim(to, from, difference_db - left_db)};
}

void add_unknown(const NamedLine& cable, std::vector<std::string>& unknown) {
  const bool inductance = cable.line.inductance == Origin::unknown,
             capacitance = cable.line.capacitance == Origin::unknown;
  if (inductance || capacitance)
    unknown.push_back((inductance && capacitance ? "inductance and capacitance of "
                       : inductance              ? "inductance of "
                                                 : "capacitance of ") +
                      cable.name);
}

void add_levels(Prediction& prediction, const hearing::LevelCurve& to, const hearing::LevelCurve& from,
                const hearing::Weighting& trim, const store::Rig& rig) {
  for (const hearing::Weighting& each : hearing::catalogue())
    prediction.level_differences.push_back({std::string(each.name), std::string(each.title),
                                            hearing::level_difference(each, to, from).difference_db});
  const double difference_db = hearing::level_difference(trim, to, from).difference_db;
  prediction.trim_weighting = trim.name;
  prediction.after = after_trim(to, from, difference_db);
  if (const auto step_db = text::number(rig.volume_step_db))
    prediction.stepped = stepped_trim(to, from, difference_db, *step_db);
}

}  // namespace

std::vector<std::string> cautions_of(const KnownLine& line) {
  std::vector<std::string> cautions = line.cautions;
  if (electrical::capacitance_needs_caution(line.cable))
    cautions.push_back("more than 1 nF in all; some amplifiers can oscillate with it (a rule of thumb)");
  if (line.inductance != Origin::unknown && electrical::faster_than_light(line.cable))
    cautions.push_back("its inductance and capacitance would make it faster than light; check the readings");
  return cautions;
}

AfterTrim after_trim(const hearing::LevelCurve& to, const hearing::LevelCurve& from, double trim_db) {
  return {hearing::residual(to, from, trim_db), hearing::auditory_difference(to, from, trim_db)};
}

std::optional<LeftOpen> left_open(const NamedLine& first, const NamedLine& second,
                                  const electrical::Source& source, const electrical::Load& load,
                                  const hearing::Weighting& weighting) {
  LeftOpen open;
  add_unknown(first, open.unknown);
  add_unknown(second, open.unknown);
  if (open.unknown.empty()) return std::nullopt;
  for (const electrical::Cable& one : possible_lines(first.line))
    for (const electrical::Cable& other : possible_lines(second.line)) {
      const hearing::LevelCurve from = hearing::predicted_curve(source, one, load),
                                to = hearing::predicted_curve(source, other, load);
      const double difference_db = hearing::level_difference(weighting, to, from).difference_db;
      const hearing::Residual residual = hearing::residual(to, from, difference_db);
      open.level_difference_db.take(difference_db);
      open.largest_residual_db.take(std::abs(residual.largest_db));
      open.rms_residual_db.take(residual.rms_db);
    }
  return open;
}

Prediction predict(const Path& file, const std::string& rig_name, const std::string& first,
                   const std::string& second, const std::string& weighting) {
  const store::Campaign campaign = store::Campaign::open(file);
  const findings::RigEvidence evidence = rig_evidence(campaign, rig_name);
  const store::Rig rig = rig_named(campaign, rig_name);
  const Ends ends = ends_of(evidence);
  const KnownLine one = required_line(campaign, first), other = required_line(campaign, second);
  const hearing::Weighting& trim = hearing::find(weighting.empty() ? "pink-k" : weighting);
  const hearing::LevelCurve from = ends.curve(one.cable), to = ends.curve(other.cable);
  const electrical::Band band = hearing::common_audio_band(from, to);

  Prediction prediction;
  prediction.rig = rig_name;
  prediction.rig_description = evidence.description;
  prediction.first = facts_of(first, one, ends, rig, band);
  prediction.second = facts_of(second, other, ends, rig, band);
  add_levels(prediction, to, from, trim, rig);
  prediction.left_open = left_open({first, one}, {second, other}, ends.source, ends.load, trim);
  prediction.frequency_hz = electrical::log_spaced(band, curve_points);
  for (const double frequency_hz : prediction.frequency_hz)
    prediction.difference_db.push_back(
        electrical::level_difference_db(ends.source, other.cable, one.cable, ends.load, frequency_hz));
  prediction.least_impedance_ohm = electrical::minimum_impedance(ends.load, band);
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
