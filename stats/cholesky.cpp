#include "stats/cholesky.h"

#include <cmath>
#include <utility>

namespace stats {

std::optional<Cholesky> Cholesky::of(std::vector<double> matrix, std::size_t size) {
  std::vector<double> whole(size), column(size);
  for (std::size_t i = 0; i < size; ++i) whole[i] = matrix[i * size + i];
  for (std::size_t j = 0; j < size; ++j) {
    double& pivot = matrix[j * size + j];
    if (!(pivot > 1e-13 * whole[j])) return std::nullopt;
    pivot = std::sqrt(pivot);
    for (std::size_t i = j + 1; i < size; ++i) column[i] = matrix[i * size + j] /= pivot;
    for (std::size_t i = j + 1; i < size; ++i) {
      double* const row = &matrix[i * size];
      for (std::size_t k = j + 1; k <= i; ++k) row[k] -= column[i] * column[k];
    }
  }
  return Cholesky(std::move(matrix), size);
}

std::vector<double> Cholesky::solve(std::vector<double> b) const {
  for (std::size_t i = 0; i < size_; ++i) {
    for (std::size_t k = 0; k < i; ++k) b[i] -= lower_[i * size_ + k] * b[k];
    b[i] /= lower_[i * size_ + i];
  }
  for (std::size_t i = size_; i-- > 0;) {
    for (std::size_t k = i + 1; k < size_; ++k) b[i] -= lower_[k * size_ + i] * b[k];
    b[i] /= lower_[i * size_ + i];
  }
  return b;
}

std::vector<double> Cholesky::inverse() const {
  std::vector<double> all(size_ * size_);
  for (std::size_t j = 0; j < size_; ++j) {
    std::vector<double> unit(size_);
    unit[j] = 1;
    const auto column = solve(std::move(unit));
    for (std::size_t i = 0; i < size_; ++i) all[i * size_ + j] = column[i];
  }
  return all;
}

double Cholesky::log_determinant() const {
  double sum = 0;
  for (std::size_t i = 0; i < size_; ++i) sum += 2 * std::log(lower_[i * size_ + i]);
  return sum;
}

}  // namespace stats
