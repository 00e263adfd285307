#include "stats/worth/worth_likelihood.h"

#include <algorithm>
#include <cmath>

#include "stats/cholesky.h"
#include "stats/worth/pair_likelihood.h"

namespace stats {

WorthLikelihood::WorthLikelihood(int items, std::span<const PairCount> counts, int reference,
                                 const WorthOptions& options)
    : counts_(counts), options_(options) {
  for (int item = 0; item < items; ++item) places_.push_back(item == reference ? kNoPlace : size_++);
  place_order_and_tie();
}

WorthLikelihood::WorthLikelihood(int items, std::span<const PairCount> counts, std::pair<int, int> equal,
                                 const WorthOptions& options)
    : counts_(counts), options_(options) {
  for (int item = 0; item < items; ++item)
    places_.push_back(item == equal.first || item == equal.second ? kNoPlace : size_++);
  place_order_and_tie();
}

void WorthLikelihood::place_order_and_tie() {
  if (options_.order_effect) order_ = size_++;
  if (!options_.ties_as_halves &&
      std::any_of(counts_.begin(), counts_.end(), [](const PairCount& count) { return count.ties > 0; }))
    tie_ = size_++;
}

std::optional<WorthLikelihood::At> WorthLikelihood::at(const std::vector<double>& parameters) const {
  At found{0, std::vector<double>(size_), std::vector<double>(size_ * size_), {}};
  for (const PairCount& count : counts_) {
    const Row row = row_of(count, parameters);
    const PairTerm term = pair_term(count, options_.model, tie_ != kNoPlace, row.x, row.log_tie);
    found.value += term.value;
    for (std::size_t i = 0; i < row.used; ++i) found.slope[row.at[i]] += row.sign[i] * term.by_x;
    if (tie_ != kNoPlace) found.slope[tie_] += term.by_t;
    add_information(row, term, 1, found.information);
  }
  found.curvature = found.information;
  if (options_.bias_reduced && !penalize(found, parameters)) return std::nullopt;
  return found;
}

void WorthLikelihood::add_information(const Row& row, const PairTerm& term, double times,
                                      std::vector<double>& matrix) const {
  for (std::size_t i = 0; i < row.used; ++i) {
    for (std::size_t j = 0; j < row.used; ++j)
      matrix[row.at[i] * size_ + row.at[j]] += times * row.sign[i] * row.sign[j] * term.xx;
    if (tie_ != kNoPlace) matrix[tie_ * size_ + row.at[i]] += times * row.sign[i] * term.xt;
  }
  if (tie_ != kNoPlace) matrix[tie_ * size_ + tie_] += times * term.tt;
}

double WorthLikelihood::log_likelihood(const std::vector<double>& parameters) const {
  double sum = 0;
  for (const PairCount& count : counts_) {
    const Row row = row_of(count, parameters);
    sum += pair_term(count, options_.model, tie_ != kNoPlace, row.x, row.log_tie).value;
  }
  return sum;
}

std::pair<double, double> WorthLikelihood::difference_and_tie(const PairCount& count,
                                                              const std::vector<double>& parameters) const {
  const Row row = row_of(count, parameters);
  return {row.x, row.log_tie};
}

WorthLikelihood::Row WorthLikelihood::row_of(const PairCount& count,
                                             const std::vector<double>& parameters) const {
  Row row;
  const auto add = [&](std::size_t place, double sign) {
    if (place == kNoPlace) return;
    row.x += sign * parameters[place];
    row.at[row.used] = place;
    row.sign[row.used++] = sign;
  };
  add(places_[static_cast<std::size_t>(count.first)], 1);
  add(places_[static_cast<std::size_t>(count.second)], -1);
  add(order_, 1);
  if (tie_ != kNoPlace) row.log_tie = parameters[tie_];
  return row;
}

/// Half the logarithm of the information's determinant; its slope is half the trace of the inverse times the derivative.
bool WorthLikelihood::penalize(At& found, const std::vector<double>& parameters) const {
  const auto cholesky = Cholesky::of(found.information, size_);
  if (!cholesky) return false;
  found.value += cholesky->log_determinant() / 2;
  const auto inverse = cholesky->inverse();
  for (const PairCount& count : counts_) {
    const std::int64_t answers = count.first_preferred + count.ties + count.second_preferred;
    if (answers == 0) continue;
    const Row row = row_of(count, parameters);
    const PairThirds thirds = pair_thirds(count, tie_ != kNoPlace, row.x, row.log_tie);
    double xx = 0, xt = 0;
    for (std::size_t i = 0; i < row.used; ++i) {
      for (std::size_t j = 0; j < row.used; ++j)
        xx += row.sign[i] * row.sign[j] * inverse[row.at[i] * size_ + row.at[j]];
      if (tie_ != kNoPlace) xt += row.sign[i] * inverse[row.at[i] * size_ + tie_];
    }
    const double tt = tie_ == kNoPlace ? 0 : inverse[tie_ * size_ + tie_];
    const double by_x = (xx * thirds.xxx + 2 * xt * thirds.xxt + tt * thirds.xtt) / 2;
    for (std::size_t i = 0; i < row.used; ++i) found.slope[row.at[i]] += row.sign[i] * by_x;
    if (tie_ != kNoPlace) found.slope[tie_] += (xx * thirds.xxt + 2 * xt * thirds.xtt + tt * thirds.ttt) / 2;
    const PairTerm term = pair_term(count, options_.model, tie_ != kNoPlace, row.x, row.log_tie);
    const double leverage = xx * term.xx + 2 * xt * term.xt + tt * term.tt;
    add_information(row, term, leverage / double(answers), found.curvature);
  }
  return true;
}

std::vector<double> largest_parameters(const WorthLikelihood& likelihood) {
  std::vector<double> parameters(likelihood.size());
  auto here = likelihood.at(parameters);
  for (int step = 0; step < 1'000 && here; ++step) {
    const auto cholesky = Cholesky::of(here->curvature, likelihood.size());
    if (!cholesky) break;
    const auto move = cholesky->solve(here->slope);
    double longest = 0;
    for (const double one : move) longest = std::max(longest, std::abs(one));
    if (longest < 1e-13) break;
    std::optional<WorthLikelihood::At> there;
    std::vector<double> moved;
    double part = 1;
    for (; part > 1e-6; part /= 2) {
      moved = parameters;
      for (std::size_t i = 0; i < move.size(); ++i) moved[i] += part * move[i];
      there = likelihood.at(moved);
      if (there && there->value >= here->value - 1e-12 * std::abs(here->value)) break;
    }
    if (part <= 1e-6) break;
    parameters = std::move(moved);
    here = std::move(there);
    if (longest < 1e-11 && part == 1) break;
  }
  return parameters;
}

}  // namespace stats
