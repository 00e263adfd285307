#include "desk/shelf/prediction_text.h"

#include "desk/shelf/prediction_parts.h"
#include "findings/words/numbers.h"
#include "text/columns.h"
#include "text/number.h"
#include "text/quantity.h"

namespace desk {
namespace {

using text::Align;
using text::Unit;

std::string decibels(double value_db) { return text::fixed(value_db, 3) + " dB"; }

/// Shares may be far below a thousandth of a decibel.
std::string small_decibels(double value_db) { return text::significant(value_db, 2) + " dB"; }

std::string hertz(double frequency_hz) { return text::with_unit(frequency_hz, Unit::hertz); }

std::string known_or_not(double value, Unit unit, Origin origin) {
  return origin == Origin::unknown ? "unknown" : text::with_unit(value, unit);
}

std::string facts_text(const CablePrediction& cable) {
  const KnownLine& line = cable.line;
  const electrical::CableTotals totals = electrical::totals(line.cable);
  return paragraph(
             cable.name + ": loop resistance " +
                 text::with_unit(electrical::loop_resistance_ohm(line.cable), Unit::ohm) + ", inductance " +
                 known_or_not(totals.inductance_henry, Unit::henry, line.inductance) + ", capacitance " +
                 known_or_not(totals.capacitance_farad, Unit::farad, line.capacitance) +
                 (cable.damping_factor ? ", damping factor " + text::significant(*cable.damping_factor, 3)
                                       : ""),
             "  ") +
         paragraph(line.words, "    ");
}

std::string corner_words(const LineLevel& level) {
  const std::string down = "3 dB down from its level at " + hertz(level.reference_hz);
  std::string words = level.corner_hz ? down + " at " + hertz(*level.corner_hz) + ", exact"
                                      : "nowhere " + down + ", as far as the load is known and to 1 GHz";
  if (level.one_pole_hz) words += "; at " + hertz(*level.one_pole_hz) + " by the one-pole estimate";
  if (const auto& span = level.possible_corner_hz)
    words += "; at " + hertz(span->least) + " to " + hertz(span->greatest) + " with what is left open below";
  return words;
}

std::string share_words(double share_db, Origin origin) {
  return origin == Origin::unknown ? "unknown" : small_decibels(share_db);
}

/// Shows why resistance hardly matters there: it stands beside source and load, and takes its share of their level.
std::string line_level_text(const CablePrediction& cable) {
  if (!cable.line_level) return "";
  const LineLevel& level = *cable.line_level;
  const electrical::LevelShares& shares = level.shares;
  const std::string top = hertz(level.top_hz);
  return paragraph(cable.name + ": " + corner_words(level) + "; at " + top + " " +
                       small_decibels(level.top_level_db) + " against " + hertz(level.reference_hz),
                   "  ") +
         paragraph("of the level at " + top + ", the source's " +
                       text::with_unit(level.source_ohm, Unit::ohm) + " takes " +
                       small_decibels(shares.source_resistance_db) + ", the cable's " +
                       text::with_unit(electrical::loop_resistance_ohm(cable.line.cable), Unit::ohm) +
                       " in series with it and with " + text::with_unit(level.load_ohm, Unit::ohm) +
                       " of load takes " + small_decibels(shares.cable_resistance_db) +
                       ", the cable's inductance " +
                       share_words(shares.cable_inductance_db, cable.line.inductance) + ", its capacitance " +
                       share_words(shares.cable_capacitance_db, cable.line.capacitance),
                   "    ");
}

std::string levels_text(const Prediction& prediction) {
  text::Columns levels({"weighting", "dB", ""}, {Align::left, Align::right});
  for (const WeightedDifference& level : prediction.level_differences)
    levels.add({level.weighting, text::fixed(level.difference_db, 3), level.title});
  return "level at the load, " + prediction.second.name + " less " + prediction.first.name + ":\n" +
         levels.text(2);
}

std::string after_text(const std::string& so, const AfterTrim& after) {
  const hearing::Residual& residual = after.residual;
  const hearing::AuditoryDifference& smoothed = after.smoothed;
  return paragraph(so + " " + text::fixed(residual.minimum_db, 3) + " to " + decibels(residual.maximum_db) +
                   " (r.m.s. " + decibels(residual.rms_db) + "), most at " +
                   hertz(residual.frequency_of_largest_hz)) +
         paragraph("smoothed to auditory bands: largest " + decibels(smoothed.largest_db) + " at " +
                       hertz(smoothed.frequency_of_largest_hz) + ", r.m.s. " + decibels(smoothed.rms_db),
                   "  ");
}

std::string stepped_text(const Prediction& prediction) {
  if (!prediction.stepped)
    return "what whole steps of the volume would leave is not said: the rig's volume step is not known\n";
  const SteppedTrim& trim = *prediction.stepped;
  const std::string& louder = trim.first_steps > 0 ? prediction.first.name : prediction.second.name;
  const int steps = trim.first_steps + trim.second_steps;
  const std::string done = steps == 0 ? "no step brings the levels nearer"
                                      : louder + " down by " + findings::counted(steps, "step");
  return after_text("in whole steps of " + text::shortest(trim.step_db) + " dB: " + done + ", which leaves " +
                        decibels(trim.level_left_db) + " under " + prediction.trim_weighting +
                        "; the response then differs by",
                    trim.after);
}

std::string joined_unknown(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& each : words) all += (all.empty() ? "" : "; ") + each;
  return all;
}

/// Stands right below the levels, which leave out what is unknown.
std::string open_text(const Prediction& prediction) {
  if (!prediction.left_open) return "";
  const LeftOpen& open = *prediction.left_open;
  const auto span = [](const Span& values) {
    return text::fixed(values.least, 3) + " to " + decibels(values.greatest);
  };
  const auto ends = [](double least, double most, const char* unit) {
    return text::significant(least, 2) + " to " + text::significant(most, 2) + unit;
  };
  return paragraph("left open: " + joined_unknown(open.unknown) + "; the other numbers leave them out") +
         paragraph("with " + ends(kLeastInductanceHenryPerM * 1e6, kMostInductanceHenryPerM * 1e6, " uH/m") +
                       " and " +
                       ends(kLeastCapacitanceFaradPerM * 1e12, kMostCapacitanceFaradPerM * 1e12, " pF/m") +
                       " where unknown (pairs; common practice, no source) the " + prediction.trim_weighting +
                       " difference is " + span(open.level_difference_db) +
                       "; after that trim the largest residual is " + span(open.largest_residual_db) +
                       " in size, its r.m.s. " + span(open.rms_residual_db),
                   "  ");
}

}  // namespace

std::string prediction_text(const Prediction& prediction) {
  const CablePrediction &first = prediction.first, &second = prediction.second;
  std::string words = second.name + " in place of " + first.name + ", rig " + prediction.rig + " (" +
                      prediction.rig_description + ")\n" + facts_text(first) + facts_text(second);
  words += "  load: least impedance " + text::with_unit(prediction.least_impedance_ohm.value, Unit::ohm) +
           " at " + hertz(prediction.least_impedance_ohm.frequency_hz) + "\n";
  words += line_level_text(first) + line_level_text(second);
  words += levels_text(prediction) + open_text(prediction);
  words += after_text(
      "after a trim by the " + prediction.trim_weighting + " difference the response still differs by",
      prediction.after);
  words += stepped_text(prediction) + thresholds_text();
  for (const auto* cable : {&first, &second})
    for (const std::string& caution : cable->cautions) words += "caution: " + caution + "\n";
  return words;
}

}  // namespace desk
