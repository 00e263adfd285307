#include "stats/discrimination/d_prime.h"

#include <cmath>

#include "stats/share/approximate_interval.h"

namespace stats {

DPrimeEstimate estimate_d_prime(Link link, int correct, int trials, double confidence) {
  const Interval right = likelihood_interval(correct, trials, confidence);
  const double share = double(correct) / trials;
  DPrimeEstimate estimate{
      d_prime_at(link, share), std::nullopt, {d_prime_at(link, right.lower), d_prime_at(link, right.upper)}};
  if (estimate.d_prime > 0 && correct < trials)
    estimate.standard_error = std::sqrt(share * (1 - share) / trials) / link_slope(link, estimate.d_prime);
  return estimate;
}

std::string_view d_prime_remark(const DPrimeEstimate& estimate) {
  if (std::isinf(estimate.d_prime)) return "infinite: every answer was right";
  if (estimate.limits.upper == 0) return "0: so few right that no d' fits";
  if (estimate.d_prime == 0) return "0: no more right than by chance";
  return "";
}

}  // namespace stats
