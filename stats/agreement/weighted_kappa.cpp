#include "stats/agreement/weighted_kappa.h"

#include <cmath>

namespace stats {
namespace {

/// Shares of the categories, for each rater, and the mean weight of a category against the other's answers.
struct RaterShares {
  std::vector<double> first, second;
  std::vector<double> mean_of_first, mean_of_second;
};

RaterShares rater_shares(const CountTable& counts, const AgreementWeights& weights, double things) {
  const std::size_t size = counts.size();
  RaterShares shares{{}, {}, std::vector<double>(size), std::vector<double>(size)};
  for (const auto& row : counts) shares.first.push_back(double(row_sum(row)) / things);
  for (const std::int64_t column : column_sums(counts)) shares.second.push_back(double(column) / things);
  for (std::size_t i = 0; i < size; ++i)
    for (std::size_t j = 0; j < size; ++j) {
      shares.mean_of_first[i] += weights[i][j] * shares.second[j];
      shares.mean_of_second[j] += weights[i][j] * shares.first[i];
    }
  return shares;
}

/// Fleiss, Cohen and Everitt (1969), equations 9 (null) and 13.
void add_weighted_errors(WeightedKappa& result, const CountTable& counts, const AgreementWeights& weights,
                         const RaterShares& shares) {
  const double n = double(result.things);
  const double expected = result.expected_agreement;
  const double lack = 1 - result.kappa;
  double spread = 0, null_spread = 0;
  for (std::size_t i = 0; i < counts.size(); ++i)
    for (std::size_t j = 0; j < counts.size(); ++j) {
      const double means = shares.mean_of_first[i] + shares.mean_of_second[j];
      spread += counts[i][j] / n * std::pow(weights[i][j] - means * lack, 2);
      null_spread += shares.first[i] * shares.second[j] * std::pow(weights[i][j] - means, 2);
    }
  spread -= std::pow(result.kappa - expected * lack, 2);
  null_spread -= expected * expected;
  const double scale = std::sqrt(n) * (1 - expected);
  result.standard_error = std::sqrt(std::fmax(0, spread)) / scale;
  result.null_standard_error = std::sqrt(std::fmax(0, null_spread)) / scale;
}

}  // namespace

std::optional<WeightedKappa> weighted_kappa(const CountTable& counts, const AgreementWeights& weights) {
  const std::int64_t things = checked_square_total(counts);
  require_weights(weights, counts.size());
  const double n = double(things);
  const RaterShares shares = rater_shares(counts, weights, n);
  double observed_lack = 0, expected_lack = 0;
  for (std::size_t i = 0; i < counts.size(); ++i)
    for (std::size_t j = 0; j < counts.size(); ++j) {
      observed_lack += counts[i][j] / n * (1 - weights[i][j]);
      expected_lack += shares.first[i] * shares.second[j] * (1 - weights[i][j]);
    }
  if (expected_lack == 0) return std::nullopt;
  WeightedKappa result{};
  result.kappa = 1 - observed_lack / expected_lack;
  result.observed_agreement = 1 - observed_lack;
  result.expected_agreement = 1 - expected_lack;
  result.things = things;
  add_weighted_errors(result, counts, weights, shares);
  return result;
}

}  // namespace stats
