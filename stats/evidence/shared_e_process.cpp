#include "stats/evidence/shared_e_process.h"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <cstddef>
#include <limits>

#include "stats/arguments.h"

namespace stats {
namespace {

/// (right - wrong)/(right + wrong), 0 without answers.
double shared_lead(int right, int wrong) {
  require_count("right", right, 0, kMostTrials);
  require_count("wrong", wrong, 0, kMostTrials);
  return right == wrong ? 0 : double(right - wrong) / (right + wrong);
}

}  // namespace

SharedEProcess::SharedEProcess(double bet) {
  require_between("bet", bet, -1, 1);
  bets_.push_back({bet, 1, 0});
}

SharedEProcess::SharedEProcess() {
  using Points = boost::math::quadrature::gauss<double, 60>;
  for (std::size_t i = 0; i < Points::abscissa().size(); ++i) {
    const double place = Points::abscissa()[i];
    const double weight = Points::weights()[i] / 2;
    bets_.push_back({(1 - place) / 2, weight, 0});
    bets_.push_back({(1 + place) / 2, weight, 0});
  }
}

void SharedEProcess::add(int right, int wrong) {
  const double lead = shared_lead(right, wrong);
  for (Bet& bet : bets_) bet.log_capital += std::log1p(bet.bet * lead);
}

double SharedEProcess::log_value() const {
  double largest = -std::numeric_limits<double>::infinity();
  for (const Bet& bet : bets_) largest = std::max(largest, bet.log_capital);
  if (std::isinf(largest)) return largest;
  double sum = 0;
  for (const Bet& bet : bets_) sum += bet.weight * std::exp(bet.log_capital - largest);
  return largest + std::log(sum);
}

double shared_bet_factor(int right, int wrong, double bet) {
  require_between("bet", bet, -1, 1);
  return 1 + bet * shared_lead(right, wrong);
}

}  // namespace stats
