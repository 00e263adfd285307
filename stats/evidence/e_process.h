#pragma once

namespace stats {

/// Evidence against "every answer is right with probability `chance`" that may be looked at after every
/// trial and stopped at any time. An e-process starts at 1 and has mean at most 1 under the null at every
/// time of stopping, so the chance that it ever reaches 1/level is at most `level` (Ville's inequality).
/// Values are logarithms to base e, so that long sequences do not overflow: reject at level 0.05 when log e
/// is log 20 = 2.996 or more.
///
/// All functions take
/// @param correct  right answers so far, 0 to `trials`.
/// @param trials   answers so far, 1 to 1,000,000. Before the first answer e is 1.
/// @param chance   strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: absolute error of log e below 1e-11 up to 1,000 trials, 1e-10 up to 10,000 and 1e-8 up to
/// 1,000,000.

/// Likelihood ratio of the share `alternative` against `chance`. At chance 1/2 it is the betting process with
/// the bet 2 alternative - 1.
/// @param alternative  strictly between 0 and 1, fixed beforehand; below `chance` it is evidence for less.
/// Example: 12 of 16 against 0.75 at chance 1/2: e = 8.109.
/// Source: A. Wald, Ann. Math. Stat. 16 (1945) 117.
double log_likelihood_ratio(int correct, int trials, double chance, double alternative);

/// Two-sided mixture: the mean likelihood ratio over alternatives from Beta(a, b). a = b = 1 is uniform;
/// a = b = 1/2 is that of Krichevsky and Trofimov, equal to betting on the estimate (k + 1/2)/(n + 1).
/// @param a, b  0.001 to 10,000.
/// Example: 12 of 16 at chance 1/2: e = 2.118 (uniform), 1.587 (a = b = 1/2).
/// Source: H. Robbins, Ann. Math. Stat. 41 (1970) 1397; R. E. Krichevsky and V. K. Trofimov, IEEE Trans. Inf.
/// Theory 27 (1981) 199.
double log_beta_mixture(int correct, int trials, double chance, double a, double b);

/// One-sided mixture: the same over alternatives above chance only, Beta(a, b) cut off to (chance, 1). Never
/// underflows where fewer are right than by chance.
/// Example: 12 of 16 at chance 1/2: e = 4.132 (a = b = 1), 3.107 (a = b = 1/2).
double log_upper_beta_mixture(int correct, int trials, double chance, double a, double b);

/// e-value of a p: kappa p^(kappa - 1), a calibrator: its mean is at most 1 when p is valid. It is an e-value
/// at one time of stopping fixed beforehand, not an e-process.
/// @param p      between 0 and 1; 0 gives infinity.
/// @param kappa  strictly between 0 and 1.
/// Example: p = 0.05, kappa = 1/2: 2.236.
/// Source: V. Vovk and R. Wang, Ann. Stat. 49 (2021) 1736.
double calibrated_e(double p, double kappa);

/// Smallest Bayes factor for the null that a p can mean, -e p ln p for p below 1/e and 1 above: 1 over it is
/// the largest e that any calibrator of the family kappa p^(kappa - 1) gives, so it is a bound of the
/// evidence and not evidence.
/// @param p  between 0 and 1; 0 gives 0.
/// Example: p = 0.05: 0.407, odds of at most 2.46 to 1 against the null.
/// Source: V. Vovk, J. R. Stat. Soc. B 55 (1993) 317; T. Sellke, M. J. Bayarri and J. O. Berger, Am. Stat. 55
/// (2001) 62.
double vovk_sellke_bound(double p);

}  // namespace stats
