#include "stats/resampling/bootstrap_agreement.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <span>
#include <vector>

#include "stats/agreement/coded_ratings.h"
#include "stats/arguments.h"
#include "stats/random.h"
#include "stats/resampling/agreement_sums.h"
#include "stats/resampling/resampled_sums.h"

namespace stats {
namespace {

constexpr int kMostAgreementResamples = 1'000'000;

void check_resampling(double confidence, const MonteCarlo& monte_carlo) {
  require_level("confidence", confidence);
  require_count("draws", monte_carlo.draws, 1, kMostAgreementResamples);
}

/// The smallest value that a share `share` or more of the values do not exceed.
double empirical_quantile(std::span<double> values, double share) {
  const double n = double(values.size());
  const double place = std::clamp(std::ceil(n * share - 1e-9 * n * share), 1.0, n);
  const auto nth = values.begin() + static_cast<std::ptrdiff_t>(place) - 1;
  std::nth_element(values.begin(), nth, values.end());
  return *nth;
}

/// The resamples of one coefficient, those in which it is defined.
class CoefficientResamples {
 public:
  explicit CoefficientResamples(std::optional<double> estimate, int draws)
      : estimate_(estimate), draws_(draws) {
    if (estimate) values_.reserve(static_cast<std::size_t>(draws));
  }

  bool wanted() const { return estimate_.has_value(); }

  void add(std::optional<double> value) {
    if (value) values_.push_back(*value);
  }

  std::optional<Bootstrapped> summary(double confidence) {
    if (values_.empty()) return std::nullopt;
    const double n = double(values_.size());
    const double mean = std::accumulate(values_.begin(), values_.end(), 0.0) / n;
    double squares = 0;
    for (const double value : values_) squares += (value - mean) * (value - mean);
    const Interval interval{empirical_quantile(values_, (1 - confidence) / 2),
                            empirical_quantile(values_, (1 + confidence) / 2)};
    const int defined = static_cast<int>(values_.size());
    return Bootstrapped{*estimate_, interval,        mean, defined > 1 ? std::sqrt(squares / (n - 1)) : 0,
                        defined,    draws_ - defined};
  }

 private:
  std::optional<double> estimate_;
  int draws_;
  std::vector<double> values_;
};

}  // namespace

BootstrapAgreement bootstrap_agreement(const CountTable& counts, double confidence,
                                       const MonteCarlo& monte_carlo) {
  check_resampling(confidence, monte_carlo);
  const AgreementSums sums(counts);
  const auto total = sums.total();
  CoefficientResamples alpha(sums.nominal_alpha(total), monte_carlo.draws);
  CoefficientResamples kappa(sums.fleiss_kappa(total), monte_carlo.draws);
  CoefficientResamples ac1(sums.gwet_ac1(total), monte_carlo.draws);
  ResampledSums resampled(sums.records(), sums.fields());
  Random random(monte_carlo.seed);
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    const auto drawn = resampled.draw(random);
    if (alpha.wanted()) alpha.add(sums.nominal_alpha(drawn));
    if (kappa.wanted()) kappa.add(sums.fleiss_kappa(drawn));
    if (ac1.wanted()) ac1.add(sums.gwet_ac1(drawn));
  }
  return {alpha.summary(confidence), kappa.summary(confidence), ac1.summary(confidence)};
}

std::optional<Bootstrapped> bootstrap_alpha(const Ratings& ratings, Metric metric, double confidence,
                                            const MonteCarlo& monte_carlo) {
  check_resampling(confidence, monte_carlo);
  AlphaCalculation calculation(ratings, metric);
  const auto alpha_of = [&](const CodedRatings& subjects) {
    const auto alpha = calculation.of(subjects);
    return alpha ? std::optional(alpha->alpha) : std::nullopt;
  };
  CoefficientResamples alpha(alpha_of(calculation.coded()), monte_carlo.draws);
  if (!alpha.wanted()) return std::nullopt;
  Random random(monte_carlo.seed);
  CodedRatings resample = calculation.coded();
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    for (auto& subject : resample)
      subject = calculation.coded()[random.below(static_cast<std::uint32_t>(resample.size()))];
    alpha.add(alpha_of(resample));
  }
  return alpha.summary(confidence);
}

}  // namespace stats
