#include "stats/psychometric/curve_search.h"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <limits>

namespace stats {
namespace {

constexpr double kImpossible = -std::numeric_limits<double>::infinity();
/// In its place where numbers have to be compared.
constexpr double kLeast = -1e300;
/// Parts of the range of lapses that are looked at before the best one is searched.
constexpr int kLapses = 8;
/// Levels that are looked at as thresholds, evenly among them where there are more.
constexpr std::size_t kPlaces = 24;

/// Sizes of slopes, for levels one apart, from hardly rising to a jump.
const std::vector<double>& slope_sizes() {
  static const std::vector<double> sizes = [] {
    std::vector<double> all;
    for (double size = 0.25; size < 1000; size *= 1.4) all.push_back(size);
    return all;
  }();
  return sizes;
}

/// Where a value is no less than both its neighbours'.
std::vector<std::size_t> peaks_of(const std::vector<double>& values) {
  std::vector<std::size_t> peaks;
  for (std::size_t i = 0; i < values.size(); ++i)
    if ((i == 0 || values[i] >= values[i - 1]) && (i + 1 == values.size() || values[i] >= values[i + 1]))
      peaks.push_back(i);
  return peaks;
}

double log_of_answers(double right, double wrong, double share, double rest) {
  return (right > 0 ? right * std::log(share) : 0) + (wrong > 0 ? wrong * std::log(rest) : 0);
}

}  // namespace

std::vector<GuessingRow> rows_of(std::span<const LevelCount> counts) {
  std::vector<GuessingRow> rows;
  for (const LevelCount& count : counts)
    if (count.trials > 0) rows.push_back({{1, count.level}, count.right, count.trials, 0, count.listener});
  return rows;
}

CurveSearch::CurveSearch(std::span<const LevelCount> counts, const PsychometricOptions& options)
    : options_(options), rows_(rows_of(counts)) {
  double lowest = rows_.front().predictors[1], highest = lowest;
  for (const GuessingRow& row : rows_) {
    lowest = std::min(lowest, row.predictors[1]);
    highest = std::max(highest, row.predictors[1]);
  }
  centre_ = lowest / 2 + highest / 2;
  range_ = highest - lowest;
  for (GuessingRow& row : rows_) {
    row.predictors[1] = (row.predictors[1] - centre_) / range_;
    units_.push_back(row.predictors[1]);
  }
  std::sort(units_.begin(), units_.end());
  units_.erase(std::unique(units_.begin(), units_.end()), units_.end());
}

double CurveSearch::target_sum(double lapse) const {
  const double noticed = options_.target_right
                             ? (*options_.target_right - options_.chance) / (1 - options_.chance - lapse)
                             : 0.5;
  return link_inverse(options_.link, noticed);
}

template <typename Value>
double CurveSearch::largest_over_lapses(const Value& value, double* where) const {
  double best = value(options_.lapse);
  if (where) *where = options_.lapse;
  if (!options_.most_lapse || *options_.most_lapse == options_.lapse) return best;
  std::vector<double> values{best}, lapses{options_.lapse};
  for (int i = 1; i <= kLapses; ++i) {
    lapses.push_back(options_.lapse + (*options_.most_lapse - options_.lapse) * i / kLapses);
    values.push_back(value(lapses.back()));
  }
  for (const std::size_t peak : peaks_of(values)) {
    const double lower = lapses[peak - (peak > 0)], upper = lapses[std::min(peak + 1, lapses.size() - 1)];
    const auto [inner, loss] =
        boost::math::tools::brent_find_minima([&](double lapse) { return -value(lapse); }, lower, upper, 26);
    for (const auto& [lapse, at] : {std::pair(inner, -loss), std::pair(lapses[peak], values[peak])})
      if (at > best) {
        best = at;
        if (where) *where = lapse;
      }
  }
  return best;
}

std::optional<CurveSearch::Best> CurveSearch::best_of(double lapse, bool listeners_differ) const {
  std::optional<Best> best;
  const auto consider = [&](const GuessingLikelihood& likelihood, std::vector<double> start) {
    const auto largest = largest_from(likelihood, std::move(start));
    if (!largest || (best && largest->at.value <= best->log_likelihood)) return;
    const auto& parameters = largest->parameters;
    best = Best{parameters[0], parameters[1], parameters.size() > 2 ? parameters[2] : 0, lapse,
                largest->at.value};
  };
  const GuessingModel model{options_.link, options_.chance, lapse};
  if (listeners_differ) {
    const auto pooled = best_of(lapse, false);
    const GuessingLikelihood likelihood(rows_, model, true);
    for (const double spread : {0.3, 1.2}) {
      if (pooled)
        consider(likelihood, {pooled->intercept, pooled->slope, spread});
      else
        consider(likelihood, {0, 3, spread});
    }
    // A spread of 0 is always among the candidates.
    if (pooled && (!best || pooled->log_likelihood > best->log_likelihood)) best = pooled;
    return best;
  }
  const GuessingLikelihood likelihood(rows_, model, false);
  // Guesses make several peaks: the likelihood is looked at over all slopes, and Newton's steps start from where it is high.
  for (const double sign : {1.0, -1.0}) {
    std::vector<double> values, middles;
    for (const double size : slope_sizes()) {
      values.push_back(kLeast);
      middles.push_back(0);
      for (const double intercept : intercepts_of(sign * size)) {
        const double value = likelihood.at({intercept, sign * size}).value;
        if (value <= values.back()) continue;
        values.back() = value;
        middles.back() = intercept;
      }
    }
    for (const std::size_t peak : peaks_of(values))
      consider(likelihood, {middles[peak], sign * slope_sizes()[peak]});
  }
  return best;
}

/// Of curves of that slope which are half way at a level, between two, or beyond them all.
std::vector<double> CurveSearch::intercepts_of(double slope) const {
  std::vector<double> intercepts{-slope * units_.front() + 2, -slope * units_.back() - 2};
  const std::size_t every = (units_.size() + kPlaces - 1) / kPlaces;
  for (std::size_t i = 0; i < units_.size(); i += every) {
    intercepts.push_back(-slope * units_[i]);
    if (i > 0) intercepts.push_back(-slope * (units_[i] + units_[i - every]) / 2);
  }
  return intercepts;
}

std::optional<CurveSearch::Best> CurveSearch::best() const {
  double lapse = options_.lapse;
  largest_over_lapses(
      [&](double at) {
        const auto found = best_of(at, options_.listeners_differ);
        return found ? found->log_likelihood : kLeast;
      },
      &lapse);
  return best_of(lapse, options_.listeners_differ);
}

double CurveSearch::pooled_log_likelihood() const {
  const auto found = best_of(options_.lapse, false);
  return std::max(found ? found->log_likelihood : kImpossible, step_of(options_.lapse).log_likelihood);
}

double CurveSearch::constant_log_likelihood(double share) const {
  double right = 0, wrong = 0;
  for (const GuessingRow& row : rows_) {
    right += double(row.right);
    wrong += double(row.trials - row.right);
  }
  return log_of_answers(right, wrong, share, 1 - share);
}

double CurveSearch::flat_of(double lapse) const {
  double right = 0, trials = 0;
  for (const GuessingRow& row : rows_) {
    right += double(row.right);
    trials += double(row.trials);
  }
  return constant_log_likelihood(std::clamp(right / trials, options_.chance, 1 - lapse));
}

double CurveSearch::flat_log_likelihood() const {
  const double pooled = largest_over_lapses([&](double lapse) { return flat_of(lapse); });
  return options_.listeners_differ ? std::max(pooled, best_at_slope(0)) : pooled;
}

/// At the level of the jump itself the share right is `target`.
double CurveSearch::step_log_likelihood(double lapse, double unit, bool upwards, double target) const {
  double sum = 0;
  for (const GuessingRow& row : rows_) {
    const double right = double(row.right), wrong = double(row.trials - row.right), level = row.predictors[1];
    const bool above = upwards ? level > unit : level < unit;
    if (std::abs(level - unit) < 1e-12)
      sum += log_of_answers(right, wrong, target, 1 - target);
    else
      sum += above ? log_of_answers(right, wrong, 1 - lapse, lapse)
                   : log_of_answers(right, wrong, options_.chance, 1 - options_.chance);
  }
  return sum;
}

CurveSearch::Step CurveSearch::step_of(double lapse) const {
  Step best;
  best.log_likelihood = kImpossible;
  best.lapse = lapse;
  const auto level_of = [&](double unit) { return centre_ + range_ * unit; };
  for (std::size_t at = 0; at < units_.size(); ++at) {
    double right = 0, trials = 0;
    for (const GuessingRow& row : rows_)
      if (row.predictors[1] == units_[at]) {
        right += double(row.right);
        trials += double(row.trials);
      }
    const double share = std::clamp(right / trials, options_.chance, 1 - lapse);
    for (const bool upwards : {true, false}) {
      const double value = step_log_likelihood(lapse, units_[at], upwards, share);
      if (!(value > best.log_likelihood)) continue;
      best.log_likelihood = value;
      // At an end of its range the share belongs to one side of the jump.
      const bool is_low = share <= options_.chance, is_high = share >= 1 - lapse,
                 moves_up = upwards ? is_low : is_high;
      const std::size_t below = is_low || is_high ? (moves_up ? at : at - (at > 0)) : at,
                        above =
                            is_low || is_high ? (moves_up ? std::min(at + 1, units_.size() - 1) : at) : at;
      best.between = {level_of(units_[below]), level_of(units_[above])};
    }
  }
  return best;
}

CurveSearch::Step CurveSearch::best_step() const {
  double lapse = options_.lapse;
  largest_over_lapses([&](double at) { return std::max(step_of(at).log_likelihood, kLeast); }, &lapse);
  return step_of(lapse);
}

double CurveSearch::best_of_rows(std::vector<GuessingRow> rows, double lapse,
                                 const std::vector<double>& starts) const {
  const GuessingModel model{options_.link, options_.chance, lapse};
  const GuessingLikelihood pooled(rows, model, false);
  double best = kImpossible, from = starts.front();
  for (const double start : starts)
    if (const auto found = largest_from(pooled, {start}); found && found->at.value > best) {
      best = found->at.value;
      from = found->parameters[0];
    }
  if (options_.listeners_differ) {
    const GuessingLikelihood apart(std::move(rows), model, true);
    for (const double spread : {0.5, 1.5})
      if (const auto found = largest_from(apart, {from, spread})) best = std::max(best, found->at.value);
  }
  return best;
}

double CurveSearch::best_at_threshold(double unit) const {
  return largest_over_lapses([&](double lapse) {
    const double target = target_sum(lapse),
                 share =
                     options_.chance + (1 - options_.chance - lapse) * link_at(options_.link, target).share;
    std::vector<GuessingRow> rows = rows_;
    for (GuessingRow& row : rows)
      row = {{row.predictors[1] - unit}, row.right, row.trials, target, row.listener};
    const GuessingLikelihood likelihood(rows, {options_.link, options_.chance, lapse}, false);
    std::vector<double> starts;
    for (const double sign : {1.0, -1.0}) {
      std::vector<double> values, slopes;
      for (const double size : slope_sizes()) {
        slopes.push_back(sign * size / (1 + std::abs(unit)));
        values.push_back(likelihood.at({slopes.back()}).value);
      }
      for (const std::size_t peak : peaks_of(values)) starts.push_back(slopes[peak]);
    }
    return std::max({best_of_rows(std::move(rows), lapse, starts), constant_log_likelihood(share),
                     step_log_likelihood(lapse, unit, true, share),
                     step_log_likelihood(lapse, unit, false, share), kLeast});
  });
}

double CurveSearch::best_at_slope(double slope) const {
  return largest_over_lapses([&](double lapse) {
    std::vector<GuessingRow> rows = rows_;
    for (GuessingRow& row : rows) row = {{1}, row.right, row.trials, slope * row.predictors[1], row.listener};
    return std::max({best_of_rows(std::move(rows), lapse, intercepts_of(slope)),
                     constant_log_likelihood(options_.chance), constant_log_likelihood(1 - lapse),
                     slope == 0 ? flat_of(lapse) : kLeast, kLeast});
  });
}

}  // namespace stats
