#include "report/json/dictionary.h"

namespace report {
namespace {

Dictionary level_rows() {
  const std::string path = "comparisons[].level";
  return {
      {path, "object", "", "", "level of the two cables at the load"},
      {path + ".state", "string", "", "matched; measured, not matched; predicted only; not verified",
       "state"},
      {path + ".weighting", "string", "", "", "weighting of the prediction"},
      {path + ".measured_dB", "number or null", "dB", "", "mean over channels and moments, trims as set"},
      {path + ".measured_completely", "boolean", "", "",
       "both specimens, all channels, start and end of every sitting"},
      {path + ".largest_measured_dB", "number or null", "dB", "",
       "of one channel at one moment, farthest from 0"},
      {path + ".drift_dB", "number or null", "dB", "", "end less start, farthest from 0"},
      {path + ".predicted_dB", "number or null", "dB", "", "predicted, trims not counted"},
      {path + ".trim_dB", "number", "dB", "", "attenuation of the second less that of the first, as set"},
      {path + ".predicted_as_set_dB", "number or null", "dB", "", "predicted, trims as set"},
      {path + ".tolerance_dB", "number", "dB", "above 0", "within which levels count as matched"},
      {"comparisons[].level_sentence", "string", "", "", "the level in words"},
      {"comparisons[].loop_resistance_first_ohm", "number or null", "ohm", "0 or more",
       "of the first specimen"},
      {"comparisons[].loop_resistance_second_ohm", "number or null", "ohm", "0 or more",
       "of the second specimen"},
      {"comparisons[].loop_resistance_spread_ohm", "number or null", "ohm", "0 or more",
       "the larger spread of repeats"},
  };
}

Dictionary response_rows() {
  const std::string residual = "comparisons[].predicted_residual", measured = "comparisons[].measured";
  Dictionary all = {
      {"comparisons[].response_sentence", "string", "", "", "the response in words, or empty"},
      {residual, "object or null", "", "", "predicted response after the trims as set"},
      {residual + ".minimum_dB", "number", "dB", "", "least"},
      {residual + ".maximum_dB", "number", "dB", "", "greatest"},
      {residual + ".rms_dB", "number", "dB", "0 or more", "r.m.s., log-spaced"},
      {residual + ".largest_dB", "number", "dB", "", "farthest from 0"},
      {residual + ".frequency_of_largest_Hz", "number", "Hz", "20 to 20000", "where"},
      {residual + ".low_Hz", "number", "Hz", "20 to 20000", "begin of the band"},
      {residual + ".high_Hz", "number", "Hz", "20 to 20000", "end of the band"},
      {measured, "object or null", "", "", "measured response, nothing trimmed"},
      {measured + ".largest_dB", "number", "dB", "", "farthest from 0"},
      {measured + ".frequency_of_largest_Hz", "number", "Hz", "20 to 20000", "where"},
      {measured + ".rms_dB", "number", "dB", "0 or more", "r.m.s., log-spaced"},
      {measured + ".weighted_level_dB", "number", "dB", "", "weighted level difference"},
      {measured + ".low_Hz", "number", "Hz", "20 to 20000", "begin of the band"},
      {measured + ".high_Hz", "number", "Hz", "20 to 20000", "end of the band"},
      {measured + ".repeatability_dB", "number or null", "dB", "",
       "largest difference between repeats of one cable"},
  };
  for (const char* curve : {"comparisons[].predicted_curve", "comparisons[].measured_curve"}) {
    const std::string path = curve;
    all.push_back({path, "object or null", "", "", "difference against frequency, nothing trimmed"});
    all.push_back({path + ".frequency_Hz", "list of number", "Hz", "above 0, rising", "frequencies"});
    all.push_back({path + ".difference_dB", "list of number", "dB", "", "difference at each"});
  }
  return all;
}

Dictionary correlation_rows() {
  const std::string path = "correlations";
  return {
      {path, "list of object", "", "", "outcome against one measured difference at a time; exploratory"},
      {path + "[].measure", "string", "", "", "what differs, with its unit"},
      {path + "[].outcome", "string", "", "", "which share"},
      {path + "[].against", "string", "", "absolute difference; signed difference",
       "how the difference was taken"},
      {path + "[].comparisons", "list of integer", "", "0 or more", "places in `plan.comparisons`"},
      {path + "[].x", "list of number", "as in `measure`", "", "differences"},
      {path + "[].y", "list of number", "", "0 to 1", "outcomes"},
      {path + "[].rho", "number or null", "", "-1 to 1",
       "Spearman's rank correlation; null when one side is constant or fewer than two comparisons are left"},
      {path + "[].p", "number", "", "0 to 1", "two-sided permutation p"},
      {path + "[].p_adjusted", "number", "", "0 to 1", "Benjamini-Hochberg over the list"},
      {path + "[].p_standard_error", "number or null", "", "0 or more", "of `p`, when simulated"},
      {path + "[].smallest_attainable_p", "number or null", "", "0 to 1",
       "smallest p that these values can give; null without `rho`, and not computed among more than 8 "
       "cables"},
      {path + "[].rho_needed", "number or null", "", "0 to 1",
       "size needed at the list's first step; null: cannot reach it where `smallest_attainable_p` is a "
       "number, else "
       "not computed"},
      {path + "[].rho_needed_is_exact", "boolean", "", "",
       "false: approximation by Student's t for untied values, beyond 12 comparisons"},
      {path + "[].permuted_by_cable", "boolean", "", "",
       "comparisons share cables: permuted among the cables"},
      {path + "[].unequal_trials", "boolean", "", "", "comparisons had unequal numbers of trials"},
      {path + "[].sentence", "string", "", "", "in words"},
  };
}

Dictionary pace_rows() {
  return {
      {"pace", "object", "", "", "presentations of the same cable again against changed ones"},
      {"pace.recorded", "boolean", "", "", "whether times were kept"},
      {"pace.same", "integer", "", "0 or more",
       "presentations of the same cable again, at the places of a trial where both occur"},
      {"pace.changed", "integer", "", "0 or more", "presentations that changed it"},
      {"pace.mean_same_s", "number", "s", "0 or more", "mean time since the presentation before, same cable"},
      {"pace.mean_changed_s", "number", "s", "0 or more", "the same for a changed cable"},
      {"pace.difference_s", "number or null", "s", "", "changed less same"},
      {"pace.lower_s", "number or null", "s", "", "lower end of its 95 % interval"},
      {"pace.upper_s", "number or null", "s", "", "upper end of its 95 % interval"},
      {"pace.p", "number or null", "", "0 to 1", "permutation p of the difference"},
      {"pace.p_standard_error", "number or null", "", "0 or more", "of `p`, when simulated"},
      {"pace.overruns", "integer", "", "0 or more", "presentations later than the plan's pace allows"},
  };
}

}  // namespace

Dictionary finding_dictionary() {
  Dictionary all = level_rows();
  for (const auto& part : {response_rows(), correlation_rows(), pace_rows()})
    all.insert(all.end(), part.begin(), part.end());
  return all;
}

}  // namespace report
