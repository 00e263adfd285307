#include "stats/discrimination/roc.h"

#include <cmath>
#include <cstdint>
#include <numeric>
#include <string>
#include <string_view>

#include "stats/arguments.h"
#include "stats/samples/mean_difference.h"

namespace stats {
namespace {

constexpr int kMostRated = 100'000;

std::int64_t rated_total(std::string_view name, const std::vector<int>& counts) {
  for (const int count : counts) require_count(name, count, 0, kMostRated);
  const auto total = std::accumulate(counts.begin(), counts.end(), std::int64_t{0});
  require_count("sum of " + std::string(name), total, 1, kMostRated);
  return total;
}

struct RatedTotals {
  std::int64_t signal, noise;
};

RatedTotals checked_totals(const RatedAnswers& answers) {
  const auto categories = std::ssize(answers.signal);
  require_count("categories of signal", categories, 2, 1'000);
  require_count("categories of noise", std::ssize(answers.noise), categories, categories);
  return {rated_total("signal", answers.signal), rated_total("noise", answers.noise)};
}

/// For each category, twice the number of `others` in later ones plus those in the same one.
std::vector<double> doubled_placements(const std::vector<int>& others) {
  std::vector<double> placements(others.size());
  double later = 0;
  for (std::size_t i = others.size(); i-- > 0; later += others[i]) placements[i] = 2 * later + others[i];
  return placements;
}

/// Squared standard error of the mean of the placements of one sample, as shares of the other.
double squared_error_of(const std::vector<int>& counts, const std::vector<double>& placements, double scale,
                        double mean, double total) {
  double squares = 0;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const double deviation = placements[i] / scale - mean;
    squares += counts[i] * deviation * deviation;
  }
  return squares / (total - 1) / total;
}

/// Twice the mid-rank of each rating, the surest "A" highest.
std::vector<double> ranked_ratings(const std::vector<int>& counts, const std::vector<int>& both) {
  const std::vector<double> doubled = doubled_placements(both);
  std::vector<double> ranks;
  for (std::size_t i = 0; i < counts.size(); ++i)
    ranks.insert(ranks.end(), static_cast<std::size_t>(counts[i]), doubled[i] + 1);
  return ranks;
}

}  // namespace

std::vector<HitRates> roc_points(const RatedAnswers& answers) {
  const auto [signals, noises] = checked_totals(answers);
  std::vector<HitRates> points{{0, 0}};
  std::int64_t hits = 0, false_alarms = 0;
  for (std::size_t i = 0; i < answers.signal.size(); ++i) {
    hits += answers.signal[i];
    false_alarms += answers.noise[i];
    points.push_back({double(hits) / double(signals), double(false_alarms) / double(noises)});
  }
  return points;
}

RocArea roc_area(const RatedAnswers& answers) {
  const auto totals = checked_totals(answers);
  const double signals = double(totals.signal), noises = double(totals.noise);
  const std::vector<double> of_signal = doubled_placements(answers.noise);
  std::vector<double> of_noise = doubled_placements(answers.signal);
  for (double& placement : of_noise) placement = 2 * signals - placement;  // earlier ones instead of later
  const double area = std::inner_product(of_signal.begin(), of_signal.end(), answers.signal.begin(), 0.0) /
                      (2 * signals * noises);
  RocArea result{area, std::nullopt};
  if (totals.signal > 1 && totals.noise > 1)
    result.standard_error = std::sqrt(squared_error_of(answers.signal, of_signal, 2 * noises, area, signals) +
                                      squared_error_of(answers.noise, of_noise, 2 * signals, area, noises));
  return result;
}

PermutationP roc_test(const RatedAnswers& answers, Alternative alternative, const MonteCarlo& monte_carlo) {
  checked_totals(answers);
  std::vector<int> both(answers.signal);
  for (std::size_t i = 0; i < both.size(); ++i) both[i] += answers.noise[i];
  return mean_difference_test(ranked_ratings(answers.signal, both), ranked_ratings(answers.noise, both),
                              alternative, monte_carlo);
}

}  // namespace stats
