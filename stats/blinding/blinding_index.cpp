#include "stats/blinding/blinding_index.h"

#include <algorithm>
#include <array>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <cstdint>

#include "stats/arguments.h"

namespace stats {
namespace {

std::int64_t checked_guesses(std::int64_t right, std::int64_t wrong, std::int64_t dont_know) {
  require_count("right", right, 0, kMostTrials);
  require_count("wrong", wrong, 0, kMostTrials);
  require_count("dont_know", dont_know, 0, kMostTrials);
  return right + wrong + dont_know;
}

BlindingIndex blinding_limits(double index, double standard_error, double confidence) {
  const double two = quantile(complement(boost::math::normal(), (1 - confidence) / 2)) * standard_error;
  const double one = quantile(boost::math::normal(), confidence) * standard_error;
  return {index, standard_error, {index - two, index + two}, index - one, index + one};
}

/// James' index is d + (1 - d)^2 w / (2 e), with d the share of "don't know", w that of wrong guesses, and
/// e = g1 a2 + g2 a1, where g are the shares of guesses and a those given, of subjects who guessed.
struct JamesShares {
  double right_first, wrong_first, right_second, wrong_second, dont_know;

  double guessed_first() const { return right_first + wrong_second; }
  double guessed_second() const { return right_second + wrong_first; }
  double given_first() const { return right_first + wrong_first; }
  double given_second() const { return right_second + wrong_second; }
  double wrong() const { return wrong_first + wrong_second; }
  double expected() const { return guessed_first() * given_second() + guessed_second() * given_first(); }
  double index() const { return dont_know + (1 - dont_know) * (1 - dont_know) * wrong() / (2 * expected()); }

  /// Delta method for shares of `n` subjects.
  double standard_error(double n) const {
    const double e = expected(), scale = (1 - dont_know) * (1 - dont_know) / (2 * e);
    const auto slope = [&](double of_wrong, double of_expected) {
      return scale * (of_wrong - wrong() * of_expected / e);
    };
    const std::array share{right_first, wrong_first, right_second, wrong_second, dont_know};
    const double g1 = guessed_first(), g2 = guessed_second(), a1 = given_first(), a2 = given_second();
    const std::array slopes{slope(0, g2 + a2), slope(1, g2 + a1), slope(0, g1 + a1), slope(1, g1 + a2),
                            1 - (1 - dont_know) * wrong() / e};
    double mean = 0, squares = 0;
    for (std::size_t i = 0; i < share.size(); ++i) {
      mean += share[i] * slopes[i];
      squares += share[i] * slopes[i] * slopes[i];
    }
    return std::sqrt(std::max(0.0, squares - mean * mean) / n);
  }
};

}  // namespace

std::optional<BlindingIndex> bang_index(int right, int wrong, int dont_know, double confidence) {
  const std::int64_t subjects = checked_guesses(right, wrong, dont_know);
  require_count("number of subjects", subjects, 1, kMostTrials);
  require_level("confidence", confidence);
  if (right + wrong == 0) return std::nullopt;
  const double n = double(subjects);
  const double index = (right - wrong) / n;
  const double squares = (right + wrong) / n;
  return blinding_limits(index, std::sqrt(std::max(0.0, squares - index * index) / n), confidence);
}

std::optional<BlindingIndex> james_index(const Guesses& given_first, const Guesses& given_second,
                                         double confidence) {
  const std::int64_t subjects =
      checked_guesses(given_first.first, given_first.second, given_first.dont_know) +
      checked_guesses(given_second.second, given_second.first, given_second.dont_know);
  require_count("number of subjects", subjects, 1, kMostTrials);
  require_level("confidence", confidence);
  const double n = double(subjects);
  const std::int64_t unknown = given_first.dont_know + std::int64_t{given_second.dont_know};
  if (unknown == subjects) return blinding_limits(1, 0, confidence);
  const JamesShares shares{given_first.first / n, given_first.second / n, given_second.second / n,
                           given_second.first / n, double(unknown) / n};
  if (shares.expected() == 0) return std::nullopt;
  return blinding_limits(shares.index(), shares.standard_error(n), confidence);
}

}  // namespace stats
