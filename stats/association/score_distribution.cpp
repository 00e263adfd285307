#include "stats/association/score_distribution.h"

#include <algorithm>
#include <numeric>

namespace stats {
namespace {

constexpr double kMostSteps = 1e8;

std::int64_t total_of(std::span<const int> groups) {
  return std::accumulate(groups.begin(), groups.end(), std::int64_t{0});
}

bool all_differ(std::span<const int> groups) {
  return std::all_of(groups.begin(), groups.end(), [](int group) { return group == 1; });
}

/// Sum of two independent numbers from 0.
std::vector<double> convolved(const std::vector<double>& a, const std::vector<double>& b) {
  std::vector<double> sum(a.size() + b.size() - 1);
  for (std::size_t i = 0; i < a.size(); ++i)
    for (std::size_t j = 0; j < b.size(); ++j) sum[i + j] += a[i] * b[j];
  return sum;
}

/// How many of `before` values stand above each of `group` alike ones put between them at random places, in all: the null
/// distribution of the rank sum. Place after place: the next value is one of the group with the share that is left of it.
std::vector<double> inversions_of_group(std::int64_t before, std::int64_t group) {
  using Row = std::vector<double>;
  const auto size = static_cast<std::size_t>(before * group) + 1;
  // by_members[k]: k of the group have been placed among the places so far.
  std::vector<Row> by_members(static_cast<std::size_t>(group) + 1, Row(size));
  by_members[0][0] = 1;
  for (std::int64_t place = 0; place < before + group; ++place) {
    std::vector<Row> next(by_members.size(), Row(size));
    for (std::int64_t k = std::max<std::int64_t>(0, place - before); k <= std::min(place, group); ++k) {
      const Row& row = by_members[static_cast<std::size_t>(k)];
      const double of_group = double(group - k) / double(before + group - place);
      const std::int64_t above = before - (place - k);
      for (std::size_t i = 0; i < size; ++i) {
        if (row[i] == 0) continue;
        if (k < group)
          next[static_cast<std::size_t>(k) + 1][i + static_cast<std::size_t>(above)] += row[i] * of_group;
        if (above > 0) next[static_cast<std::size_t>(k)][i] += row[i] * (1 - of_group);
      }
    }
    by_members = std::move(next);
  }
  return by_members.back();
}

double steps_of_one_side(std::span<const int> groups) {
  double steps = 0, before = 0;
  for (const int group : groups) {
    steps += (before + group) * group * before * group + before * before / 2 * before * group;
    before += group;
  }
  return steps;
}

/// One side all different: S = untied pairs less twice the inversions, which the groups of the other add one after another.
std::vector<double> inversions_by_groups(std::span<const int> groups) {
  std::vector<double> inversions{1};
  std::int64_t before = 0;
  for (const int group : groups) {
    inversions = convolved(inversions, group == 1 ? std::vector<double>(static_cast<std::size_t>(before) + 1,
                                                                        1.0 / double(before + 1))
                                                  : inversions_of_group(before, group));
    before += group;
  }
  return inversions;
}

/// Both sides tied: the groups of x draw their y one group after another; a state is how many of each y are used.
class TiedOnBothSides {
 public:
  TiedOnBothSides(std::span<const int> x_groups, std::span<const int> y_groups, std::int64_t most)
      : x_groups_(x_groups), y_groups_(y_groups), most_(most) {}

  double steps() const {
    double states = 1, choices = 1;
    for (const int group : y_groups_) states *= group + 1;
    const int largest = *std::max_element(x_groups_.begin(), x_groups_.end());
    // Compositions of the largest group over the different y, at most.
    for (int i = 1; i < std::ssize(y_groups_) && choices < kMostSteps; ++i)
      choices *= double(largest + i) / i;
    return states * choices * double(2 * most_ + 1);
  }

