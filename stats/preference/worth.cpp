#include "stats/preference/worth.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "stats/arguments.h"
#include "stats/cholesky.h"
#include "stats/preference/estimability.h"
#include "stats/preference/pair_likelihood.h"

namespace stats {
namespace {

constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();

/// Likelihood of the parameters: the worths but the reference's, then the order effect, then the logarithm of the tie weight.
class WorthLikelihood {
 public:
  WorthLikelihood(int items, std::span<const PairCount> counts, int reference, const WorthOptions& options)
      : counts_(counts), options_(options) {
    for (int item = 0; item < items; ++item) places_.push_back(item == reference ? kNone : size_++);
    if (options.order_effect) order_ = size_++;
    if (std::any_of(counts.begin(), counts.end(), [](const PairCount& count) { return count.ties > 0; }))
      tie_ = size_++;
  }

  std::size_t size() const { return size_; }
  std::size_t order() const { return order_; }
  std::size_t tie() const { return tie_; }
  std::size_t place(std::size_t item) const { return places_[item]; }

  struct At {
    double value = 0;
    std::vector<double> slope;
    std::vector<double> information;  ///< lower triangle
  };

  /// With Firth's penalty where asked for; nothing where the information is singular then.
  std::optional<At> at(const std::vector<double>& parameters) const {
    At found{0, std::vector<double>(size_), std::vector<double>(size_ * size_)};
    for (const PairCount& count : counts_) {
      const Row row = row_of(count, parameters);
      const PairTerm term = pair_term(count, options_.model, tie_ != kNone, row.x, row.log_tie);
      found.value += term.value;
      for (std::size_t i = 0; i < row.used; ++i) {
        found.slope[row.at[i]] += row.sign[i] * term.by_x;
        for (std::size_t j = 0; j < row.used; ++j)
          found.information[row.at[i] * size_ + row.at[j]] += row.sign[i] * row.sign[j] * term.xx;
        if (tie_ != kNone) found.information[tie_ * size_ + row.at[i]] += row.sign[i] * term.xt;
      }
      if (tie_ != kNone) {
        found.slope[tie_] += term.by_t;
        found.information[tie_ * size_ + tie_] += term.tt;
      }
    }
    if (options_.bias_reduced && !penalize(found, parameters)) return std::nullopt;
    return found;
  }

  /// Without penalty.
  double log_likelihood(const std::vector<double>& parameters) const {
    double sum = 0;
    for (const PairCount& count : counts_) {
      const Row row = row_of(count, parameters);
      sum += pair_term(count, options_.model, tie_ != kNone, row.x, row.log_tie).value;
    }
    return sum;
  }

 private:
  /// The difference of one row, and where its parts stand.
  struct Row {
    double x = 0, log_tie = 0;
    std::size_t at[3] = {};
    double sign[3] = {};
    std::size_t used = 0;
  };

  Row row_of(const PairCount& count, const std::vector<double>& parameters) const {
    Row row;
    const auto add = [&](std::size_t place, double sign) {
      if (place == kNone) return;
      row.x += sign * parameters[place];
      row.at[row.used] = place;
      row.sign[row.used++] = sign;
    };
    add(places_[static_cast<std::size_t>(count.first)], 1);
    add(places_[static_cast<std::size_t>(count.second)], -1);
    add(order_, 1);
    if (tie_ != kNone) row.log_tie = parameters[tie_];
    return row;
  }

  /// Half the logarithm of the information's determinant; its slope is half the trace of the inverse times the derivative.
  bool penalize(At& found, const std::vector<double>& parameters) const {
    const auto cholesky = Cholesky::of(found.information, size_);
    if (!cholesky) return false;
    found.value += cholesky->log_determinant() / 2;
    const auto inverse = cholesky->inverse();
    for (const PairCount& count : counts_) {
      const Row row = row_of(count, parameters);
      const PairThirds thirds = pair_thirds(count, tie_ != kNone, row.x, row.log_tie);
      double xx = 0, xt = 0;
      for (std::size_t i = 0; i < row.used; ++i) {
        for (std::size_t j = 0; j < row.used; ++j)
          xx += row.sign[i] * row.sign[j] * inverse[row.at[i] * size_ + row.at[j]];
        if (tie_ != kNone) xt += row.sign[i] * inverse[row.at[i] * size_ + tie_];
      }
      const double tt = tie_ == kNone ? 0 : inverse[tie_ * size_ + tie_];
      const double by_x = (xx * thirds.xxx + 2 * xt * thirds.xxt + tt * thirds.xtt) / 2;
      for (std::size_t i = 0; i < row.used; ++i) found.slope[row.at[i]] += row.sign[i] * by_x;
      if (tie_ != kNone) found.slope[tie_] += (xx * thirds.xxt + 2 * xt * thirds.xtt + tt * thirds.ttt) / 2;
    }
    return true;
  }

