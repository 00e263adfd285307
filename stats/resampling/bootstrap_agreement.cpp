#include "stats/resampling/bootstrap_agreement.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <span>
#include <vector>

#include "stats/agreement/coded_ratings.h"
#include "stats/arguments.h"
#include "stats/blocks.h"
#include "stats/random.h"
#include "stats/resampling/agreement_sums.h"
#include "stats/resampling/percentile_interval.h"
#include "stats/resampling/resampled_sums.h"

namespace stats {
namespace {

constexpr int kMostAgreementResamples = 1'000'000;

void check_resampling(double confidence, const MonteCarlo& monte_carlo) {
  require_level("confidence", confidence);
  require_count("draws", monte_carlo.draws, 1, kMostAgreementResamples);
}

/// What the resamples of a coefficient say; those in which it is undefined are not-a-number.
std::optional<Bootstrapped> summary(std::optional<double> estimate, std::vector<double> values,
                                    double confidence) {
  const auto drawn = std::ssize(values);
  std::erase_if(values, [](double value) { return std::isnan(value); });
  if (!estimate || values.empty()) return std::nullopt;
  const double n = double(values.size());
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
  double squares = 0;
  for (const double value : values) squares += (value - mean) * (value - mean);
  return Bootstrapped{*estimate,
                      percentile_interval(values, confidence),
                      mean,
                      values.size() > 1 ? std::sqrt(squares / (n - 1)) : 0,
                      static_cast<int>(values.size()),
                      static_cast<int>(drawn - std::ssize(values))};
}

/// Resamples in a block that has a seed of its own: the seed plus 2^32 times the number of the block. As the step of the
/// words is odd, two such streams share none of their first 2^32 words.
constexpr int kBlockOfResamples = 500;

constexpr double kUndefined = std::numeric_limits<double>::quiet_NaN();

}  // namespace

BootstrapAgreement bootstrap_agreement(const CountTable& counts, double confidence,
                                       const MonteCarlo& monte_carlo, int threads,
                                       const WantedAgreement& wanted) {
  check_resampling(confidence, monte_carlo);
  require_count("threads", threads, 1, 256);
  const AgreementSums sums(counts);
  const ResampledSums records(sums.records(), sums.fields());
  const auto draws = static_cast<std::size_t>(monte_carlo.draws);
  std::vector<double> alpha(draws, kUndefined), kappa(draws, kUndefined), ac1(draws, kUndefined);
  for_each_block((monte_carlo.draws + kBlockOfResamples - 1) / kBlockOfResamples, threads,
                 [&](std::int64_t block, int) {
                   ResampledSums resampled = records;
                   QuickRandom random(monte_carlo.seed + (static_cast<std::uint64_t>(block) << 32));
                   const auto first = static_cast<std::size_t>(block) * kBlockOfResamples;
                   for (std::size_t i = first; i < std::min(draws, first + kBlockOfResamples); ++i) {
                     const auto drawn = resampled.draw(random);
                     if (wanted.alpha) alpha[i] = sums.nominal_alpha(drawn).value_or(kUndefined);
                     if (wanted.fleiss_kappa) kappa[i] = sums.fleiss_kappa(drawn).value_or(kUndefined);
                     if (wanted.gwet_ac1) ac1[i] = sums.gwet_ac1(drawn).value_or(kUndefined);
                   }
                 });
  const auto total = sums.total();
  const std::optional<double> estimates[] = {sums.nominal_alpha(total), sums.fleiss_kappa(total),
                                             sums.gwet_ac1(total)};
  std::vector<double>* const values[] = {&alpha, &kappa, &ac1};
  std::optional<Bootstrapped> found[3];
  for_each_block(3, std::min(threads, 3), [&](std::int64_t i, int) {
    found[i] = summary(estimates[i], std::move(*values[i]), confidence);
  });
  return {found[0], found[1], found[2]};
}

std::optional<Bootstrapped> bootstrap_alpha(const Ratings& ratings, Metric metric, double confidence,
                                            const MonteCarlo& monte_carlo) {
  check_resampling(confidence, monte_carlo);
  AlphaCalculation calculation(ratings, metric);
  const auto alpha_of = [&](const CodedRatings& subjects) {
    const auto alpha = calculation.of(subjects);
    return alpha ? std::optional(alpha->alpha) : std::nullopt;
  };
  const auto estimate = alpha_of(calculation.coded());
  if (!estimate) return std::nullopt;
  Random random(monte_carlo.seed);
  CodedRatings resample = calculation.coded();
  std::vector<double> values;
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    for (auto& subject : resample)
      subject = calculation.coded()[random.below(static_cast<std::uint32_t>(resample.size()))];
    values.push_back(alpha_of(resample).value_or(kUndefined));
  }
  return summary(estimate, std::move(values), confidence);
}

}  // namespace stats
