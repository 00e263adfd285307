#include "stats/agreement/kappa.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "stats/arguments.h"

namespace stats {
namespace {

double squared(double value) { return value * value; }

/// Fleiss, Cohen and Everitt (1969), equations for the unweighted kappa.
void add_standard_errors(CohenKappa& result, const CountTable& counts) {
  const double n = double(result.things);
  const auto columns = column_sums(counts);
  const auto row_share = [&](std::size_t i) { return double(row_sum(counts[i])) / n; };
  const auto column_share = [&](std::size_t j) { return double(columns[j]) / n; };
  const double expected = result.expected_agreement;
  const double lack = 1 - result.kappa;
  double spread = 0;
  double null_spread = expected + squared(expected);
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const double both = row_share(i) + column_share(i);
    null_spread -= row_share(i) * column_share(i) * both;
    for (std::size_t j = 0; j < counts.size(); ++j)
      spread += counts[i][j] / n *
                (i == j ? squared(1 - both * lack) : squared(lack * (column_share(i) + row_share(j))));
  }
  spread -= squared(result.kappa - expected * lack);
  const double scale = std::sqrt(n) * (1 - expected);
  result.standard_error = std::sqrt(std::fmax(0, spread)) / scale;
  result.null_standard_error = std::sqrt(std::fmax(0, null_spread)) / scale;
}

/// Ratings in all, and raters of each subject.
std::pair<std::int64_t, std::int64_t> checked_equal_raters(const CountTable& counts) {
  const std::int64_t ratings = checked_total(counts);
  const std::int64_t raters = row_sum(counts.front());
  require_count("raters of a subject", raters, 2, kMostTrials);
  for (const auto& row : counts) require_count("raters of a subject", row_sum(row), raters, raters);
  return {ratings, raters};
}

}  // namespace

std::optional<CohenKappa> cohen_kappa(const CountTable& counts) {
  const std::int64_t n = checked_square_total(counts);
  const auto columns = column_sums(counts);
  std::int64_t alike = 0;
  std::int64_t most_alike = 0;
  std::int64_t by_chance = 0;  // n squared times the expected agreement
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const std::int64_t row = row_sum(counts[i]);
    alike += counts[i][i];
    most_alike += std::min(row, columns[i]);
    by_chance += row * columns[i];
  }
  if (by_chance == n * n) return std::nullopt;
  CohenKappa result{};
  result.kappa = double(n * alike - by_chance) / double(n * n - by_chance);
  result.observed_agreement = double(alike) / double(n);
  result.expected_agreement = double(by_chance) / double(n * n);
  result.things = n;
  result.largest_kappa = double(n * most_alike - by_chance) / double(n * n - by_chance);
  add_standard_errors(result, counts);
  return result;
}

std::optional<FleissKappa> fleiss_kappa(const CountTable& counts) {
  const auto [ratings, raters] = checked_equal_raters(counts);
  std::int64_t agreeing = 0;  // ordered pairs of ratings of one subject
  for (const auto& row : counts)
    for (std::int64_t count : row) agreeing += count * (count - 1);
  double expected = 0;
  double spread = 0;  // sum of p q
  double skew = 0;    // sum of p q (q - p)
  for (std::int64_t column : column_sums(counts)) {
    if (column == ratings) return std::nullopt;
    const double p = double(column) / double(ratings);
    const double q = 1 - p;
    expected += p * p;
    spread += p * q;
    skew += p * q * (q - p);
  }
  const double pairs = double(ratings) * double(raters - 1);
  const double observed = double(agreeing) / pairs;
  return FleissKappa{(observed - expected) / (1 - expected), observed, expected,
                     std::sqrt(2 * (squared(spread) - skew) / pairs) / spread};
}

std::vector<CategoryKappa> fleiss_category_kappas(const CountTable& counts) {
  const auto [ratings, raters] = checked_equal_raters(counts);
  const double pairs = double(ratings) * double(raters - 1);
  const auto columns = column_sums(counts);
  std::vector<CategoryKappa> kappas(columns.size(), {std::nullopt, std::sqrt(2 / pairs)});
  for (std::size_t j = 0; j < columns.size(); ++j) {
    if (columns[j] == 0 || columns[j] == ratings) continue;
    std::int64_t split = 0;  // pairs of ratings of which only the first is in the category
    for (const auto& row : counts) split += row[j] * (raters - row[j]);
    const double p = double(columns[j]) / double(ratings);
    kappas[j].kappa = 1 - double(split) / (pairs * p * (1 - p));
  }
  return kappas;
}

std::optional<CongerKappa> conger_kappa(const Ratings& ratings) {
  require_ratings(ratings);
  const std::size_t raters = ratings.front().size();
  std::map<double, std::vector<std::int64_t>> counts;  // of each category, by rater
  std::int64_t agreeing = 0;                           // ordered pairs of ratings of one subject
  for (const auto& subject : ratings) {
    std::map<double, std::int64_t> alike;
    for (std::size_t rater = 0; rater < raters; ++rater) {
      require_count("answers of a subject's rater", subject[rater].has_value(), 1, 1);
      agreeing += 2 * alike[*subject[rater]]++;
      auto& by_rater = counts[*subject[rater]];
      by_rater.resize(raters);
      ++by_rater[rater];
    }
  }
  if (counts.size() == 1) return std::nullopt;
  std::int64_t by_chance = 0;  // sum of the products of counts over ordered pairs of raters
  for (const auto& [category, by_rater] : counts) {
    std::int64_t before = 0;
    for (const std::int64_t count : by_rater) {
      by_chance += 2 * before * count;
      before += count;
    }
  }
  const double n = double(ratings.size());
  const double pairs = double(raters) * double(raters - 1);
  const double observed = double(agreeing) / (n * pairs);
  const double expected = double(by_chance) / (n * n * pairs);
  return CongerKappa{(observed - expected) / (1 - expected), observed, expected};
}

}  // namespace stats
