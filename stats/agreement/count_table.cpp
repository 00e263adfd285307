#include "stats/agreement/count_table.h"

#include <numeric>

#include "stats/arguments.h"

namespace stats {
namespace {

constexpr int kMostTableCounts = 1'000'000;

}  // namespace

std::int64_t checked_total(const CountTable& counts) {
  require_count("rows of counts", std::ssize(counts), 1, kMostTableCounts);
  const auto columns = std::ssize(counts.front());
  require_count("columns of counts", columns, 2, 1'000);
  std::int64_t total = 0;
  for (const auto& row : counts) {
    require_count("columns of a row of counts", std::ssize(row), columns, columns);
    for (int count : row) require_count("count", count, 0, kMostTableCounts);
    total += row_sum(row);
  }
  require_count("sum of counts", total, 1, kMostTableCounts);
  return total;
}

std::int64_t checked_square_total(const CountTable& counts) {
  const std::int64_t total = checked_total(counts);
  const auto columns = std::ssize(counts.front());
  require_count("rows of a square table", std::ssize(counts), columns, columns);
  return total;
}

std::int64_t row_sum(const std::vector<int>& row) {
  return std::accumulate(row.begin(), row.end(), std::int64_t{0});
}

std::vector<std::int64_t> column_sums(const CountTable& counts) {
  std::vector<std::int64_t> sums(counts.front().size());
  for (const auto& row : counts)
    for (std::size_t j = 0; j < row.size(); ++j) sums[j] += row[j];
  return sums;
}

CountTable by_subject(const CountTable& two_raters) {
  const std::int64_t total = checked_square_total(two_raters);
  require_count("sum of counts times categories", total * std::ssize(two_raters), 2, 10'000'000);
  CountTable subjects;
  for (std::size_t i = 0; i < two_raters.size(); ++i)
    for (std::size_t j = 0; j < two_raters.size(); ++j) {
      std::vector<int> subject(two_raters.size());
      ++subject[i];
      ++subject[j];
      subjects.insert(subjects.end(), static_cast<std::size_t>(two_raters[i][j]), subject);
    }
  return subjects;
}

}  // namespace stats
