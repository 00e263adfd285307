#include "stats/association/item_permutation.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>
#include <stdexcept>
#include <string>
#include <vector>

#include "stats/arguments.h"
#include "stats/association/ranks.h"
#include "stats/level.h"
#include "stats/random.h"

namespace stats {
namespace {

/// Correlations this close are equal.
constexpr double kEqualRho = 1e-12;

/// rho of the listed pairs for any order of the values.
class PairCorrelation {
 public:
  PairCorrelation(std::span<const double> values, std::span<const ItemPair> pairs, PairValue pair_value)
      : items_(values.size()), pairs_(pairs), differences_(values.size() * values.size()) {
    for (std::size_t i = 0; i < items_; ++i)
      for (std::size_t j = 0; j < items_; ++j) {
        const double difference = values[i] - values[j];
        differences_[i * items_ + j] =
            pair_value == PairValue::absolute_difference ? std::abs(difference) : difference;
      }
    const auto [lowest, highest] = std::minmax_element(values.begin(), values.end());
    tie_differences(1e-9 * (*highest - *lowest));
    std::vector<double> outcomes;
    for (const ItemPair& pair : pairs) outcomes.push_back(pair.outcome);
    outcome_ranks_ = doubled_midranks(outcomes);
  }

  std::size_t items() const { return items_; }

  const std::vector<std::int64_t>& outcome_ranks() const { return outcome_ranks_; }

  /// @param order  item i has the value at place order[i].
  std::vector<std::int64_t> difference_ranks(std::span<const std::size_t> order) const {
    std::vector<double> chosen;
    chosen.reserve(pairs_.size());
    for (const ItemPair& pair : pairs_)
      chosen.push_back(
          differences_[order[std::size_t(pair.first)] * items_ + order[std::size_t(pair.second)]]);
    return doubled_midranks(chosen);
  }

  RankMoments moments(std::span<const std::size_t> order) const {
    return rank_moments(difference_ranks(order), outcome_ranks_);
  }

  double rho_of(std::span<const std::size_t> order) const {
    const RankMoments of_order = moments(order);
    return of_order.x_variance == 0 ? 0.0 : rho(of_order);
  }

 private:
  /// Numbers the differences by size, the same number for those that follow each other within `tolerance`.
  void tie_differences(double tolerance) {
    std::vector<std::size_t> places(differences_.size());
    std::iota(places.begin(), places.end(), std::size_t{0});
    std::sort(places.begin(), places.end(),
              [&](auto a, auto b) { return differences_[a] < differences_[b]; });
    std::vector<double> numbers(differences_.size());
    for (std::size_t k = 1; k < places.size(); ++k) {
      const bool tied = differences_[places[k]] - differences_[places[k - 1]] <= tolerance;
      numbers[places[k]] = numbers[places[k - 1]] + (tied ? 0 : 1);
    }
    differences_ = std::move(numbers);
  }

