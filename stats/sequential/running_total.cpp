#include "stats/sequential/running_total.h"

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <numeric>

#include "stats/arguments.h"
#include "stats/level.h"

namespace stats {

void RunningTotal::add(const Gain& gain) {
  const auto [one, other, probability_of_one] = gain;
  require_count("one", one, 0, kMostTrials);
  require_count("other", other, 0, kMostTrials);
  require_closed_probability("probability_of_one", probability_of_one);
  const auto gap = static_cast<std::size_t>(std::abs(one - other));
  require_count("sum of all counts", std::int64_t{lowest_} + std::ssize(probability_) + std::max(one, other),
                0, kMostTrials + 1);
  lowest_ += std::min(one, other);
  if (gap == 0 || probability_.empty()) return;
  const double moving = one > other ? probability_of_one : 1 - probability_of_one;
  const double staying = one > other ? 1 - probability_of_one : probability_of_one;
  probability_.resize(probability_.size() + gap);
  for (std::size_t i = probability_.size(); i-- > gap;)
    probability_[i] = staying * probability_[i] + moving * probability_[i - gap];
  for (std::size_t i = 0; i < std::min(gap, probability_.size()); ++i) probability_[i] *= staying;
}

double RunningTotal::take_at_least(int total) {
  double taken = 0;
  while (!probability_.empty() && lowest_ + std::ssize(probability_) > total) {
    taken += probability_.back();
    probability_.pop_back();
  }
  return taken;
}

double RunningTotal::take_at_most(int total) {
  const auto places =
      std::clamp<std::ptrdiff_t>(std::ptrdiff_t{total} - lowest_ + 1, 0, std::ssize(probability_));
  const auto end = probability_.begin() + places;
  const double taken = std::accumulate(probability_.begin(), end, 0.0);
  probability_.erase(probability_.begin(), end);
  lowest_ += static_cast<int>(places);
  return taken;
}

double RunningTotal::remaining() const {
  return std::accumulate(probability_.begin(), probability_.end(), 0.0);
}

std::optional<int> RunningTotal::smallest_total(double before, double allowed) const {
  std::optional<int> smallest;
  double sum = before;
  for (std::size_t i = probability_.size(); i-- > 0;) {
    sum += probability_[i];
    if (!reaches(sum, allowed)) break;
    if (probability_[i] > 0) smallest = lowest_ + static_cast<int>(i);
  }
  return smallest;
}

}  // namespace stats
