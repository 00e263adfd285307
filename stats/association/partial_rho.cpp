#include "stats/association/partial_rho.h"

#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numeric>
#include <string>

#include "stats/arguments.h"
#include "stats/association/ranks.h"
#include "stats/random.h"

namespace stats {
namespace {

using Column = std::vector<double>;

constexpr std::size_t kEveryOrder = 8;

double product(const Column& a, const Column& b) {
  return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

Column centred_ranks(std::span<const double> values) {
  Column ranks;
  for (const auto doubled : doubled_midranks(values))
    ranks.push_back(double(doubled) - double(values.size() + 1));
  return ranks;
}

/// Takes away what goes with each of the columns, which are at right angles; twice, so that rounding goes too.
void take_away(Column& ranks, const std::vector<Column>& columns) {
  for (int round = 0; round < 2; ++round)
    for (const Column& column : columns) {
      const double part = product(ranks, column) / product(column, column);
      for (std::size_t i = 0; i < ranks.size(); ++i) ranks[i] -= part * column[i];
    }
}

/// Whether something is left but rounding.
bool is_left(const Column& rest, const Column& whole) {
  return product(rest, rest) > 1e-18 * product(whole, whole);
}

/// Columns at right angles that the controls' ranks go with.
std::vector<Column> directions_of(const std::vector<std::vector<double>>& controls) {
  std::vector<Column> directions;
  for (const auto& control : controls) {
    const Column whole = centred_ranks(control);
    Column rest = whole;
    take_away(rest, directions);
    if (is_left(rest, whole)) directions.push_back(std::move(rest));
  }
  return directions;
}

/// @param order  of what is left of x, which is then freed from the controls again.
double rho_of(const Column& x_rest, const std::vector<std::size_t>& order, const Column& y_rest,
              const std::vector<Column>& directions) {
  Column moved;
  for (const std::size_t place : order) moved.push_back(x_rest[place]);
  take_away(moved, directions);
  const double square = product(moved, moved);
  return is_left(moved, x_rest) ? product(moved, y_rest) / std::sqrt(square * product(y_rest, y_rest)) : 0;
}

}  // namespace

std::optional<PartialRho> partial_rho(std::span<const double> x, std::span<const double> y,
                                      const std::vector<std::vector<double>>& controls,
                                      const MonteCarlo& monte_carlo) {
  require_count("number of x", std::ssize(x), 4, 2'000);
  require_count("number of y", std::ssize(y), std::ssize(x), std::ssize(x));
  require_count("number of controls", std::ssize(controls), 1, std::min<std::int64_t>(10, std::ssize(x) - 3));
  require_finite("x", x);
  require_finite("y", y);
  for (const auto& control : controls) {
    require_count("number of values of a control", std::ssize(control), std::ssize(x), std::ssize(x));
    require_finite("control", control);
  }
  require_draws(monte_carlo);
  const auto directions = directions_of(controls);
  const Column x_whole = centred_ranks(x), y_whole = centred_ranks(y);
  Column x_rest = x_whole, y_rest = y_whole;
  take_away(x_rest, directions);
  take_away(y_rest, directions);
  if (!is_left(x_rest, x_whole) || !is_left(y_rest, y_whole)) return std::nullopt;

  std::vector<std::size_t> order(x.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  PartialRho found{};
  found.rho = std::clamp(rho_of(x_rest, order, y_rest, directions), -1.0, 1.0);
  found.degrees_of_freedom = static_cast<int>(x.size()) - 2 - static_cast<int>(controls.size());
  const double t =
      found.rho * std::sqrt(found.degrees_of_freedom / std::max(1e-300, 1 - found.rho * found.rho));
  found.t_p = std::abs(found.rho) >= 1
                  ? 0
                  : 2 * cdf(complement(boost::math::students_t(found.degrees_of_freedom), std::abs(t)));
  std::int64_t reaching = 0, all = 0;
  const auto count = [&] {
    ++all;
    reaching +=
        counts_against(rho_of(x_rest, order, y_rest, directions), found.rho, Alternative::two_sided, 1e-10);
  };
  if (x.size() <= kEveryOrder) {
    do count();
    while (std::next_permutation(order.begin(), order.end()));
    found.test = exact_p(double(reaching) / double(all));
    return found;
  }
  Random random(monte_carlo.seed);
  for (int draw = 0; draw < monte_carlo.draws; ++draw) {
    random.shuffle(std::span(order));
    count();
  }
  found.test = monte_carlo_p(reaching, monte_carlo.draws);
  return found;
}

}  // namespace stats
