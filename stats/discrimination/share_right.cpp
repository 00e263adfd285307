#include "stats/discrimination/share_right.h"

#include <algorithm>
#include <boost/math/constants/constants.hpp>
#include <boost/math/special_functions/erf.hpp>
#include <boost/math/special_functions/owens_t.hpp>
#include <cmath>
#include <limits>

#include "stats/arguments.h"
#include "stats/discrimination/normal.h"
#include "stats/root.h"

namespace stats {
namespace {

constexpr double kInfiniteDPrime = std::numeric_limits<double>::infinity();
constexpr double kLinkRootTwo = boost::math::constants::root_two<double>();
constexpr double kLinkRootThree = boost::math::constants::root_three<double>();
constexpr double kLinkRootSix = kLinkRootTwo * kLinkRootThree;

/// A link at one d': each part to nearly full relative accuracy, so that d' can be found from either end.
struct LinkPoint {
  double above_chance;  // share right less chance
  double wrong;         // share wrong
  double slope;         // of the share right by d'
};

/// Right when two independent judgements, each right with probability Phi(scale d'), are both right or both
/// wrong: 1/2 + 2 [Phi(a) - 1/2] [Phi(b) - 1/2].
LinkPoint both_or_neither(double d_prime, double scale_a, double scale_b) {
  const double a = scale_a * d_prime, b = scale_b * d_prime;
  const double half_a = boost::math::erf(a / kLinkRootTwo) / 2,
               half_b = boost::math::erf(b / kLinkRootTwo) / 2;
  return {2 * half_a * half_b, normal_below(a) * normal_below(-b) + normal_below(-a) * normal_below(b),
          2 * (scale_a * normal_density(a) * half_b + scale_b * normal_density(b) * half_a)};
}

/// Integral of phi(x - d') Phi(x)^(m - 1) by the trapezoidal rule, whose error falls like exp(-2 pi^2 / (m
/// step^2)) for m normal factors: at this step below 1e-17 (L. N. Trefethen and J. A. C. Weideman, SIAM Rev.
/// 56 (2014) 385).
LinkPoint strongest_of(int alternatives, double d_prime) {
  const double others = alternatives - 1;
  const double step = 0.7 / std::sqrt(double(alternatives));
  const int steps = static_cast<int>(std::ceil((d_prime + 18) / step));
  double wrong = 0, slope = 0;
  for (int i = 0; i <= steps; ++i) {
    const double x = -9 + i * step;
    const double density = normal_density(x - d_prime);
    const double log_below = std::log1p(-normal_below(-x));
    wrong -= density * std::expm1(others * log_below);
    slope += density * others * normal_density(x) * std::exp((others - 1) * log_below);
  }
  return {others / alternatives - step * wrong, step * wrong, step * slope};
}

/// The published integral is 1 - 4 T(d'/sqrt(6), sqrt(3)) with Owen's function T.
LinkPoint odd_one_of_three(double d_prime) {
  const double h = d_prime / kLinkRootSix;
  const double wrong = 4 * boost::math::owens_t(h, kLinkRootThree);
  return {2.0 / 3 - wrong, wrong,
          2 / kLinkRootSix * normal_density(h) * boost::math::erf(h * kLinkRootThree / kLinkRootTwo)};
}

LinkPoint two_afc(double d_prime) {
  return {boost::math::erf(d_prime / 2) / 2, boost::math::erfc(d_prime / 2) / 2,
          normal_density(d_prime / kLinkRootTwo) / kLinkRootTwo};
}

LinkPoint nearer_of_two(double d_prime) {
  return both_or_neither(d_prime, 1 / kLinkRootTwo, 1 / kLinkRootSix);
}

struct LinkRow {
  Link link;
  std::string_view name;
  double chance;
  LinkPoint (*at)(double d_prime);
};

constexpr LinkRow kLinkTable[] = {
    {Link::two_afc, "2-AFC", 1.0 / 2, two_afc},
    {Link::three_afc, "3-AFC", 1.0 / 3, [](double d) { return strongest_of(3, d); }},
    {Link::four_afc, "4-AFC", 1.0 / 4, [](double d) { return strongest_of(4, d); }},
    {Link::five_afc, "5-AFC", 1.0 / 5, [](double d) { return strongest_of(5, d); }},
    {Link::abx_independent, "ABX, independent observation", 1.0 / 2,
     [](double d) { return both_or_neither(d, 1 / kLinkRootTwo, 0.5); }},
    {Link::abx_differencing, "ABX, differencing", 1.0 / 2, nearer_of_two},
    {Link::duo_trio, "duo-trio", 1.0 / 2, nearer_of_two},
    {Link::same_different_independent, "same-different, independent observation", 1.0 / 2,
     [](double d) { return both_or_neither(d, 0.5, 0.5); }},
    {Link::triangle, "triangle", 1.0 / 3, odd_one_of_three},
};

const LinkRow& link_row(Link link) {
  return *std::find_if(std::begin(kLinkTable), std::end(kLinkTable),
                       [=](const LinkRow& row) { return row.link == link; });
}

/// Beyond this d' every link is right in all but 1e-400 of trials.
constexpr double kFarthestDPrime = 150;

template <typename At>
LinkPoint link_point(const At& at, double d_prime) {
  require_between("d_prime", d_prime, 0, kInfiniteDPrime);
  return at(std::min(d_prime, kFarthestDPrime));
}

/// Solved from whichever end is nearer, where the share's difference from that end is known best.
template <typename At>
double solve_for_d_prime(const At& at, double chance, double share) {
  require_closed_probability("share", share);
  if (share <= chance) return 0;
  if (share == 1) return kInfiniteDPrime;
  const bool from_below = share - chance < 1 - share;
  const auto excess = [&](double d_prime) {
    const LinkPoint point = at(d_prime);
    return from_below ? point.above_chance - (share - chance) : 1 - share - point.wrong;
  };
  return root_between(excess, 0.0, 50.0);
}

auto choice_link(int alternatives) {
  require_count("alternatives", alternatives, 2, 1'000);
  return [=](double d_prime) { return strongest_of(alternatives, d_prime); };
}

}  // namespace

std::string_view link_name(Link link) { return link_row(link).name; }

double link_chance(Link link) { return link_row(link).chance; }

double share_right_at(Link link, double d_prime) { return 1 - link_point(link_row(link).at, d_prime).wrong; }

double link_slope(Link link, double d_prime) { return link_point(link_row(link).at, d_prime).slope; }

double d_prime_at(Link link, double share) {
  const LinkRow& row = link_row(link);
  return solve_for_d_prime(row.at, row.chance, share);
}

double choice_share_right(int alternatives, double d_prime) {
  return 1 - link_point(choice_link(alternatives), d_prime).wrong;
}

double choice_d_prime(int alternatives, double share) {
  return solve_for_d_prime(choice_link(alternatives), 1.0 / alternatives, share);
}

}  // namespace stats
