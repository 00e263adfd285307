#include "findings/bench/repeatability.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "stats/samples/mean_difference.h"
#include "stats/samples/repeats.h"

namespace findings {
namespace {

/// The mean of each quantity over some repeats, in the order of the first of them that has it.
struct Means {
  std::vector<std::string> names;
  std::map<std::string, std::vector<double>> values;
  std::map<std::string, bool> is_logarithm;

  void add(const Measurement& one) {
    for (const Quantity& quantity : quantities_of(one)) {
      auto& all = values[quantity.name];
      if (all.empty()) names.push_back(quantity.name);
      all.push_back(quantity.value);
      is_logarithm[quantity.name] = quantity.is_logarithm;
    }
  }
};

using Group = std::vector<const Measurement*>;

/// The spread of each quantity within groups.
std::vector<Repeatability> spreads_of(const std::vector<Group>& groups) {
  std::vector<Repeatability> spreads;
  std::map<std::string, std::vector<std::vector<double>>> values;
  for (const Group& group : groups) {
    Means means;
    for (const Measurement* one : group) means.add(*one);
    for (const std::string& name : means.names) {
      auto& of_quantity = values[name];
      if (of_quantity.empty()) spreads.push_back({name, means.is_logarithm[name], {}});
      of_quantity.push_back(means.values[name]);
    }
  }
  for (Repeatability& spread : spreads) spread.within = stats::spread_within(values[spread.quantity]);
  return spreads;
}

std::optional<double> limit_of(const std::vector<Repeatability>& spreads, const std::string& quantity,
                               std::size_t first, std::size_t second) {
  const auto spread = std::find_if(spreads.begin(), spreads.end(),
                                   [&](const auto& each) { return each.quantity == quantity; });
  if (spread == spreads.end() || !spread->within.standard_deviation) return std::nullopt;
  return stats::repeatability_limit(spread->within, static_cast<int>(first), static_cast<int>(second), 0.95);
}

bool is_like_that_of_baseline(const Measurement& one, const Measurement& baseline) {
  return one.kind == baseline.kind && (one.kind == "cable-lcr" || one.rig == baseline.rig) &&
         one.piece == baseline.piece && one.condition == baseline.condition &&
         one.feature == baseline.feature && one.state == baseline.state &&
         one.instrument == baseline.instrument &&
         (are_at_one_frequency(one, baseline) || !one.single("frequency_hz") ||
          !baseline.single("frequency_hz"));
}

std::vector<BenchDifference> differences_of(const Group& group, const Group& baseline,
                                            const std::vector<Repeatability>& spreads) {
  Means own, other;
  for (const Measurement* one : group) own.add(*one);
  for (const Measurement* one : baseline) other.add(*one);
  std::vector<BenchDifference> differences;
  for (const std::string& name : own.names) {
    if (!other.values.contains(name)) continue;
    const auto &first = own.values[name], &second = other.values[name];
    differences.push_back({name, own.is_logarithm[name], stats::mean(first) - stats::mean(second),
                           limit_of(spreads, name, first.size(), second.size())});
  }
  return differences;
}

}  // namespace

std::vector<BenchComparison> compare_with_baseline(const std::vector<Measurement>& measurements,
                                                   const std::string& baseline) {
  std::map<std::pair<std::string, std::string>, std::vector<Group>> kinds;
  std::vector<std::pair<std::string, std::string>> order;
  for (const Group& group : repeats_of(measurements)) {
    const Measurement& one = *group.front();
    if (one.cable.empty()) continue;
    const std::pair key(one.kind, one.kind == "cable-lcr" ? "" : one.rig);
    auto& groups = kinds[key];
    if (groups.empty()) order.push_back(key);
    groups.push_back(group);
  }
  std::vector<BenchComparison> comparisons;
  for (const auto& key : order) {
    BenchComparison comparison{key.first, key.second, spreads_of(kinds[key]), {}};
    for (const Group& group : kinds[key]) {
      const Measurement& one = *group.front();
      BenchComparison::Row row{
          one.cable, one.piece, one.condition, one.feature, one.state, static_cast<int>(group.size()), {}};
      const auto other = std::find_if(kinds[key].begin(), kinds[key].end(), [&](const Group& each) {
        return each.front()->cable == baseline && is_like_that_of_baseline(one, *each.front());
      });
      if (one.cable != baseline && other != kinds[key].end())
        row.differences = differences_of(group, *other, comparison.repeatability);
      comparison.rows.push_back(std::move(row));
    }
    comparisons.push_back(std::move(comparison));
  }
  return comparisons;
}

}  // namespace findings