  std::size_t items_;
  std::span<const ItemPair> pairs_;
  std::vector<double> differences_;
  std::vector<std::int64_t> outcome_ranks_;
};

std::vector<std::size_t> as_given(std::size_t items) {
  std::vector<std::size_t> order(items);
  std::iota(order.begin(), order.end(), std::size_t{0});
  return order;
}

std::vector<double> rho_of_every_order(const PairCorrelation& correlation) {
  std::vector<double> all;
  auto order = as_given(correlation.items());
  do all.push_back(correlation.rho_of(order));
  while (std::next_permutation(order.begin(), order.end()));
  return all;
}

std::vector<double> rho_of_drawn_orders(const PairCorrelation& correlation, const MonteCarlo& monte_carlo) {
  std::vector<double> drawn;
  auto order = as_given(correlation.items());
  Random random(monte_carlo.seed);
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    random.shuffle(std::span(order));
    drawn.push_back(correlation.rho_of(order));
  }
  return drawn;
}

std::int64_t count_reaching(const std::vector<double>& all, double seen, Alternative alternative) {
  return std::count_if(all.begin(), all.end(),
                       [=](double value) { return counts_against(value, seen, alternative, kEqualRho); });
}

/// rho as seen, or nothing when it is 0/0.
std::optional<double> rho_as_given(const PairCorrelation& correlation) {
  const RankMoments moments = correlation.moments(as_given(correlation.items()));
  if (moments.x_variance == 0 || moments.y_variance == 0) return std::nullopt;
  return rho(moments);
}

void check(std::span<const double> values, std::span<const ItemPair> pairs) {
  require_count("number of items", std::ssize(values), 2, 1'000);
  require_finite("values", values);
  require_count("number of pairs", std::ssize(pairs), 2, 10'000);
  for (const ItemPair& pair : pairs) {
    require_count("first item of a pair", pair.first, 0, std::ssize(values) - 1);
    require_count("second item of a pair", pair.second, 0, std::ssize(values) - 1);
    if (pair.first == pair.second)
      throw std::domain_error("the items of a pair must be different, got " + std::to_string(pair.first) +
                              " twice");
    require_finite("outcome", std::span(&pair.outcome, 1));
  }
}

}  // namespace

std::optional<RankCorrelation> permute_by_item(std::span<const double> values,
                                               std::span<const ItemPair> pairs, PairValue pair_value,
                                               Alternative alternative, const MonteCarlo& monte_carlo) {
  check(values, pairs);
  require_draws(monte_carlo);
  const PairCorrelation correlation(values, pairs, pair_value);
  const auto seen = rho_as_given(correlation);
  if (!seen) return std::nullopt;
  if (std::ssize(values) <= kExactItems) {
    const auto all = rho_of_every_order(correlation);
    return RankCorrelation{*seen,
                           exact_p(double(count_reaching(all, *seen, alternative)) / double(all.size()))};
  }
  const auto drawn = rho_of_drawn_orders(correlation, monte_carlo);
  return RankCorrelation{*seen, monte_carlo_p(count_reaching(drawn, *seen, alternative), monte_carlo.draws)};
}

PairRanks pair_ranks(std::span<const double> values, std::span<const ItemPair> pairs, PairValue pair_value) {
  check(values, pairs);
  const PairCorrelation correlation(values, pairs, pair_value);
  return {correlation.difference_ranks(as_given(values.size())), correlation.outcome_ranks()};
}

std::optional<double> smallest_attainable_p_by_item(std::span<const double> values,
                                                    std::span<const ItemPair> pairs, PairValue pair_value,
                                                    Alternative alternative) {
  check(values, pairs);
  require_count("number of items", std::ssize(values), 2, kExactItems);
  const PairCorrelation correlation(values, pairs, pair_value);
  if (!rho_as_given(correlation)) return std::nullopt;
  const auto all = rho_of_every_order(correlation);
  const auto [lowest, highest] = std::minmax_element(all.begin(), all.end());
  const bool downwards =
      alternative == Alternative::less || (alternative == Alternative::two_sided && -*lowest > *highest);
  return double(count_reaching(all, downwards ? *lowest : *highest, alternative)) / double(all.size());
}

std::optional<double> smallest_significant_rho_by_item(std::span<const double> values,
                                                       std::span<const ItemPair> pairs, PairValue pair_value,
                                                       double level) {
  check(values, pairs);
  require_count("number of items", std::ssize(values), 2, kExactItems);
  require_level("level", level);
  const PairCorrelation correlation(values, pairs, pair_value);
  if (!rho_as_given(correlation)) return std::nullopt;
  auto sizes = rho_of_every_order(correlation);
  for (double& size : sizes) size = std::abs(size);
  std::sort(sizes.begin(), sizes.end(), std::greater<>());
  std::optional<double> smallest;
  for (std::size_t i = 0; i < sizes.size() && reaches(double(i + 1) / double(sizes.size()), level); ++i)
    if (i + 1 == sizes.size() || sizes[i] - sizes[i + 1] > kEqualRho) smallest = sizes[i];
  return smallest;
}

}  // namespace stats
