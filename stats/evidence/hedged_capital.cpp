#include "stats/evidence/hedged_capital.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "stats/arguments.h"
#include "stats/evidence/betting.h"

namespace stats {
namespace {

constexpr double kLeastHedgedCapital = 1e-280;

/// The two halves for every candidate, each before its half of the capital is taken.
class HedgedGrid {
 public:
  HedgedGrid(std::span<const double> candidates, double level, double cap)
      : means_(candidates.begin(), candidates.end()), end_(means_.size()), needed_(2 / level) {
    for (const double mean : means_) {
      up_cap_.push_back(cap / mean);
      down_cap_.push_back(cap / (1 - mean));
    }
    up_.assign(means_.size(), 1);
    down_.assign(means_.size(), 1);
  }

  void add(double x, double bet) {
    for (std::size_t i = first_; i < end_; ++i) {
      const double gap = x - means_[i];
      up_[i] = std::max(kLeastHedgedCapital, up_[i] * (1 + std::min(bet, up_cap_[i]) * gap));
      down_[i] = std::max(kLeastHedgedCapital, down_[i] * (1 - std::min(bet, down_cap_[i]) * gap));
    }
    while (first_ < end_ && up_[first_] >= needed_) ++first_;
    while (first_ < end_ && down_[end_ - 1] >= needed_) --end_;
  }

  Survivors survivors() const { return {static_cast<int>(first_), static_cast<int>(end_) - 1}; }

 private:
  std::vector<double> means_, up_cap_, down_cap_, up_, down_;
  std::size_t first_ = 0;
  std::size_t end_;
  double needed_;
};

void check_mean_candidates(std::span<const double> candidates) {
  require_count("number of candidates", std::ssize(candidates), 1, kMostTrials);
  double least = 0;
  for (const double candidate : candidates) {
    require_between("candidate", candidate, least, 1);
    least = std::nextafter(candidate, 2);
  }
}

}  // namespace

std::vector<Survivors> hedged_survivors(std::span<const double> observations,
                                        std::span<const double> candidates, double level, double cap) {
  check_mean_candidates(candidates);
  require_open_probability("cap", cap);
  const auto bets = hedged_bets(observations, level);
  HedgedGrid grid(candidates, level, cap);
  std::vector<Survivors> survivors(observations.size());
  for (std::size_t i = 0; i < observations.size(); ++i) {
    grid.add(observations[i], bets[i]);
    survivors[i] = grid.survivors();
  }
  return survivors;
}

Interval interval_around(const Survivors& survivors, std::span<const double> candidates) {
  check_mean_candidates(candidates);
  const auto count = std::ssize(candidates);
  require_count("first", survivors.first, 0, count);
  require_count("last", survivors.last, std::int64_t{survivors.first} - 1, count - 1);
  const auto at = [&](int i) { return candidates[static_cast<std::size_t>(i)]; };
  return {survivors.first == 0 ? 0.0 : at(survivors.first - 1),
          survivors.last + 1 == count ? 1.0 : at(survivors.last + 1)};
}

std::vector<double> candidate_midpoints(int count) {
  require_count("count", count, 1, kMostTrials);
  std::vector<double> midpoints(static_cast<std::size_t>(count));
  for (std::size_t i = 0; i < midpoints.size(); ++i) midpoints[i] = (double(i) + 0.5) / count;
  return midpoints;
}

}  // namespace stats
