#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace stats {

/// A symmetric positive definite matrix as L L', for the systems of a fit.
class Cholesky {
 public:
  /// @param matrix  `size` rows one after another, of which the lower triangle is read.
  /// @return  nothing where it is not positive definite to working precision.
  static std::optional<Cholesky> of(std::vector<double> matrix, std::size_t size);

  /// x of A x = b.
  std::vector<double> solve(std::vector<double> b) const;

  /// A to the power of -1, row after row.
  std::vector<double> inverse() const;

  double log_determinant() const;

 private:
  Cholesky(std::vector<double> lower, std::size_t size) : lower_(std::move(lower)), size_(size) {}

  std::vector<double> lower_;
  std::size_t size_;
};

}  // namespace stats
