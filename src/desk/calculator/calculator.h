#pragma once

#include <string>
#include <vector>

#include "desk/calculator/figures.h"

namespace desk {

/// The statistics on bare numbers, so that a reader can check a published claim.
///
/// Everything is taken as typed, word for word; the defaults here are those of the commands. Numbers have a
/// decimal point or a decimal comma; a chance or a share may be a fraction, "1/3". How lists are typed:
/// desk/calculator_typed.h.
/// Results hold what was given beside what came out.
///
/// @throws text::BadInput     for what cannot be read.
/// @throws std::domain_error  for what is outside its range, naming the argument, its range and its value.

/// A count of right answers: its exact p, intervals for the share behind it, and what the test could have
/// caught.
struct RightTyped {
  std::string correct;
  std::string trials;
  std::string chance = "0.5";
  std::string level = "0.05";
};
Figures calculate(const RightTyped& typed);

/// How many right answers a number of trials needs, alone and at the first step of Holm.
struct NeedTyped {
  std::string trials;
  std::string chance = "0.5";
  std::string level = "0.05";
  std::string comparisons = "1";
  bool two_sided = false;  ///< agreeing answers, whichever way; at chance 1/2 only
};
Figures calculate(const NeedTyped& typed);

/// How many trials find a share right.
struct SizeTyped {
  std::string share;
  std::string power = "0.8";
  std::string chance = "0.5";
  std::string level = "0.05";
  std::string comparisons = "1";
};
Figures calculate(const SizeTyped& typed);

/// How probably a number of trials finds a share right.
struct PowerTyped {
  std::string trials;
  std::string share;
  std::string chance = "0.5";
  std::string level = "0.05";
  std::string comparisons = "1";
};
Figures calculate(const PowerTyped& typed);

/// The exact re-draw of the coins, for trials that several listeners answer.
struct RedrawTyped {
  std::vector<std::string> splits;  ///< a trial each, "2:1": what its two falls of the coin add to the total
  std::string observed;
  std::string level = "0.05";
};
Figures calculate(const RedrawTyped& typed);

/// Adjusted p-values of a family.
struct AdjustTyped {
  std::vector<std::string> p;
  std::string level = "0.05";
};
Figures calculate(const AdjustTyped& typed);

/// Cohen's kappa of two raters: "88,10,2;14,40,6;18,10,12".
struct KappaTyped {
  std::vector<std::string> rows;
};
Figures calculate(const KappaTyped& typed);

/// Fleiss' kappa of several raters: a row a subject, a column a category.
struct FleissTyped {
  std::vector<std::string> rows;
};
Figures calculate(const FleissTyped& typed);

/// The seed and the number of draws of a permutation test too large to be exact.
struct DrawsTyped {
  std::string seed = "1";
  std::string draws = "99999";
};

/// Whether listeners are right on the same trials.
struct AgreeTyped {
  std::vector<std::string> marks;  ///< a listener each: 1 right, 0 wrong, - missing
  DrawsTyped monte_carlo = {};
};
Figures calculate(const AgreeTyped& typed);

/// Whether x and y rise together, by Spearman's rank correlation.
struct CorrelateTyped {
  std::vector<std::string> x, y;
  std::string alternative = "two-sided";  ///< or "greater" or "less"
  std::string level = "0.05";
  DrawsTyped monte_carlo = {};
};
Figures calculate(const CorrelateTyped& typed);

/// Whether x and y differ in their mean.
struct DifferTyped {
  std::vector<std::string> x, y;
  std::string alternative = "two-sided";
  std::string level = "0.05";
  DrawsTyped monte_carlo = {};
};
Figures calculate(const DifferTyped& typed);

}  // namespace desk
