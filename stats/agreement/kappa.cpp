#include "stats/agreement/kappa.h"

#include <cmath>
#include <numeric>

#include "stats/arguments.h"

namespace stats {
namespace {

constexpr int kMostCounts = 1'000'000;

std::int64_t sum(const std::vector<int>& counts) {
  return std::accumulate(counts.begin(), counts.end(), std::int64_t{0});
}

std::int64_t checked_total(const CountTable& counts) {
  require_count("rows of counts", std::ssize(counts), 1, kMostCounts);
  const auto columns = std::ssize(counts.front());
  require_count("columns of counts", columns, 2, 1'000);
  std::int64_t total = 0;
  for (const auto& row : counts) {
    require_count("columns of a row of counts", std::ssize(row), columns, columns);
    for (int count : row) require_count("count", count, 0, kMostCounts);
    total += sum(row);
  }
  require_count("sum of counts", total, 1, kMostCounts);
  return total;
}

std::vector<std::int64_t> column_sums(const CountTable& counts) {
  std::vector<std::int64_t> sums(counts.front().size());
  for (const auto& row : counts)
    for (std::size_t j = 0; j < row.size(); ++j) sums[j] += row[j];
  return sums;
}

double squared(double value) { return value * value; }

/// Fleiss, Cohen and Everitt (1969), equations for the unweighted kappa.
void add_standard_errors(CohenKappa& result, const CountTable& counts) {
  const double n = double(result.things);
  const auto columns = column_sums(counts);
  const auto row_share = [&](std::size_t i) { return double(sum(counts[i])) / n; };
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

}  // namespace

std::optional<CohenKappa> cohen_kappa(const CountTable& counts) {
  const std::int64_t n = checked_total(counts);
  require_count("rows of a square table", std::ssize(counts), std::ssize(counts.front()),
                std::ssize(counts.front()));
  const auto columns = column_sums(counts);
  std::int64_t alike = 0;
  std::int64_t by_chance = 0;  // n squared times the expected agreement
  for (std::size_t i = 0; i < counts.size(); ++i) {
    alike += counts[i][i];
    by_chance += sum(counts[i]) * columns[i];
  }
  if (by_chance == n * n) return std::nullopt;
  CohenKappa result{};
  result.kappa = double(n * alike - by_chance) / double(n * n - by_chance);
  result.observed_agreement = double(alike) / double(n);
  result.expected_agreement = double(by_chance) / double(n * n);
  result.things = n;
  add_standard_errors(result, counts);
  return result;
}

std::optional<FleissKappa> fleiss_kappa(const CountTable& counts) {
  const std::int64_t ratings = checked_total(counts);
  const std::int64_t raters = sum(counts.front());
  require_count("raters of a subject", raters, 2, kMostCounts);
  std::int64_t agreeing = 0;  // ordered pairs of ratings of one subject
  for (const auto& row : counts) {
    require_count("raters of a subject", sum(row), raters, raters);
    for (std::int64_t count : row) agreeing += count * (count - 1);
  }
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

}  // namespace stats
