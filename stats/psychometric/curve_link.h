#pragma once

namespace stats {

/// How a number on the whole line becomes a share F between 0 and 1.
enum class CurveLink {
  logit,   ///< 1 / (1 + e^-x)
  probit,  ///< the normal distribution, Phi(x)
  cloglog  ///< 1 - exp(-e^x): Weibull's curve on a logarithmic scale
};

/// F at a place, what is missing to 1 (each to full relative precision), and the first two slopes of F.
struct LinkAt {
  double share;
  double rest;
  double slope;
  double bend;
};

/// @param x  beyond 30 below and above (6.5 above for cloglog) that place's values are taken.
LinkAt link_at(CurveLink link, double x);

/// The x at which F is `share`.
/// @param share  strictly between 0 and 1.
double link_inverse(CurveLink link, double share);

}  // namespace stats
