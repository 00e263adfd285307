#include "stats/pooled/cochran_q.h"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <functional>
#include <map>

#include "stats/arguments.h"
#include "stats/random.h"

namespace stats {
namespace {

constexpr std::int64_t kMostCochranSteps = 1'000'000;

using ColumnSums = std::vector<int>;

std::int64_t cochran_squares(const ColumnSums& sums) {
  std::int64_t squares = 0;
  for (const std::int64_t sum : sums) squares += sum * sum;
  return squares;
}

/// Rows of the subjects who tell conditions apart: neither everything right nor everything wrong.
std::vector<std::vector<char>> telling_rows(std::span<const std::vector<bool>> subjects) {
  std::vector<std::vector<char>> rows;
  for (const auto& subject : subjects) {
    const auto right = std::count(subject.begin(), subject.end(), true);
    if (right > 0 && right < std::ssize(subject)) rows.emplace_back(subject.begin(), subject.end());
  }
  return rows;
}

/// Probabilities of the column sums, put in order of size since the conditions are exchangeable, after one
/// more subject; nothing when the steps run out.
std::optional<std::map<ColumnSums, double>> cochran_after_subject(const std::map<ColumnSums, double>& before,
                                                                  std::vector<char> row,
                                                                  std::int64_t& steps) {
  std::sort(row.begin(), row.end(), std::greater());
  std::map<ColumnSums, double> after;
  double placements = 0;
  do {
    ++placements;
    for (const auto& [sums, weight] : before) {
      if (++steps > kMostCochranSteps) return std::nullopt;
      ColumnSums next = sums;
      for (std::size_t j = 0; j < row.size(); ++j) next[j] += row[j];
      std::sort(next.begin(), next.end());
      after[std::move(next)] += weight;
    }
  } while (std::prev_permutation(row.begin(), row.end()));
  for (auto& [sums, weight] : after) weight /= placements;
  return after;
}

std::optional<double> exact_cochran_p(const std::vector<std::vector<char>>& rows, std::int64_t seen) {
  std::map<ColumnSums, double> weights{{ColumnSums(rows.front().size()), 1.0}};
  std::int64_t steps = 0;
  for (const auto& row : rows) {
    auto next = cochran_after_subject(weights, row, steps);
    if (!next) return std::nullopt;
    weights = std::move(*next);
  }
  double p = 0;
  for (const auto& [sums, weight] : weights)
    if (cochran_squares(sums) >= seen) p += weight;
  return std::min(1.0, p);
}

ColumnSums cochran_sums(const std::vector<std::vector<char>>& rows) {
  ColumnSums sums(rows.front().size());
  for (const auto& row : rows)
    for (std::size_t j = 0; j < row.size(); ++j) sums[j] += row[j];
  return sums;
}

PermutationP cochran_p(std::vector<std::vector<char>> rows, const MonteCarlo& monte_carlo) {
  const std::int64_t seen = cochran_squares(cochran_sums(rows));
  if (const auto exact = exact_cochran_p(rows, seen)) return exact_p(*exact);
  Random random(monte_carlo.seed);
  std::int64_t reaching = 0;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    for (auto& row : rows) random.shuffle(std::span(row));
    reaching += cochran_squares(cochran_sums(rows)) >= seen;
  }
  return monte_carlo_p(reaching, monte_carlo.draws);
}

}  // namespace

std::optional<CochranQ> cochran_q(std::span<const std::vector<bool>> subjects,
                                  const MonteCarlo& monte_carlo) {
  require_count("number of subjects", std::ssize(subjects), 1, 50'000);
  const auto conditions = std::ssize(subjects.front());
  require_count("number of conditions", conditions, 2, 100);
  require_count("number of answers", std::ssize(subjects) * conditions, 2, 100'000);
  for (const auto& subject : subjects)
    require_count("answers of a subject", std::ssize(subject), conditions, conditions);
  require_draws(monte_carlo);

  const auto rows = telling_rows(subjects);
  if (rows.empty()) return std::nullopt;
  ColumnSums sums = cochran_sums(rows);
  std::int64_t right = 0, spread = 0;  // spread: of L (conditions - L), L right of a subject
  for (const auto& row : rows) {
    const auto of_subject = std::count(row.begin(), row.end(), char{1});
    right += of_subject;
    spread += of_subject * (conditions - of_subject);
  }
  const double q =
      double((conditions - 1) * (conditions * cochran_squares(sums) - right * right)) / double(spread);
  const auto all_right =
      static_cast<int>(std::count_if(subjects.begin(), subjects.end(), [](const auto& subject) {
        return std::find(subject.begin(), subject.end(), false) == subject.end();
      }));
  for (int& sum : sums) sum += all_right;
  return CochranQ{q, static_cast<int>(conditions - 1),
                  boost::math::gamma_q(double(conditions - 1) / 2, q / 2), cochran_p(rows, monte_carlo),
                  sums};
}

}  // namespace stats
