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

std::vector<double> benjamini_hochberg(std::span<const double> p) {
  check(p);
  std::vector<double> adjusted(p.size());
  const auto places = places_by_size(p);
  double smallest = 1;
  for (std::size_t rank = places.size(); rank > 0; --rank) {
    const std::size_t place = places[rank - 1];
    smallest = std::min(smallest, p[place] * (double(p.size()) / double(rank)));
    adjusted[place] = smallest;
  }
  return adjusted;
}

}  // namespace stats
