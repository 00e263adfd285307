#include "stats/worth/pair_likelihood.h"

#include <algorithm>
#include <boost/math/constants/constants.hpp>
#include <cmath>

namespace stats {
namespace {

double answers_of(const PairCount& count) {
  return double(count.first_preferred + count.ties + count.second_preferred);
}

struct Shares {
  double first, tie, second, log_sum;
};

Shares shares_of(bool with_ties, double x, double log_tie) {
  const double top = std::max(std::abs(x) / 2, with_ties ? log_tie : 0);
  const double first = std::exp(x / 2 - top), second = std::exp(-x / 2 - top),
               tie = with_ties ? std::exp(log_tie - top) : 0, sum = first + tie + second;
  return {first / sum, tie / sum, second / sum, top + std::log(sum)};
}

/// log Phi(x), and phi(x)/Phi(x).
struct LogNormal {
  double log_share, hazard;
};

LogNormal log_normal(double x) {
  const double root_half = boost::math::constants::one_div_root_two<double>();
  const double share = std::erfc(-x * root_half) / 2;
  if (share > 1e-300) {
    const double density = std::exp(-x * x / 2) * boost::math::constants::one_div_root_two_pi<double>();
    return {std::log(share), density / share};
  }
  return {-x * x / 2 - std::log(-x) - boost::math::constants::log_root_two_pi<double>(), -x};
}

PairTerm normal_term(const PairCount& count, double x) {
  const LogNormal up = log_normal(x), down = log_normal(-x);
  const double half = double(count.ties) / 2, first = double(count.first_preferred) + half,
               second = double(count.second_preferred) + half;
  PairTerm term;
  term.value = first * up.log_share + second * down.log_share;
  term.by_x = first * up.hazard - second * down.hazard;
  term.xx = answers_of(count) * up.hazard * down.hazard;
  return term;
}

double times_log_share(double part, double all) { return part > 0 ? part * std::log(part / all) : 0; }

}  // namespace

PairTerm pair_term(const PairCount& count, PreferenceModel model, bool with_ties, double x, double log_tie) {
  if (model == PreferenceModel::normal) return normal_term(count, x);
  const Shares shares = shares_of(with_ties, x, log_tie);
  const double n = answers_of(count), lead = double(count.first_preferred - count.second_preferred) / 2,
               mean = (shares.first - shares.second) / 2, ties = double(count.ties);
  PairTerm term;
  term.value = lead * x + (with_ties ? ties * log_tie : 0) - n * shares.log_sum;
  term.by_x = lead - n * mean;
  term.by_t = ties - n * shares.tie;
  term.xx = n * ((shares.first + shares.second) / 4 - mean * mean);
  term.xt = -n * mean * shares.tie;
  term.tt = n * shares.tie * (1 - shares.tie);
  return term;
}

PairThirds pair_thirds(const PairCount& count, bool with_ties, double x, double log_tie) {
  const Shares shares = shares_of(with_ties, x, log_tie);
  const double mean = (shares.first - shares.second) / 2;
  PairThirds thirds;
  const auto add = [&](double share, double lead, double tie) {
    const double by_x = lead - mean, by_t = tie - shares.tie, weight = answers_of(count) * share;
    thirds.xxx += weight * by_x * by_x * by_x;
    thirds.xxt += weight * by_x * by_x * by_t;
    thirds.xtt += weight * by_x * by_t * by_t;
    thirds.ttt += weight * by_t * by_t * by_t;
  };
  add(shares.first, 0.5, 0);
  add(shares.second, -0.5, 0);
  add(shares.tie, 0, 1);
  return thirds;
}

PairShares pair_shares(PreferenceModel model, bool with_ties, double x, double log_tie) {
  if (model == PreferenceModel::normal) {
    const double root_half = boost::math::constants::one_div_root_two<double>();
    return {std::erfc(-x * root_half) / 2, 0, std::erfc(x * root_half) / 2};
  }
  const Shares shares = shares_of(with_ties, x, log_tie);
  return {shares.first, shares.tie, shares.second};
}

double saturated(const PairCount& count, bool with_ties) {
  const double all = answers_of(count), ties = double(count.ties), half = with_ties ? 0 : ties / 2;
  return times_log_share(double(count.first_preferred) + half, all) +
         times_log_share(with_ties ? ties : 0, all) +
         times_log_share(double(count.second_preferred) + half, all);
}

}  // namespace stats
