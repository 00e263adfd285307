#include "stats/worth/quasi_variance.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>

#include "stats/arguments.h"
#include "stats/cholesky.h"

namespace stats {
namespace {

using Matrix = std::vector<std::vector<double>>;

/// Variances of the differences of any two; only i < j is filled.
Matrix variances_of_differences(const Matrix& covariance) {
  const std::size_t n = covariance.size();
  Matrix found(n, std::vector<double>(n));
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j) {
      found[i][j] = covariance[i][i] + covariance[j][j] - covariance[i][j] - covariance[j][i];
      if (!(found[i][j] > 0) || !std::isfinite(found[i][j]))
        throw std::domain_error("the difference of items " + std::to_string(i + 1) + " and " +
                                std::to_string(j + 1) + " has no variance above 0");
    }
  return found;
}

/// Sum of squares of log((q_i + q_j) / v_ij); nothing where one is not defined.
std::optional<double> squares_of(const std::vector<double>& q, const Matrix& variances) {
  double sum = 0;
  for (std::size_t i = 0; i < q.size(); ++i)
    for (std::size_t j = i + 1; j < q.size(); ++j) {
      if (!(q[i] + q[j] > 0)) return std::nullopt;
      const double off = std::log((q[i] + q[j]) / variances[i][j]);
      sum += off * off;
    }
  return sum;
}

/// Where q_i + q_j = v_ij by plain least squares, which is in closed form; else half of each item's mean.
std::vector<double> first_guess(const Matrix& variances) {
  const std::size_t n = variances.size();
  std::vector<double> sums(n), halves(n), guess(n);
  double all = 0;
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j) {
      sums[i] += variances[i][j];
      sums[j] += variances[i][j];
      all += variances[i][j];
    }
  for (std::size_t i = 0; i < n; ++i) {
    guess[i] = (sums[i] - all / double(n - 1)) / double(n - 2);
    halves[i] = sums[i] / double(n - 1) / 2;
  }
  return squares_of(guess, variances) ? guess : halves;
}

}  // namespace

QuasiVariances quasi_variances(const Matrix& covariance) {
  const std::size_t n = covariance.size();
  require_count("number of items", std::ssize(covariance), 3, 100);
  for (const auto& row : covariance)
    require_count("length of a row", std::ssize(row), std::ssize(covariance), std::ssize(covariance));
  const Matrix variances = variances_of_differences(covariance);
  std::vector<double> q = first_guess(variances);
  double least = squares_of(q, variances).value();
  for (int step = 0; step < 200; ++step) {
    std::vector<double> normal(n * n), right(n);
    for (std::size_t i = 0; i < n; ++i)
      for (std::size_t j = i + 1; j < n; ++j) {
        const double sum = q[i] + q[j], off = std::log(variances[i][j] / sum), square = 1 / (sum * sum);
        normal[i * n + i] += square;
        normal[j * n + j] += square;
        normal[j * n + i] += square;
        right[i] += off / sum;
        right[j] += off / sum;
      }
    const auto cholesky = Cholesky::of(std::move(normal), n);
    if (!cholesky) break;
    const auto move = cholesky->solve(std::move(right));
    double part = 1, longest = 0;
    std::vector<double> moved;
    std::optional<double> there;
    for (; part > 1e-9; part /= 2) {
      moved = q;
      for (std::size_t i = 0; i < n; ++i) moved[i] += part * move[i];
      there = squares_of(moved, variances);
      if (there && *there <= least * (1 + 1e-14)) break;
    }
    if (part <= 1e-9) break;
    for (std::size_t i = 0; i < n; ++i)
      longest = std::max(longest, std::abs(move[i]) / (std::abs(q[i]) + 1e-300));
    q = std::move(moved);
    least = *there;
    if (longest < 1e-14) break;
  }
  QuasiVariances found{q, 0, 0};
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j) {
      const double error = std::sqrt((q[i] + q[j]) / variances[i][j]) - 1;
      found.lowest_error = std::min(found.lowest_error, error);
      found.highest_error = std::max(found.highest_error, error);
    }
  return found;
}

}  // namespace stats
