#include "stats/worth/worth.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "stats/arguments.h"
#include "stats/cholesky.h"
#include "stats/worth/estimability.h"
#include "stats/worth/pair_likelihood.h"
#include "stats/worth/worth_likelihood.h"

namespace stats {
namespace {

double null_log_likelihood(int items, std::span<const PairCount> counts, const WorthOptions& options) {
  WorthOptions plain = options;
  plain.order_effect = plain.bias_reduced = false;
  // All equal: only the tie weight is left, whose estimate is 2 ties / others.
  const WorthLikelihood likelihood(items, counts, 0, plain);
  std::vector<double> parameters(likelihood.size());
  if (likelihood.tie() != kNoPlace) {
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
  const EstimableWorths estimable =
      estimable_worths(items, counts, options.order_effect, options.ties_as_halves);
  require_count("reference", reference, 0, items - 1);
  const WorthLikelihood likelihood(items, counts, reference, options);
  if (options.model == PreferenceModel::normal && (likelihood.tie() != kNoPlace || options.bias_reduced))
    throw std::domain_error("a model of ties and bias reduction need the logistic model");
  if (estimable.estimability == Estimability::disconnected ||
      (estimable.estimability == Estimability::separated && !options.bias_reduced))
    return std::nullopt;
  const auto parameters = largest_parameters(likelihood);
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
    if (likelihood.place(i) == kNoPlace) continue;
    fit.worth[i] = parameters[likelihood.place(i)];
    for (std::size_t j = 0; j < n; ++j)
      if (likelihood.place(j) != kNoPlace)
        fit.covariance[i][j] = inverse[likelihood.place(i) * likelihood.size() + likelihood.place(j)];
  }
  if (likelihood.order() != kNoPlace) {
    fit.order_effect = parameters[likelihood.order()];
    fit.order_error = error_of(likelihood.order());
  }
  if (likelihood.tie() != kNoPlace) {
    fit.tie_weight = std::exp(parameters[likelihood.tie()]);
    fit.log_tie_error = error_of(likelihood.tie());
  }
  double best = 0;
  int rows = 0;
  for (const PairCount& count : counts) {
    best += saturated(count, likelihood.tie() != kNoPlace);
    rows += count.first_preferred + count.ties + count.second_preferred > 0;
  }
  fit.log_likelihood = likelihood.log_likelihood(parameters);
  fit.deviance = std::max(0.0, 2 * (best - fit.log_likelihood));
  fit.degrees_of_freedom =
      rows * (likelihood.tie() != kNoPlace ? 2 : 1) - static_cast<int>(likelihood.size());
  fit.null_deviance = std::max(0.0, 2 * (best - null_log_likelihood(items, counts, options)));
  return fit;
}

}  // namespace stats
