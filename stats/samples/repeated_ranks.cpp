#include "stats/samples/repeated_ranks.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <string>

#include "stats/arguments.h"
#include "stats/association/pairing_sums.h"
#include "stats/association/ranks.h"
#include "stats/random.h"

namespace stats {
namespace {

using Row = std::vector<std::int64_t>;  ///< doubled ranks

std::vector<Row> ranked(RepeatedMeasures measures, const MonteCarlo& monte_carlo) {
  require_count("number of listeners", std::ssize(measures), 1, 1'000);
  require_count("number of items", std::ssize(measures.front()), 2, 100);
  require_draws(monte_carlo);
  const auto items = std::ssize(measures.front());
  std::vector<Row> rows;
  for (const auto& row : measures) {
    const std::string listener = "listener " + std::to_string(rows.size() + 1);
    require_count("number of items of " + listener, std::ssize(row), items, items);
    require_finite(listener, row);
    rows.push_back(doubled_midranks(row));
  }
  return rows;
}

bool nothing_differs(const std::vector<Row>& rows) {
  return std::all_of(rows.begin(), rows.end(), [](const Row& row) {
    return std::all_of(row.begin(), row.end(), [&](std::int64_t rank) { return rank == row.front(); });
  });
}

Row sums_of(const std::vector<Row>& rows) {
  Row sums(rows.front().size());
  for (const Row& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) sums[i] += row[i];
  return sums;
}

std::int64_t square_sum(const Row& sums) {
  return std::inner_product(sums.begin(), sums.end(), sums.begin(), std::int64_t{0});
}

/// Different orders of ranks, some of them tied.
double orders_of(Row ranks) {
  std::sort(ranks.begin(), ranks.end());
  double orders = 1;
  for (std::size_t i = 0, alike = 0; i < ranks.size(); ++i) {
    alike = i > 0 && ranks[i] == ranks[i - 1] ? alike + 1 : 1;
    orders *= double(i + 1) / double(alike);
  }
  return orders;
}

/// P(sum of squares >= seen): listener after listener, by sorted rank sums; nothing where that takes too long.
std::optional<double> counted_squares_p(const std::vector<Row>& rows, std::int64_t seen) {
  std::map<Row, double> states{{Row(rows.front().size()), 1.0}};
  double steps = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const bool first = i == 0;  // whose order does not matter
    steps += (first ? 1 : orders_of(rows[i])) * double(states.size());
    if (steps > 1e7) return std::nullopt;
    Row order = rows[i];
    std::sort(order.begin(), order.end());
    std::vector<Row> orders;
    do orders.push_back(order);
    while (!first && std::next_permutation(order.begin(), order.end()));
    std::map<Row, double> next;
    for (const auto& [sums, probability] : states)
      for (const Row& one : orders) {
        Row after(sums.size());
        std::transform(sums.begin(), sums.end(), one.begin(), after.begin(), std::plus<>());
        std::sort(after.begin(), after.end());
        next[std::move(after)] += probability / double(orders.size());
      }
    states = std::move(next);
  }
  double p = 0;
  for (const auto& [sums, probability] : states)
    if (square_sum(sums) >= seen) p += probability;
  return std::min(1.0, p);
}

PermutationP drawn_squares_p(std::vector<Row> rows, std::int64_t seen, const MonteCarlo& monte_carlo) {
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    for (Row& row : rows) random.shuffle(std::span(row));
    reaching += square_sum(sums_of(rows)) >= seen;
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

Row places(std::size_t items) {
  Row all(items);
  std::iota(all.begin(), all.end(), std::int64_t{1});
  return all;
}

/// The sum over listeners of k sum(place rank) - sum(places) sum(ranks), which is 0 on average.
std::int64_t trend_of(const std::vector<Row>& rows) {
  std::int64_t trend = 0;
  for (const Row& row : rows) trend += rank_moments(places(row.size()), row).covariance;
  return trend;
}

/// By adding listener after listener; nothing where that takes too long.
std::optional<double> counted_trend_p(const std::vector<Row>& rows, std::int64_t seen,
                                      Alternative alternative) {
  if (std::ssize(rows.front()) > kExactRanks) return std::nullopt;
  std::map<Row, std::vector<PairingSums::Point>> by_ranks;  // listeners with the same ties have the same null
  std::map<std::int64_t, double> sums{{0, 1.0}};
  double steps = 0;
  for (Row row : rows) {
    std::sort(row.begin(), row.end());
    auto& points = by_ranks[row];
    if (points.empty()) points = PairingSums(places(row.size()), row).points();
    const double ways = std::accumulate(points.begin(), points.end(), 0.0,
                                        [](double all, const auto& point) { return all + point.pairings; });
    steps += double(points.size()) * double(sums.size());
    if (steps > 1e8) return std::nullopt;
    std::map<std::int64_t, double> next;
    for (const auto& [sum, probability] : sums)
      for (const auto& point : points) next[sum + point.covariance] += probability * point.pairings / ways;
    sums = std::move(next);
  }
  double p = 0;
  for (const auto& [sum, probability] : sums)
    if (counts_against(sum, seen, alternative)) p += probability;
  return std::min(1.0, p);
}

PermutationP drawn_trend_p(std::vector<Row> rows, std::int64_t seen, Alternative alternative,
                           const MonteCarlo& monte_carlo) {
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    for (Row& row : rows) random.shuffle(std::span(row));
    reaching += counts_against(trend_of(rows), seen, alternative);
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

}  // namespace

std::optional<Friedman> friedman(RepeatedMeasures measures, const MonteCarlo& monte_carlo) {
  const auto rows = ranked(measures, monte_carlo);
  if (nothing_differs(rows)) return std::nullopt;
  const Row sums = sums_of(rows);
  const std::int64_t squares = square_sum(sums);
  const double n = double(rows.size()), k = double(sums.size());
  // The spread of the ranks themselves; with ties it is smaller than n k (k^2 - 1).
  double spread = -n * k * (k + 1) * (k + 1);
  for (const Row& row : rows) spread += double(square_sum(row));
  const double between = double(squares) - n * n * k * (k + 1) * (k + 1);
  Friedman found{{}, (k - 1) * between / spread, between / (n * spread), {}};
  for (const std::int64_t sum : sums) found.rank_sums.push_back(double(sum) / 2);
  const auto p = counted_squares_p(rows, squares);
  found.test = p ? exact_p(*p) : drawn_squares_p(rows, squares, monte_carlo);
  return found;
}

std::optional<PageTrend> page(RepeatedMeasures measures, Alternative alternative,
                              const MonteCarlo& monte_carlo) {
  const auto rows = ranked(measures, monte_carlo);
  if (nothing_differs(rows)) return std::nullopt;
  const Row sums = sums_of(rows), all_places = places(sums.size());
  const double n = double(rows.size()), k = double(sums.size());
  const std::int64_t seen = trend_of(rows);
  const auto p = counted_trend_p(rows, seen, alternative);
  return PageTrend{
      double(std::inner_product(sums.begin(), sums.end(), all_places.begin(), std::int64_t{0})) / 2,
      n * k * (k + 1) * (k + 1) / 4, p ? exact_p(*p) : drawn_trend_p(rows, seen, alternative, monte_carlo)};
}

}  // namespace stats
