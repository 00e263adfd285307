#pragma once

#include <span>
#include <vector>

#include "stats/pooled/subject_count.h"

namespace stats {

/// A value with its first and second derivatives by mean and gamma.
struct LikelihoodJet {
  double value = 0;
  double mean = 0, gamma = 0;
  double mean_mean = 0, mean_gamma = 0, gamma_gamma = 0;

  LikelihoodJet& operator+=(const LikelihoodJet& other);
  LikelihoodJet& operator-=(const LikelihoodJet& other);
};

/// Log likelihood of the chance-corrected beta-binomial distribution (chance 0: the plain one), with its
/// exact derivatives.
///
/// With h of n trials heard the complete likelihood is a product over j of mean (1 - gamma) + j gamma for j <
/// h, of (1 - mean)(1 - gamma) + j gamma for j < n - h, over 1 - gamma + j gamma for j < n: sums of
/// logarithms, tabled once for each (mean, gamma). Seen are only the x right, so h is summed over; the
/// derivatives follow by averaging over h given x (T. A. Louis, J. R. Stat. Soc. B 44 (1982) 226).
class BetaBinomialLikelihood {
 public:
  /// @param subjects  checked, must outlive this.
  BetaBinomialLikelihood(std::span<const SubjectCount> subjects, double chance);

  /// @param mean   strictly between 0 and 1.
  /// @param gamma  0 to 1; at 1 the derivatives by gamma are not given.
  LikelihoodJet at(double mean, double gamma) const;

  /// The value where nobody hears anything (mean 0), whatever gamma; -infinity where that is impossible.
  double nothing_heard() const;

 private:
  struct Tables;
  Tables tables_at(double mean, double gamma) const;
  LikelihoodJet of_subject(const SubjectCount& subject, const Tables& tables) const;

  /// Logarithm of n! / (h! (x - h)! (n - x)!) chance^(x - h) (1 - chance)^(n - x).
  double log_ways(int trials, int correct, int heard) const;

  std::span<const SubjectCount> subjects_;
  double chance_;
  std::vector<double> log_factorial_;
};

}  // namespace stats
