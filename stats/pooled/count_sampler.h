#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace stats {

/// Draws whole numbers with given probabilities, each from one random word, by the alias method: the words
/// are divided into 2^k equal slices, and each slice between at most two numbers.
///
/// Accuracy: each number is drawn with its probability to an error below 2^-50.
/// Source: A. J. Walker, ACM Trans. Math. Softw. 3 (1977) 253; set up after M. D. Vose, IEEE Trans. Softw.
/// Eng. 17 (1991) 972.
class CountSampler {
 public:
  /// @param probabilities  of 0, 1, ...; 1 to 65,536 values between 0 and 1 with a sum of 1 (to 1 part in
  ///                       10^9).
  /// @throws std::domain_error  naming the argument, its value and its range.
  explicit CountSampler(std::span<const double> probabilities);

  /// The number that belongs to this word, every word equally likely.
  std::uint32_t of(std::uint64_t word) const {
    const Slice& slice = slices_[word >> shift_];
    return slice.numbers[word >= slice.bound];
  }

 private:
  struct Slice {
    std::uint64_t bound;
    std::array<std::uint32_t, 2> numbers;  ///< of the words below the bound, and of those from it on
  };
  std::vector<Slice> slices_;
  int shift_;
};

}  // namespace stats
