#include "stats/psychometric/psychometric_function.h"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <stdexcept>

#include "stats/arguments.h"
#include "stats/cholesky.h"
#include "stats/psychometric/curve_search.h"
#include "stats/psychometric/guessing_regression.h"
#include "stats/root.h"

namespace stats {
namespace {

void check(std::span<const LevelCount> counts, const PsychometricOptions& options) {
  require_count("number of counts", std::ssize(counts), 1, 10'000);
  std::optional<double> level;
  bool several = false;
  for (const LevelCount& count : counts) {
    require_finite("level", std::span(&count.level, 1));
    require_count("trials", count.trials, 0, kMostTrials);
    require_count("right", count.right, 0, count.trials);
    if (count.trials == 0) continue;
    if (level && *level != count.level) several = true;
    level = count.level;
  }
  if (!several) throw std::domain_error("two different levels with trials are needed");
  require_level("confidence", options.confidence);
  require_guessing_model({options.link, options.chance, options.lapse});
  if (options.most_lapse) {
    require_between("the most lapse", *options.most_lapse, options.lapse, 0.5);
    require_guessing_model({options.link, options.chance, *options.most_lapse});
    if (options.listeners_differ)
      throw std::domain_error("the lapse cannot be fitted where listeners differ: give it as a number");
  }
  if (options.target_right) {
    const double most = 1 - options.most_lapse.value_or(options.lapse);
    if (!(*options.target_right > options.chance && *options.target_right < most))
      throw std::domain_error("the share right at the threshold must lie between chance and 1 - lapse");
  }
}

double chi_square_tail(double value) { return std::erfc(std::sqrt(std::max(0.0, value) / 2)); }

CurveErrors errors_of(const std::vector<double>& information, std::size_t size, double intercept,
                      double slope, double target_sum) {
  const auto inverse = Cholesky::of(information, size).value().inverse();
  const double a = inverse[0], ab = inverse[1], b = inverse[size + 1],
               threshold = (target_sum - intercept) / slope;
  return {std::sqrt(a), std::sqrt(b), ab,
          std::sqrt(std::max(0.0, a + 2 * threshold * ab + threshold * threshold * b)) / std::abs(slope)};
}

/// From `from` outwards in growing steps to where `excess` is above 0, and back to where it is 0; nothing within `farthest`.
template <typename Excess>
std::optional<double> limit_from(const Excess& excess, double from, double step, double farthest) {
  double inside = from;
  for (double outside = from + step; std::abs(outside - from) < farthest;
       step *= 1.6, outside = inside + step) {
    if (excess(outside) > 0)
      return root_between(excess, std::min(inside, outside), std::max(inside, outside), 40);
    inside = outside;
  }
  return std::nullopt;
}

}  // namespace

PsychometricFunction psychometric_function(std::span<const LevelCount> counts,
                                           const PsychometricOptions& options) {
  check(counts, options);
  const CurveSearch search(counts, options);
  const double allowed = quantile(boost::math::chi_squared(1), options.confidence);

  PsychometricFunction found{};
  const auto best = search.best();
  const auto step = search.best_step();
  const bool is_step = !best || best->log_likelihood <= step.log_likelihood + 1e-8;
  const double top = is_step ? step.log_likelihood : best->log_likelihood;
  found.flat_likelihood_ratio = std::max(0.0, 2 * (top - search.flat_log_likelihood()));
  found.flat_p = chi_square_tail(found.flat_likelihood_ratio);
  const bool is_flat = found.flat_likelihood_ratio <= allowed;
  found.state = is_flat ? CurveState::flat : is_step ? CurveState::step : CurveState::found;
  found.log_likelihood = top + search.log_orders_of_answers();
  found.lapse = is_step ? step.lapse : best->lapse;
  if (is_step) {
    if (!is_flat) found.jump = step.between;
    return found;
  }

  // On the levels as given.
  const double slope = best->slope / search.range(), intercept = best->intercept - slope * search.centre();
  found.intercept = intercept;
  found.slope = slope;
  const GuessingModel model{options.link, options.chance, best->lapse};
  std::vector<GuessingRow> rows = rows_of(counts);
  std::vector<double> parameters{intercept, slope}, sums;
  if (options.listeners_differ) parameters.push_back(best->spread);
  for (const GuessingRow& row : rows) sums.push_back(intercept + slope * row.predictors[1]);
  const auto at = GuessingLikelihood(rows, model, options.listeners_differ).at(parameters);
  const double target = search.target_sum(best->lapse);
  if (Cholesky::of(at.observed, parameters.size()))
    found.observed_error = errors_of(at.observed, parameters.size(), intercept, slope, target);
  if (options.listeners_differ) {
    found.listener_spread = std::abs(best->spread);
    found.listener_p = chi_square_tail(2 * (top - search.pooled_log_likelihood())) / 2;
  } else {
    if (Cholesky::of(at.expected, 2))
      found.expected_error = errors_of(at.expected, 2, intercept, slope, target);
    found.deviance = guessing_deviance(rows, model, sums);
    found.pearson = guessing_pearson(rows, model, sums);
    found.degrees_of_freedom = static_cast<int>(rows.size()) - 2 - (options.most_lapse ? 1 : 0);
  }
  if (is_flat) return found;

  const double threshold = (target - best->intercept) / best->slope;  // in the search's units, as all below
  const auto threshold_excess = [&](double at_level) {
    return 2 * (top - search.best_at_threshold(at_level)) - allowed;
  };
  const auto slope_excess = [&](double at_slope) {
    return 2 * (top - search.best_at_slope(at_slope)) - allowed;
  };
  const auto level_of = [&](double unit) { return search.centre() + search.range() * unit; };
  found.threshold = level_of(threshold);
  found.threshold_beyond_levels = std::abs(threshold) > 0.5 + 1e-12;
  const auto lower = limit_from(threshold_excess, threshold, -0.05, 1e4),
             upper = limit_from(threshold_excess, threshold, 0.05, 1e4);
  if (lower && upper) found.threshold_interval = Interval{level_of(*lower), level_of(*upper)};
  const double towards_zero = slope_excess(0) > 0 ? root_between(slope_excess, std::min(0.0, best->slope),
                                                                 std::max(0.0, best->slope), 40)
                                                  : 0;
  std::optional<double> away;
  if (2 * (top - step.log_likelihood) > allowed)
    away = limit_from(slope_excess, best->slope, 0.3 * best->slope, 1e3 * std::abs(best->slope));
  const auto slope_of = [&](double unit) { return unit / search.range(); };
  if (away) *away = slope_of(*away);
  found.slope_lower = slope > 0 ? std::optional(slope_of(towards_zero)) : away;
  found.slope_upper = slope > 0 ? away : std::optional(slope_of(towards_zero));
  return found;
}

}  // namespace stats
