#include "stats/worth/estimability.h"

#include <algorithm>
#include <limits>
#include <optional>

namespace stats {
namespace {

using Reach = std::vector<std::vector<bool>>;

/// Which items can be reached from which over edges, in any number of steps.
Reach closure(Reach reach) {
  for (std::size_t k = 0; k < reach.size(); ++k)
    for (std::size_t i = 0; i < reach.size(); ++i)
      if (reach[i][k])
        for (std::size_t j = 0; j < reach.size(); ++j)
          if (reach[k][j]) reach[i][j] = true;
  return reach;
}

/// The same number for items that reach each other.
std::vector<int> groups_of(const Reach& reach) {
  std::vector<int> groups(reach.size(), -1);
  int next = 0;
  for (std::size_t i = 0; i < reach.size(); ++i) {
    if (groups[i] >= 0) continue;
    groups[i] = next;
    for (std::size_t j = i + 1; j < reach.size(); ++j)
      if (reach[i][j] && reach[j][i]) groups[j] = next;
    ++next;
  }
  return groups;
}

bool several(const std::vector<int>& groups) {
  return std::any_of(groups.begin(), groups.end(), [](int group) { return group > 0; });
}

/// level of `to` <= level of `from` + constant + slope times the order effect.
struct Constraint {
  std::size_t from, to;
  double constant, slope;
};

/// What a direction of worths, order effect and (0 or 1) ties must keep so that no answer becomes less likely: with x the
/// first's worth less the second's and the order effect, x >= 2 ties where the first was preferred, x <= -2 ties where the
/// second was, |x| <= 2 ties where there was a tie.
std::vector<Constraint> constraints_of(std::span<const PairCount> counts, double ties) {
  std::vector<Constraint> all;
  for (const PairCount& count : counts) {
    const auto first = static_cast<std::size_t>(count.first), second = static_cast<std::size_t>(count.second);
    if (count.first_preferred > 0) all.push_back({first, second, -2 * ties, 1});
    if (count.second_preferred > 0) all.push_back({second, first, -2 * ties, -1});
    if (count.ties > 0) {
      all.push_back({first, second, 2 * ties, 1});
      all.push_back({second, first, 2 * ties, -1});
    }
  }
  return all;
}

/// Sum of a circle of constraints that cannot be kept at this order effect; nothing where all can be kept.
std::optional<Constraint> broken_circle(std::size_t items, const std::vector<Constraint>& constraints,
                                        double order) {
  std::vector<double> level(items);
  std::vector<const Constraint*> by(items, nullptr);
  const Constraint* last = nullptr;
  for (std::size_t round = 0; round <= items; ++round) {
    last = nullptr;
    for (const Constraint& one : constraints) {
      const double bound = level[one.from] + one.constant + one.slope * order;
      if (bound < level[one.to] - 1e-9) {
        level[one.to] = bound;
        by[one.to] = &one;
        last = &one;
      }
    }
    if (!last) return std::nullopt;
  }
  std::size_t item = last->to;
  for (std::size_t step = 0; step < items; ++step) item = by[item]->from;
  Constraint circle{item, item, 0, 0};
  std::size_t at = item;
  do {
    circle.constant += by[at]->constant;
    circle.slope += by[at]->slope;
    at = by[at]->from;
  } while (at != item);
  return circle;
}

/// Whether some order effect keeps all constraints: each circle that is broken bounds it from one side.
bool kept_by_some_order(std::size_t items, const std::vector<Constraint>& constraints) {
  double low = -std::numeric_limits<double>::infinity(), high = -low, order = 0;
  while (const auto circle = broken_circle(items, constraints, order)) {
    if (circle->slope == 0) return false;
    order = -circle->constant / circle->slope;
    (circle->slope > 0 ? low : high) = order;
    if (low > high + 1e-9) return false;
  }
  return true;
}

}  // namespace

EstimableWorths estimable_worths(int items, std::span<const PairCount> given, bool order_effect,
                                 bool ties_as_halves) {
  require_pair_counts(items, given);
  std::vector<PairCount> counts(given.begin(), given.end());
  if (ties_as_halves)
    for (PairCount& count : counts) {
      count.first_preferred += count.ties;
      count.second_preferred += count.ties;
      count.ties = 0;
    }
  const auto n = static_cast<std::size_t>(items);
  Reach compared(n, std::vector<bool>(n)), preferred = compared;
  bool any_tie = false;
  for (const PairCount& count : counts) {
    const auto first = static_cast<std::size_t>(count.first), second = static_cast<std::size_t>(count.second);
    const bool tie = count.ties > 0, wins = count.first_preferred > 0, loses = count.second_preferred > 0;
    any_tie |= tie;
    if (tie || wins || loses) compared[first][second] = compared[second][first] = true;
    if (tie || wins) preferred[first][second] = true;
    if (tie || loses) preferred[second][first] = true;
  }
  const auto components = groups_of(closure(compared));
  if (several(components)) return {Estimability::disconnected, components};
  const auto groups = groups_of(closure(preferred));
  const auto level = constraints_of(counts, 0), beyond_ties = constraints_of(counts, 1);
  const bool by_order = order_effect && (!broken_circle(n, level, 1) || !broken_circle(n, level, -1));
  const bool by_ties =
      any_tie && (order_effect ? kept_by_some_order(n, beyond_ties) : !broken_circle(n, beyond_ties, 0));
  return {several(groups) || by_order || by_ties ? Estimability::separated : Estimability::finite, groups};
}

}  // namespace stats
