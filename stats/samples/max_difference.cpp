#include "stats/samples/max_difference.h"

#include <algorithm>
#include <cmath>

#include "stats/arguments.h"
#include "stats/random.h"
#include "stats/samples/division_count.h"

namespace stats {
namespace {

using Curves = std::vector<std::vector<double>>;

constexpr double kMostDivisions = 1'000'000;
constexpr double kMostDivisionsTimesBands = 2e7;
constexpr double kEqual = 1e-10;  // of the spread: rounding of the sums

void require_curves(const Curves& first, const Curves& second) {
  require_count("number of first curves", std::ssize(first), 1, 1'000);
  require_count("number of second curves", std::ssize(second), 1, 1'000);
  require_count("number of curves in all", std::ssize(first) + std::ssize(second), 3, 2'000);
  const auto bands = std::ssize(first.front());
  require_count("number of bands", bands, 1, 100'000);
  for (const Curves* group : {&first, &second})
    for (const auto& curve : *group) {
      require_count("number of bands of a curve", std::ssize(curve), bands, bands);
      require_finite("curve", curve);
    }
}

/// All curves, each band less its mean and over its standard deviation; 0 where all are equal.
Curves standardized(const Curves& first, const Curves& second) {
  Curves all = first;
  all.insert(all.end(), second.begin(), second.end());
  for (std::size_t band = 0; band < all.front().size(); ++band) {
    double mean = 0, squares = 0, largest = 0;
    for (const auto& curve : all) mean += curve[band] / double(all.size());
    for (const auto& curve : all) {
      squares += (curve[band] - mean) * (curve[band] - mean);
      largest = std::max(largest, std::abs(curve[band]));
    }
    const double deviation = std::sqrt(squares / double(all.size()));
    for (auto& curve : all) curve[band] = deviation > 1e-14 * largest ? (curve[band] - mean) / deviation : 0;
  }
  return all;
}

/// Differences of the groups' means for a division of standardized curves: their means lie opposite each other.
class Divided {
 public:
  Divided(const Curves& all, std::size_t chosen)
      : all_(all), scale_(1 / double(chosen) + 1 / double(all.size() - chosen)), sums_(all.front().size()) {}

  const std::vector<double>& differences(const std::vector<bool>& is_first) {
    std::fill(sums_.begin(), sums_.end(), 0.0);
    for (std::size_t i = 0; i < all_.size(); ++i)
      if (is_first[i])
        for (std::size_t band = 0; band < sums_.size(); ++band) sums_[band] += all_[i][band];
    for (double& sum : sums_) sum *= scale_;
    return sums_;
  }

 private:
  const Curves& all_;
  double scale_;
  std::vector<double> sums_;
};

double towards(double difference, Alternative alternative) {
  return alternative == Alternative::greater ? difference
         : alternative == Alternative::less  ? -difference
                                             : std::abs(difference);
}

double largest(const std::vector<double>& differences, Alternative alternative) {
  double most = towards(differences.front(), alternative);
  for (const double one : differences) most = std::max(most, towards(one, alternative));
  return most;
}

}  // namespace

MaxDifference max_difference_test(const Curves& first, const Curves& second, Alternative alternative,
                                  const MonteCarlo& monte_carlo) {
  require_curves(first, second);
  require_draws(monte_carlo);
  const Curves all = standardized(first, second);
  const std::size_t bands = all.front().size();
  Divided divided(all, first.size());
  std::vector<bool> is_first(all.size());
  std::fill_n(is_first.begin(), first.size(), true);
  const std::vector<double> seen = divided.differences(is_first);

  const double divisions = number_of_divisions(first.size(), all.size());
  const bool exchanged_alike = alternative == Alternative::two_sided && first.size() == second.size();
  MaxDifference found{0, {}, {}, exact_p(1), (exchanged_alike ? 2 : 1) / divisions};
  for (std::size_t band = 0; band < bands; ++band) {
    double difference = 0;
    for (const auto& curve : first) difference += curve[band] / double(first.size());
    for (const auto& curve : second) difference -= curve[band] / double(second.size());
    found.difference.push_back(difference);
    if (towards(seen[band], alternative) > towards(seen[found.place], alternative)) found.place = band;
  }

  std::vector<std::int64_t> reaching(bands);
  const auto count = [&] {
    const double most = largest(divided.differences(is_first), alternative) + kEqual;
    for (std::size_t band = 0; band < bands; ++band)
      reaching[band] += most >= towards(seen[band], alternative);
  };
  if (divisions <= kMostDivisions && divisions * double(bands) <= kMostDivisionsTimesBands) {
    do count();
    while (std::prev_permutation(is_first.begin(), is_first.end()));
    for (const std::int64_t one : reaching) found.adjusted_p.push_back(double(one) / divisions);
    found.test = exact_p(found.adjusted_p[found.place]);
    return found;
  }
  Random random(monte_carlo.seed);
  std::vector<std::uint8_t> order(is_first.begin(), is_first.end());
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    random.shuffle(std::span(order));
    std::copy(order.begin(), order.end(), is_first.begin());
    count();
  }
  for (const std::int64_t one : reaching) found.adjusted_p.push_back(monte_carlo_p(one, monte_carlo.draws).p);
  found.test = monte_carlo_p(reaching[found.place], monte_carlo.draws);
  return found;
}

}  // namespace stats
