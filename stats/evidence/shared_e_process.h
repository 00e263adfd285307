#pragma once

#include <vector>

namespace stats {

/// A test of shared trials that may look after every trial and stop at any time, for any reason.
///
/// Several raters answer a trial, `right` of them rightly and `wrong` of them wrongly; with the trial's fair
/// coin fallen the other way the two numbers change places. So, given everything known before the coin is
/// shown (all answers of this trial, and all earlier answers and coins), right - wrong is +d or -d with
/// probability 1/2 each, and 1 + bet (right - wrong)/(right + wrong) has mean 1 for any bet fixed before the
/// coin is shown: it is a fair bet on the majority. That holds however the raters' answers depend on each
/// other and on earlier coins, also if each coin is shown at once. The product of the factors is the value of
/// an e-process, and the chance that it ever reaches 1/level is at most `level` (Ville's inequality).
///
/// It starts at 1. A rater alone is the likelihood ratio of the share (1 + bet)/2 against 1/2.
/// Source: G. Shafer, J. R. Stat. Soc. A 184 (2021) 407; Ville's inequality: J. Ville, Etude critique de la
/// notion de collectif (1939).
class SharedEProcess {
 public:
  /// The same bet in every trial.
  /// @param bet  from -1 to 1; above 0 it bets that most are right. 0.5 suits a majority right in 0.75 of
  /// trials; 1 loses everything at the first trial in which all are wrong.
  /// @throws std::domain_error  for any other bet.
  explicit SharedEProcess(double bet);

  /// The mean over all bets from 0 to 1, for whom no share is expected beforehand. It is a mean over 60 bets,
  /// Gauss-Legendre points with their weights: itself an exact e-process, and equal to the integral up to 119
  /// trials (for one rater: the one-sided uniform mixture of e_process.h).
  SharedEProcess();

  /// One more trial, 0 to 1,000,000 answers each way. Trials without answers, or with as many right as wrong,
  /// change nothing.
  /// @throws std::domain_error  naming the argument, its value and its range.
  void add(int right, int wrong);

  /// Logarithm of the value; minus infinity where everything is lost.
  double log_value() const;

 private:
  struct Bet {
    double bet;
    double weight;
    double log_capital;
  };
  std::vector<Bet> bets_;
};

/// The factor of one trial for bets of one's own, which may change from trial to trial: 1 + bet
/// (right - wrong)/(right + wrong); 1 without answers.
/// @param bet  from -1 to 1, fixed before the trial's coin is shown.
/// Example: 3 right, 1 wrong, bet 0.5: 1.25.
double shared_bet_factor(int right, int wrong, double bet);

}  // namespace stats