  std::span<const PairCount> counts_;
  WorthOptions options_;
  std::vector<std::size_t> places_;
  std::size_t size_ = 0, order_ = kNone, tie_ = kNone;
};

/// By scoring, steps halved until the likelihood does not fall.
std::vector<double> largest(const WorthLikelihood& likelihood) {
  std::vector<double> parameters(likelihood.size());
  auto here = likelihood.at(parameters);
  for (int step = 0; step < 1'000 && here; ++step) {
    const auto cholesky = Cholesky::of(here->information, likelihood.size());
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

double null_log_likelihood(int items, std::span<const PairCount> counts, const WorthOptions& options) {
  WorthOptions plain = options;
  plain.order_effect = plain.bias_reduced = false;
  // All equal: only the tie weight is left, whose estimate is 2 ties / others.
  const WorthLikelihood likelihood(items, counts, 0, plain);
  std::vector<double> parameters(likelihood.size());
  if (likelihood.tie() != kNone) {
    double ties = 0, others = 0;
    for (const PairCount& count : counts) {
      ties += double(count.ties);
      others += double(count.first_preferred + count.second_preferred);
    }
    if (others == 0) return 0;
    parameters[likelihood.tie()] = std::log(2 * ties / others);
  }
  return likelihood.log_likelihood(parameters);
}

}  // namespace

double WorthFit::difference_error(int i, int j) const {
  const auto a = static_cast<std::size_t>(i), b = static_cast<std::size_t>(j);
  return std::sqrt(covariance[a][a] + covariance[b][b] - 2 * covariance[a][b]);
}

std::optional<WorthFit> fit_worths(int items, std::span<const PairCount> counts, int reference,
                                   const WorthOptions& options) {
  const EstimableWorths estimable = estimable_worths(items, counts, options.order_effect);
  require_count("reference", reference, 0, items - 1);
  const WorthLikelihood likelihood(items, counts, reference, options);
  if (options.model == PreferenceModel::normal && (likelihood.tie() != kNone || options.bias_reduced))
    throw std::domain_error("ties and bias reduction need the logistic model");
  if (estimable.estimability == Estimability::disconnected ||
      (estimable.estimability == Estimability::separated && !options.bias_reduced))
    return std::nullopt;
  const auto parameters = largest(likelihood);
  const auto here = likelihood.at(parameters);
  const auto cholesky = here ? Cholesky::of(here->information, likelihood.size()) : std::nullopt;
  if (!cholesky) return std::nullopt;
  const auto inverse = cholesky->inverse();
  const auto error_of = [&](std::size_t place) {
    return std::sqrt(inverse[place * likelihood.size() + place]);
  };

  WorthFit fit{};
  const auto n = static_cast<std::size_t>(items);
  fit.worth.resize(n);
  fit.covariance.assign(n, std::vector<double>(n));
  for (std::size_t i = 0; i < n; ++i) {
    if (likelihood.place(i) == kNone) continue;
    fit.worth[i] = parameters[likelihood.place(i)];
    for (std::size_t j = 0; j < n; ++j)
      if (likelihood.place(j) != kNone)
        fit.covariance[i][j] = inverse[likelihood.place(i) * likelihood.size() + likelihood.place(j)];
  }
  if (likelihood.order() != kNone) {
    fit.order_effect = parameters[likelihood.order()];
    fit.order_error = error_of(likelihood.order());
  }
  if (likelihood.tie() != kNone) {
    fit.tie_weight = std::exp(parameters[likelihood.tie()]);
    fit.log_tie_error = error_of(likelihood.tie());
  }
  double best = 0;
  int rows = 0;
  for (const PairCount& count : counts) {
    best += saturated(count);
    rows += count.first_preferred + count.ties + count.second_preferred > 0;
  }
  fit.log_likelihood = likelihood.log_likelihood(parameters);
  fit.deviance = 2 * (best - fit.log_likelihood);
  fit.degrees_of_freedom = rows * (likelihood.tie() != kNone ? 2 : 1) - static_cast<int>(likelihood.size());
  fit.null_deviance = 2 * (best - null_log_likelihood(items, counts, options));
  return fit;
}

}  // namespace stats
