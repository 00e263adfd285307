#include "stats/multiplicity.h"

#include <algorithm>
#include <numeric>
#include <string>

#include "stats/arguments.h"

namespace stats {
namespace {

void check(std::span<const double> p) {
  for (std::size_t i = 0; i < p.size(); ++i) require_closed_probability("p[" + std::to_string(i) + "]", p[i]);
}

std::vector<std::size_t> places_by_size(std::span<const double> p) {
  std::vector<std::size_t> places(p.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  std::stable_sort(places.begin(), places.end(), [&](auto a, auto b) { return p[a] < p[b]; });
  return places;
}

/// From the largest p down, each times `factor` of its rank (1 for the smallest), never above the one before.
template <typename Factor>
std::vector<double> stepped_up(std::span<const double> p, Factor factor) {
  check(p);
  std::vector<double> adjusted(p.size());
  const auto places = places_by_size(p);
  double smallest = 1;
  for (std::size_t rank = places.size(); rank > 0; --rank) {
    const std::size_t place = places[rank - 1];
    smallest = std::min(smallest, p[place] * factor(rank));
    adjusted[place] = smallest;
  }
  return adjusted;
}

}  // namespace

std::vector<double> bonferroni(std::span<const double> p) {
  check(p);
  std::vector<double> adjusted;
  for (double value : p) adjusted.push_back(std::min(1.0, value * double(p.size())));
  return adjusted;
}

std::vector<double> holm(std::span<const double> p) {
  check(p);
  std::vector<double> adjusted(p.size());
  double largest = 0;
  auto tests_left = double(p.size());
  for (std::size_t place : places_by_size(p)) {
    largest = std::max(largest, std::min(1.0, p[place] * tests_left--));
    adjusted[place] = largest;
  }
  return adjusted;
}

std::vector<double> hochberg(std::span<const double> p) {
  return stepped_up(p, [&](std::size_t rank) { return double(p.size() - rank + 1); });
}

std::vector<double> hommel(std::span<const double> p) {
  check(p);
  const std::size_t n = p.size();
  const auto places = places_by_size(p);
  std::vector<double> sorted;
  for (const std::size_t place : places) sorted.push_back(p[place]);
  std::vector<double> largest = sorted;  // over the sizes of subset, of the p of Simes' test
  for (std::size_t size = n; size >= 1; --size) {
    // The `size` - 1 largest p decide together with one of the others, the first n - size + 1.
    double simes = 1;
    for (std::size_t rank = 2; rank <= size; ++rank)
      simes = std::min(simes, double(size) * sorted[n - size + rank - 1] / double(rank));
    for (std::size_t i = 0; i < n; ++i) {
      const double first = std::min(simes, double(size) * sorted[std::min(i, n - size)]);
      largest[i] = std::max(largest[i], first);
    }
  }
  std::vector<double> adjusted(n);
  for (std::size_t i = 0; i < n; ++i) adjusted[places[i]] = largest[i];
  return adjusted;
}

std::vector<double> benjamini_hochberg(std::span<const double> p) {
  return stepped_up(p, [&](std::size_t rank) { return double(p.size()) / double(rank); });
}

std::vector<double> benjamini_yekutieli(std::span<const double> p) {
  double harmonic = 0;
  for (std::size_t rank = 1; rank <= p.size(); ++rank) harmonic += 1 / double(rank);
  return stepped_up(p, [&](std::size_t rank) { return harmonic * double(p.size()) / double(rank); });
}

}  // namespace stats
