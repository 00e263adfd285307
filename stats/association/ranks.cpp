#include "stats/association/ranks.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "stats/arguments.h"

namespace stats {
namespace {

using RankSpan = std::span<const std::int64_t>;

std::int64_t sum(RankSpan x) { return std::accumulate(x.begin(), x.end(), std::int64_t{0}); }

std::int64_t scaled_covariance(RankSpan x, RankSpan y) {
  const auto products = std::inner_product(x.begin(), x.end(), y.begin(), std::int64_t{0});
  return std::ssize(x) * products - sum(x) * sum(y);
}

}  // namespace

std::vector<std::int64_t> doubled_midranks(std::span<const double> values) {
  require_finite("values", values);
  std::vector<std::size_t> places(values.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  std::sort(places.begin(), places.end(), [&](auto a, auto b) { return values[a] < values[b]; });

  std::vector<std::int64_t> ranks(values.size());
  for (std::size_t first = 0, end = 0; first < places.size(); first = end) {
    while (end < places.size() && values[places[end]] == values[places[first]]) ++end;
    for (std::size_t i = first; i < end; ++i) ranks[places[i]] = static_cast<std::int64_t>(first + 1 + end);
  }
  return ranks;
}

RankMoments rank_moments(RankSpan x, RankSpan y) {
  return {scaled_covariance(x, y), scaled_covariance(x, x), scaled_covariance(y, y)};
}

double rho(const RankMoments& moments) {
  return double(moments.covariance) /
         (std::sqrt(double(moments.x_variance)) * std::sqrt(double(moments.y_variance)));
}

}  // namespace stats
