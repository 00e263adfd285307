#pragma once

namespace stats {

/// How much of a level a test with several looks may have used up at each of them.
enum class Spending {
  obrien_fleming,  ///< little at first: 2 (1 - Phi(z / sqrt t)) with z = Phi^-1(1 - level/2)
  pocock,          ///< nearly evenly: level ln(1 + (e - 1) t)
};

/// Level spent at the fraction `t` of the information (of the trials planned): 0 at 0, `level` at 1. It is
/// the whole level, for both sides together where a test has two.
///
/// @param level     strictly between 0 and 1.
/// @param fraction  between 0 and 1.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Accuracy: relative error below 1e-12.
/// Example: at 0.05, half way: 0.0056 (O'Brien-Fleming type), 0.0310 (Pocock type).
/// Source: K. K. G. Lan and D. L. DeMets, Biometrika 70 (1983) 659.
double level_spent(Spending spending, double level, double fraction);

}  // namespace stats
