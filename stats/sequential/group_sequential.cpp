#include "stats/sequential/group_sequential.h"

#include <algorithm>
#include <boost/math/constants/constants.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>

#include "stats/arguments.h"
#include "stats/root.h"

namespace stats {
namespace {

constexpr int kMostGroupLooks = 100;

double group_normal_tail(double z) {
  return boost::math::erfc(z / boost::math::constants::root_two<double>()) / 2;
}

/// The paths that have not crossed yet: probabilities at points of S = Z sqrt(t), which moves by independent
/// normal steps of variance t_k - t_(k-1).
class ScorePaths {
 public:
  explicit ScorePaths(Sides sides) : sides_(sides) {}

  /// Probability of going on so far and then crossing at `information`, if the boundary there is `z`.
  double crossing(double z, double information) const {
    const double step = std::sqrt(information - information_);
    const double bound = z * std::sqrt(information);
    double sum = 0;
    for (const auto [place, probability] : points_) {
      sum += probability * group_normal_tail((bound - place) / step);
      if (sides_ == Sides::two) sum += probability * group_normal_tail((bound + place) / step);
    }
    return sum;
  }

  /// Goes on to `information` and keeps the paths within `z` there. Panels of two steps, of this one or the
  /// `next`, and 15 points each leave an error far below rounding.
  void go_on(double z, double information, double next) {
    const double step = std::sqrt(information - information_);
    const double high = std::fmin(z, kFar) * std::sqrt(information);
    const double low = sides_ == Sides::two ? -high : -kFar * std::sqrt(information);
    const double scale = std::fmin(step, std::sqrt(next - information));
    const int panels = std::max(1, static_cast<int>(std::ceil((high - low) / (2 * scale))));
    const double half = (high - low) / (2 * panels);
    std::vector<Point> points;
    for (int panel = 0; panel < panels && half > 0; ++panel)
      for (std::size_t i = 0; i < Rule::abscissa().size(); ++i)
        for (const double side : {-1.0, 1.0}) {
          if (Rule::abscissa()[i] == 0 && side < 0) continue;
          const double place = low + half * (2 * panel + 1 + side * Rule::abscissa()[i]);
          points.push_back({place, half * Rule::weights()[i] * density(place, step)});
        }
    points_ = std::move(points);
    information_ = information;
  }

 private:
  using Rule = boost::math::quadrature::gauss<double, 15>;
  static constexpr double kFar = 9;  // beyond 9 standard deviations lies 1e-19

  struct Point {
    double place;
    double probability;
  };

  double density(double place, double step) const {
    double sum = 0;
    for (const Point& point : points_) {
      const double distance = (place - point.place) / step;
      if (std::fabs(distance) < kFar) sum += point.probability * std::exp(-distance * distance / 2);
    }
    return sum * boost::math::constants::one_div_root_two_pi<double>() / step;
  }

  Sides sides_;
  double information_ = 0;
  std::vector<Point> points_{{0, 1}};
};

void check_group_information(std::span<const double> information) {
  require_count("looks", std::ssize(information), 1, kMostGroupLooks);
  require_finite("information", information);
  const double least = 0.0001 * information.back() * (1 - 1e-9);
  double before = 0;
  for (const double value : information) {
    require_between("information", value, before + least, std::numeric_limits<double>::max());
    before = value;
  }
}

void check_group_level(double level, Sides sides) {
  require_level("level", level);
  if (sides == Sides::one) require_between("level of one side", level, 0, std::nextafter(0.5, 0));
}

double group_normal_point(double level, Sides sides) {
  return quantile(complement(boost::math::normal(), sides == Sides::two ? level / 2 : level));
}

std::vector<double> equal_group_information(int looks) {
  std::vector<double> information(static_cast<std::size_t>(looks));
  std::iota(information.begin(), information.end(), 1.0);
  return information;
}

/// The constant c with size `level` of the boundary c shape(k): between the level at one look and
/// Bonferroni's. @param shape  1 at the last look, nowhere smaller.
template <typename Shape>
double group_constant(int looks, double level, Sides sides, Shape shape) {
  require_count("looks", looks, 1, kMostGroupLooks);
  check_group_level(level, sides);
  if (looks == 1) return group_normal_point(level, sides);
  const auto information = equal_group_information(looks);
  const auto excess = [&](double constant) {
    std::vector<double> boundary;
    for (const double k : information) boundary.push_back(constant * shape(k));
    const auto exits = exit_probabilities(boundary, information, sides);
    return std::accumulate(exits.begin(), exits.end(), -level);
  };
  return root_between(excess, group_normal_point(level, sides), group_normal_point(level / looks, sides), 45);
}

}  // namespace

std::vector<double> exit_probabilities(std::span<const double> boundary, std::span<const double> information,
                                       Sides sides) {
  check_group_information(information);
  require_count("number of boundaries", std::ssize(boundary), std::ssize(information),
                std::ssize(information));
  for (const double z : boundary)
    require_between("boundary", z, sides == Sides::two ? 0 : -INFINITY, INFINITY);
  ScorePaths paths(sides);
  std::vector<double> exits;
  for (std::size_t k = 0; k < boundary.size(); ++k) {
    exits.push_back(paths.crossing(boundary[k], information[k]));
    if (k + 1 < boundary.size()) paths.go_on(boundary[k], information[k], information[k + 1]);
  }
  return exits;
}

double pocock_constant(int looks, double level, Sides sides) {
  return group_constant(looks, level, sides, [](double) { return 1.0; });
}

double obrien_fleming_constant(int looks, double level, Sides sides) {
  return group_constant(looks, level, sides, [looks](double k) { return std::sqrt(looks / k); });
}

std::vector<double> spending_boundary(Spending spending, double level, std::span<const double> fractions,
                                      Sides sides) {
  check_group_level(level, sides);
  check_group_information(fractions);
  for (const double fraction : fractions) require_closed_probability("fraction", fraction);
  ScorePaths paths(sides);
  std::vector<double> boundary;
  double before = 0;
  for (std::size_t k = 0; k < fractions.size(); ++k) {
    const double now = level_spent(spending, level, fractions[k]);
    const auto excess = [&](double z) { return paths.crossing(z, fractions[k]) - (now - before); };
    boundary.push_back(now - before < 1e-300
                           ? std::numeric_limits<double>::infinity()
                           : root_between(excess, sides == Sides::two ? 0.0 : -38.0, 38.0, 45));
    if (k + 1 < fractions.size()) paths.go_on(boundary[k], fractions[k], fractions[k + 1]);
    before = now;
  }
  return boundary;
}

}  // namespace stats
