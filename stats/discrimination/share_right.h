#pragma once

#include <array>
#include <string_view>

namespace stats {

/// The psychometric links: the share right of an unbiased observer as a function of d', the distance of the
/// two means in units of the standard deviation, for each way to ask and to decide. In each trial every
/// presentation gives a normal observation of standard deviation 1, independent of all others.
///
/// Independent observation: the presentations are judged one by one against the criterion half-way between
/// the means, and the judgements are combined by the most likely rule. Differencing: only differences between
/// presentations of the trial are used, as where the level roves from trial to trial; it gives fewer right.
enum class Link {
  two_afc,    ///< which of two is the stronger; also the area under the ROC of single ones
  three_afc,  ///< which of three is the strongest
  four_afc,
  five_afc,
  abx_independent,             ///< X is A or B, by independent observation
  abx_differencing,            ///< X is A or B: the one that it is nearer to
  duo_trio,                    ///< as ABX differencing: which of two is nearer to the reference
  same_different_independent,  ///< same or different, by independent observation
  triangle,                    ///< which of three is the odd one: that farthest from the other two
};

inline constexpr std::array kLinks{
    Link::two_afc,         Link::three_afc,        Link::four_afc, Link::five_afc,
    Link::abx_independent, Link::abx_differencing, Link::duo_trio, Link::same_different_independent,
    Link::triangle};

/// Name of the link in plain words, for tables.
std::string_view link_name(Link link);

/// Share right at d' = 0: 1/2, or 1/m for m-AFC, 1/3 for the triangle.
double link_chance(Link link);

/// Share right at d'. To an absolute error below 1e-15.
///
/// @param d_prime  0 to infinity; at infinity the share is 1.
/// @throws std::domain_error  naming the argument, its value and its range; so do the functions below.
/// Example: d' = 1 gives 0.7602 in 2-AFC, 0.5997 in ABX by independent observation, 0.5825 by differencing,
/// 0.4180 in the triangle.
/// Source: N. A. Macmillan and C. D. Creelman, Detection Theory, 2nd ed. (2005); ABX: H. L. Kaplan, N. A.
/// Macmillan and C. D. Creelman, Behav. Res. Methods Instrum. 10 (1978) 796; m-AFC: M. J. Hacker and R.
/// Ratcliff, Percept. Psychophys. 26 (1979) 168; triangle: J. E. R. Frijters, A. Kooistra and P. F. G.
/// Vereijken, Percept. Psychophys. 27 (1980) 176; D. M. Ennis, J. Sensory Stud. 8 (1993) 353.
double share_right_at(Link link, double d_prime);

/// How fast the share right grows with d', d(share)/d(d'), at d'. 0 at d' = 0 (except m-AFC) and at infinity.
double link_slope(Link link, double d_prime);

/// d' at a share right, the inverse of `share_right_at`: infinity at 1, and 0 at or below chance, where no d'
/// fits better.
///
/// @param share  between 0 and 1.
/// Accuracy: error below 1e-12 of the larger of d' and 1 for the share as given; in the triangle only from
/// 1e-8 above 1/3 on, since a share near 1/3 has no more digits. Near 0 and near infinity a small error of
/// the share is a large one of d'.
/// Example: 0.75 gives 0.954 in 2-AFC, 1.790 and 2.020 in ABX, 2.797 in the triangle.
double d_prime_at(Link link, double share);

/// The same for the choice of the strongest of any number.
/// @param alternatives  2 to 1,000.
/// Example: share 0.75 of 4 gives d' = 1.682.
double choice_share_right(int alternatives, double d_prime);
double choice_d_prime(int alternatives, double share);

}  // namespace stats
