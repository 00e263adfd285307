#include "stats/psychometric/guessing_likelihood.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "stats/cholesky.h"

namespace stats {
namespace {

/// No trial says more than this of the sum (the normal curve's 2/pi, cloglog's 0.648).
constexpr double kMostInformation = 0.65;
/// Of the deviate: below, spreads are so wide that nothing settles there.
constexpr double kFinestStep = 0.004;

/// Log likelihood of a row at a sum, its slope and less its second slope, and the expected information.
struct RowTerm {
  double value, slope, observed, expected;
};

RowTerm row_term(const GuessingRow& row, const GuessingModel& model, double sum) {
  const LinkAt at = link_at(model.link, sum);
  const double scale = 1 - model.chance - model.lapse, right = model.chance + scale * at.share,
               wrong = model.lapse + scale * at.rest, k = double(row.right),
               m = double(row.trials - row.right);
  const double slope = scale * at.slope, bend = scale * at.bend;
  const double by_right = k == 0 ? 0 : k / right, by_wrong = m == 0 ? 0 : m / wrong;
  return {(k == 0 ? 0 : k * std::log(right)) + (m == 0 ? 0 : m * std::log(wrong)),
          (by_right - by_wrong) * slope,
          (k == 0 ? 0 : by_right * (slope / right) * slope) +
              (m == 0 ? 0 : by_wrong * (slope / wrong) * slope) - (by_right - by_wrong) * bend,
          double(row.trials) * (slope / right) * (slope / wrong)};
}

double sum_of(const GuessingRow& row, const std::vector<double>& parameters) {
  double sum = row.offset;
  for (std::size_t i = 0; i < row.predictors.size(); ++i) sum += parameters[i] * row.predictors[i];
  return sum;
}

}  // namespace

GuessingLikelihood::GuessingLikelihood(std::vector<GuessingRow> rows, const GuessingModel& model,
                                       bool listeners_differ)
    : rows_(std::move(rows)),
      model_(model),
      listeners_differ_(listeners_differ),
      predictors_(rows_.front().predictors.size()),
      size_(predictors_ + (listeners_differ ? 1 : 0)) {
  std::stable_sort(rows_.begin(), rows_.end(),
                   [](const GuessingRow& a, const GuessingRow& b) { return a.listener < b.listener; });
}

/// @param deviate  of the listener, by which the last parameter is multiplied.
void GuessingLikelihood::add_row(const GuessingRow& row, double sum, double deviate, At& found) const {
  const RowTerm term = row_term(row, model_, sum);
  const auto predictor = [&](std::size_t i) { return i < predictors_ ? row.predictors[i] : deviate; };
  found.value += term.value;
  for (std::size_t i = 0; i < size_; ++i) {
    found.slope[i] += term.slope * predictor(i);
    for (std::size_t j = 0; j < size_; ++j) {
      const double product = predictor(i) * predictor(j);
      found.observed[i * size_ + j] += term.observed * product;
      if (!found.expected.empty()) found.expected[i * size_ + j] += term.expected * product;
    }
  }
}

/// The shift is integrated by the trapezoid rule over its deviate, in steps well below the spread of what the listener's
/// answers leave of it: so exact that rounding is what is left. Derivatives of the logarithm of a mean: the mean slope; and
/// less the second ones are the mean information less the variance of the slope. Source: T. A. Louis, J. R. Stat. Soc. B 44
/// (1982) 226.
void GuessingLikelihood::add_listener(std::span<const GuessingRow> rows,
                                      const std::vector<double>& parameters, At& found) const {
  const double spread = parameters.back();
  double trials = 0;
  for (const GuessingRow& row : rows) trials += double(row.trials);
  const double step = std::max(kFinestStep, 0.4 / std::sqrt(1 + kMostInformation * spread * spread * trials)),
               end = 8.5;
  std::vector<double> sums;
  for (const GuessingRow& row : rows) sums.push_back(sum_of(row, parameters));

  const auto steps = static_cast<int>(std::ceil(end / step));
  std::vector<double> logs;
  for (int i = -steps; i <= steps; ++i) {
    const double deviate = i * step;
    double log = -deviate * deviate / 2;
    for (std::size_t row = 0; row < rows.size(); ++row)
      log += row_term(rows[row], model_, sums[row] + spread * deviate).value;
    logs.push_back(log);
  }
  const double top = *std::max_element(logs.begin(), logs.end());
  double all = 0;
  for (const double log : logs) all += std::exp(log - top);
  found.value += top + std::log(all * step) - std::log(2 * std::acos(-1.0)) / 2;

  const At nothing{0, std::vector<double>(size_), std::vector<double>(size_ * size_), {}};
  At means = nothing, here = nothing;
  for (int i = -steps; i <= steps; ++i) {
    const double deviate = i * step, weight = std::exp(logs[std::size_t(i + steps)] - top) / all;
    if (weight < 1e-20) continue;
    here = nothing;
    for (std::size_t row = 0; row < rows.size(); ++row)
      add_row(rows[row], sums[row] + spread * deviate, deviate, here);
    for (std::size_t a = 0; a < size_; ++a) {
      means.slope[a] += weight * here.slope[a];
      for (std::size_t b = 0; b < size_; ++b)
        means.observed[a * size_ + b] +=
            weight * (here.observed[a * size_ + b] - here.slope[a] * here.slope[b]);
    }
  }
  for (std::size_t a = 0; a < size_; ++a) {
    found.slope[a] += means.slope[a];
    for (std::size_t b = 0; b < size_; ++b)
      found.observed[a * size_ + b] += means.observed[a * size_ + b] + means.slope[a] * means.slope[b];
  }
}

GuessingLikelihood::At GuessingLikelihood::at(const std::vector<double>& parameters) const {
  At found{0, std::vector<double>(size_), std::vector<double>(size_ * size_), {}};
  if (!listeners_differ_) {
    found.expected.resize(size_ * size_);
    for (const GuessingRow& row : rows_) add_row(row, sum_of(row, parameters), 0, found);
    return found;
  }
  for (std::size_t from = 0; from < rows_.size();) {
    std::size_t to = from;
    while (to < rows_.size() && rows_[to].listener == rows_[from].listener) ++to;
    add_listener(std::span(rows_).subspan(from, to - from), parameters, found);
    from = to;
  }
  return found;
}

std::optional<LargestGuessing> largest_from(const GuessingLikelihood& likelihood, std::vector<double> start) {
  const std::size_t size = likelihood.size();
  auto here = likelihood.at(start);
  for (int step = 0; step < 100; ++step) {
    auto cholesky = Cholesky::of(here.observed, size);
    const bool is_peak = cholesky.has_value();
    if (!is_peak && !here.expected.empty()) cholesky = Cholesky::of(here.expected, size);
    for (double ridge = 1e-3; !cholesky && ridge < 1e12; ridge *= 10) {
      auto matrix = here.observed;
      for (std::size_t i = 0; i < size; ++i)
        matrix[i * size + i] += ridge * (1 + std::abs(matrix[i * size + i]));
      cholesky = Cholesky::of(std::move(matrix), size);
    }
    if (!cholesky) return std::nullopt;
    const auto move = cholesky->solve(here.slope);
    double gain = 0, part = 1;
    for (std::size_t i = 0; i < size; ++i) gain += move[i] * here.slope[i];
    if (is_peak && gain < 1e-24) return LargestGuessing{std::move(start), std::move(here)};
    std::vector<double> moved;
    GuessingLikelihood::At there;
    for (; part > 1e-6; part /= 2) {
      moved = start;
      for (std::size_t i = 0; i < size; ++i) moved[i] += part * move[i];
      there = likelihood.at(moved);
      if (there.value >= here.value - 1e-13 * std::abs(here.value)) break;
    }
    // Nothing more to gain than rounding.
    const bool still = part <= 1e-6 || (is_peak && gain < 1e-18);
    if (still && !is_peak) return std::nullopt;
    if (part > 1e-6) {
      start = std::move(moved);
      here = std::move(there);
    }
    if (still) {
      if (!Cholesky::of(here.observed, size)) return std::nullopt;
      return LargestGuessing{std::move(start), std::move(here)};
    }
  }
  return std::nullopt;
}

double log_orders(std::span<const GuessingRow> rows) {
  double sum = 0;
  for (const GuessingRow& row : rows)
    sum += std::lgamma(double(row.trials) + 1) - std::lgamma(double(row.right) + 1) -
           std::lgamma(double(row.trials - row.right) + 1);
  return sum;
}

}  // namespace stats