  std::vector<double> distribution() const {
    std::size_t states = 1;
    for (const int group : y_groups_) states *= static_cast<std::size_t>(group) + 1;
    std::vector<std::vector<double>> now(states), next(states);
    now[0].assign(width(), 0.0);
    now[0][static_cast<std::size_t>(most_)] = 1;
    for (const int group : x_groups_) {
      for (std::size_t state = 0; state < states; ++state) {
        if (now[state].empty()) continue;
        const std::vector<int> used = used_of(state);
        Draw draw{now[state], used, next, total_of(y_groups_) - total_of(used), group};
        choose(draw, 0, group, state, 1, 0, 1);
      }
      now.assign(states, {});
      std::swap(now, next);
    }
    return now.back();
  }

 private:
  struct Draw {
    const std::vector<double>& from;
    const std::vector<int>& used;
    std::vector<std::vector<double>>& next;
    std::int64_t left;  ///< y not used before this group of x
    int group;
  };

  std::size_t width() const { return static_cast<std::size_t>(2 * most_ + 1); }

  std::vector<int> used_of(std::size_t state) const {
    std::vector<int> used;
    for (const int group : y_groups_) {
      const auto base = static_cast<std::size_t>(group) + 1;
      used.push_back(static_cast<int>(state % base));
      state /= base;
    }
    return used;
  }

  /// Chooses how many of y group `j` and of those after it go to this group of x. `share`: of all ways to draw the group,
  /// times the chance that the rest falls out of the y that are left.
  void choose(const Draw& draw, std::size_t j, int to_choose, std::size_t state, std::size_t stride,
              std::int64_t gained, double share) const {
    if (j == y_groups_.size()) {
      if (to_choose > 0) return;
      auto& to = draw.next[state];
      if (to.empty()) to.assign(width(), 0.0);
      const double probability = share / ways(draw.left, draw.group);
      for (std::size_t i = 0; i < draw.from.size(); ++i)
        if (draw.from[i] > 0)
          to[static_cast<std::size_t>(static_cast<std::int64_t>(i) + gained)] += draw.from[i] * probability;
      return;
    }
    std::int64_t below = 0, above = 0;
    for (std::size_t k = 0; k < j; ++k) below += draw.used[k];
    for (std::size_t k = j + 1; k < y_groups_.size(); ++k) above += draw.used[k];
    const int free = y_groups_[j] - draw.used[j];
    for (int chosen = 0; chosen <= std::min(free, to_choose); ++chosen)
      choose(draw, j + 1, to_choose - chosen, state + stride * static_cast<std::size_t>(chosen),
             stride * (static_cast<std::size_t>(y_groups_[j]) + 1), gained + chosen * (below - above),
             share * ways(free, chosen));
  }

  static double ways(std::int64_t from, std::int64_t chosen) {
    double ways = 1;
    for (std::int64_t i = 1; i <= chosen; ++i) ways = ways * double(from - chosen + i) / double(i);
    return ways;
  }

  std::span<const int> x_groups_, y_groups_;
  std::int64_t most_;
};

}  // namespace

std::int64_t untied_pairs(std::span<const int> groups) {
  std::int64_t pairs = total_of(groups) * (total_of(groups) - 1) / 2;
  for (const std::int64_t group : groups) pairs -= group * (group - 1) / 2;
  return pairs;
}

std::optional<ScoreDistribution> score_distribution(std::span<const int> x_groups,
                                                    std::span<const int> y_groups) {
  if (!all_differ(x_groups) && !all_differ(y_groups)) {
    const std::int64_t most = std::min(untied_pairs(x_groups), untied_pairs(y_groups));
    const bool turn =
        TiedOnBothSides(x_groups, y_groups, most).steps() > TiedOnBothSides(y_groups, x_groups, most).steps();
    const TiedOnBothSides counting(turn ? y_groups : x_groups, turn ? x_groups : y_groups, most);
    if (!(counting.steps() < kMostSteps)) return std::nullopt;
    return ScoreDistribution{most, counting.distribution()};
  }
  const auto groups = all_differ(x_groups) ? y_groups : x_groups;
  if (steps_of_one_side(groups) >= kMostSteps) return std::nullopt;
  const std::vector<double> inversions = inversions_by_groups(groups);
  ScoreDistribution distribution{untied_pairs(groups), std::vector<double>(2 * inversions.size() - 1)};
  for (std::size_t i = 0; i < inversions.size(); ++i) distribution.probability[2 * i] = inversions[i];
  return distribution;
}

}  // namespace stats
