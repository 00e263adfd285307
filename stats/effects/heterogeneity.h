#pragma once

#include <optional>
#include <span>

#include "stats/share/interval.h"

namespace stats {

/// An effect as one campaign found it: a difference of worths, a d-prime, a logarithm of an odds ratio.
struct Effect {
  double estimate;
  double standard_error;
};

/// How far two campaigns' effects differ; both normal about their true effects, which is an approximation.
struct EffectDifference {
  double difference;  ///< second less first
  double standard_error;
  Interval interval;
  double p;  ///< two-sided, of equal effects
};

/// @param first, second  finite, standard errors above 0.
/// @param confidence     strictly between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range; so does the function below.
/// Example: 1.0 (0.3) and 0.2 (0.4): -0.8, interval -1.780 to 0.180, p 0.110.
EffectDifference effect_difference(const Effect& first, const Effect& second, double confidence);

/// Whether campaigns agree, and what they say together.
struct Heterogeneity {
  double q;  ///< Cochran's: squares of the distances to the common effect in standard errors
  int degrees_of_freedom;
  double p;                   ///< its tail of chi-square
  double inconsistent_share;  ///< I^2: share of q beyond its degrees of freedom, 0 or more
  double between_variance;    ///< tau^2 of Paule and Mandel: with it q is its degrees of freedom, 0 or more
  Effect common;              ///< by precision, as if the true effect was the same in all
  Interval common_interval;
  Effect average;             ///< of true effects that vary, standard error of Hartung and Knapp
  Interval average_interval;  ///< by Student's t with one degree of freedom less than campaigns
};

/// @param effects  2 to 1,000.
/// Accuracy: 1e-9 (tests/reference). With two or three campaigns q hardly finds anything: a large p is no licence to take
/// them as one.
/// Example: 1.0 (0.3) and 0.2 (0.4): q 2.56, p 0.110, I^2 0.609, tau^2 0.195.
/// Source: W. G. Cochran, Biometrics 10 (1954) 101; R. C. Paule and J. Mandel, J. Res. Natl. Bur. Stand. 87 (1982) 377; J. P. T.
/// Higgins and S. G. Thompson, Statist. Med. 21 (2002) 1539; J. Hartung and G. Knapp, Statist. Med. 20 (2001) 3875.
Heterogeneity heterogeneity(std::span<const Effect> effects, double confidence);

}  // namespace stats
