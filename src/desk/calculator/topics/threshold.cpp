#include <algorithm>
#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/psychometric/psychometric_function.h"
#include "text/error.h"

namespace desk {
namespace {

std::vector<stats::LevelCount> counts_of(const Given& given) {
  const auto levels = given.list("levels");
  const auto right = given.counts("right", 0, 1'000'000), trials = given.counts("trials", 0, 1'000'000);
  std::vector<int> listeners(levels.size());
  if (given.has("listeners")) listeners = given.counts("listeners", 0, 1'000'000);
  const auto require_as_many = [&](const std::string& name, std::size_t found) {
    if (found != levels.size())
      throw text::BadInput(name + " must be as many as levels, got " + std::to_string(found) + " and " +
                           std::to_string(levels.size()) + " levels");
  };
  require_as_many("right", right.size());
  if (trials.size() != 1) require_as_many("trials", trials.size());
  require_as_many("listeners", listeners.size());
  std::vector<stats::LevelCount> counts;
  for (std::size_t i = 0; i < levels.size(); ++i)
    counts.push_back({levels[i], right[i], trials[trials.size() == 1 ? 0 : i], listeners[i]});
  return counts;
}

stats::PsychometricOptions options_of(const Given& given) {
  stats::PsychometricOptions options;
  const std::vector<std::string> curve_links{"logit", "probit", "cloglog"};
  const auto link = std::find(curve_links.begin(), curve_links.end(), given.one_of("link", curve_links)) -
                    curve_links.begin();
  options.link = static_cast<stats::CurveLink>(link);
  options.chance = given.number("chance");
  options.lapse = given.number("lapse");
  if (given.has("most-lapse")) options.most_lapse = given.number("most-lapse");
  if (given.has("at")) options.target_right = given.number("at");
  options.confidence = 1 - given.level("level");
  options.listeners_differ = given.has("listeners");
  return options;
}

std::string state_words(stats::CurveState state) {
  if (state == stats::CurveState::flat) return "none: the share right may be the same at all levels";
  if (state == stats::CurveState::step)
    return "between two levels: the share right jumps, the slope is infinite";
  return "found";
}

void add_errors(Figures& figures, const std::string& kind, const std::optional<stats::CurveErrors>& errors) {
  if (!errors) return;
  const std::string note = "by the " + kind + " information";
  figures.add("intercept_error_" + kind, "standard error of intercept", errors->intercept, note);
  figures.add("slope_error_" + kind, "standard error of slope", errors->slope, note);
}

Figures threshold_figures(const Given& given) {
  const auto counts = counts_of(given);
  const auto options = options_of(given);
  const auto found = stats::psychometric_function(counts, options);
  const std::string interval = "likelihood interval, " + per_cent(options.confidence);
  Figures figures{"threshold, from shares right at several levels",
                  {{"state", "threshold", state_words(found.state)},
                   {"flat_p", "p of the same share at all levels", found.flat_p,
                    "by the likelihood ratio and chi-square, an approximation"}}};
  if (found.jump) add_limits(figures, "jump", "jump", *found.jump, "levels; the same twice: at this level");
  if (found.threshold) {
    figures.add("threshold", "threshold", *found.threshold,
                found.threshold_beyond_levels ? "beyond all levels presented: extrapolated" : "level");
    if (found.threshold_interval)
      add_limits(figures, "threshold", "threshold", *found.threshold_interval, interval);
    const auto& errors = found.expected_error ? found.expected_error : found.observed_error;
    if (errors)
      figures.add("threshold_error", "its standard error", errors->threshold,
                  found.expected_error ? "by the expected information" : "by the observed information");
    figures.add("slope_lower", "slope from", known(found.slope_lower),
                found.slope_lower ? interval : "no bound");
    figures.add("slope_upper", "slope to", known(found.slope_upper),
                found.slope_upper ? interval : "no bound");
  }
  figures.add("intercept", "intercept", known(found.intercept), "of the link's sum");
  figures.add("slope", "slope", known(found.slope), "of the link's sum, for one unit of level");
  add_errors(figures, "expected", found.expected_error);
  add_errors(figures, "observed", found.observed_error);
  figures.add("lapse", "lapse", found.lapse, options.most_lapse ? "fitted" : "as given");
  figures.add("log_likelihood", "log likelihood", found.log_likelihood, "of the counts");
  if (found.deviance) {
    figures.add("deviance", "deviance", *found.deviance, "from a share for each row");
    figures.add("degrees_of_freedom", "degrees of freedom", static_cast<long long>(found.degrees_of_freedom));
  }
  if (found.listener_spread) {
    figures.add("listener_spread", "spread of listeners", *found.listener_spread,
                "standard deviation of their shifts of the link's sum");
    figures.add("listener_p", "p of no spread", *found.listener_p,
                "half the tail of chi-square, an approximation");
  }
  return figures;
}

}  // namespace

Topic threshold_topic() {
  return {"Thresholds",
          {{"threshold",
            "Level at which half of the differences are noticed, and how steeply that comes",
            "--levels -2,-1,0,1,2,3 --right 21,22,26,33,37,40 --trials 40 --link probit",
            {{"--levels", "Levels presented, " + list_form, Argument::required, Shape::list},
             {"--right", "Right answers at each", Argument::required, Shape::list},
             {"--trials", "Trials at each; one number for all", Argument::required, Shape::list},
             {"--listeners",
              "A number for the listener of each: their curves are then shifted against each other", "",
              Shape::list},
             {"--link", "logit, probit or cloglog", "logit"},
             chance_argument(),
             {"--lapse", "Share of trials that are wrong whatever is noticed", "0"},
             {"--most-lapse", "Fits the lapse from --lapse to this", ""},
             {"--at", "Share right at the threshold; else half-way from chance to 1 - lapse", ""},
             level_argument()},
            threshold_figures}}};
}

}  // namespace desk
