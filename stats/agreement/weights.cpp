#include "stats/agreement/weights.h"

#include <cmath>

#include "stats/arguments.h"

namespace stats {
namespace {

template <typename Agreement>
AgreementWeights weights_by_distance(int categories, Agreement agreement) {
  require_count("categories", categories, 2, 1'000);
  const auto size = static_cast<std::size_t>(categories);
  AgreementWeights weights(size, std::vector<double>(size));
  for (int i = 0; i < categories; ++i)
    for (int j = 0; j < categories; ++j)
      weights[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)] = agreement(std::abs(i - j));
  return weights;
}

}  // namespace

AgreementWeights identity_weights(int categories) {
  return weights_by_distance(categories, [](int steps) { return steps == 0 ? 1.0 : 0.0; });
}

AgreementWeights linear_weights(int categories) {
  return weights_by_distance(categories, [=](int steps) { return 1 - steps / (categories - 1.0); });
}

AgreementWeights quadratic_weights(int categories) {
  return weights_by_distance(categories,
                             [=](int steps) { return 1 - std::pow(steps / (categories - 1.0), 2); });
}

void require_weights(const AgreementWeights& weights, std::size_t categories) {
  const auto size = static_cast<std::int64_t>(categories);
  require_count("rows of weights", std::ssize(weights), size, size);
  for (const auto& row : weights) {
    require_count("entries of a row of weights", std::ssize(row), size, size);
    for (const double weight : row) require_closed_probability("weight", weight);
  }
  for (std::size_t i = 0; i < categories; ++i) {
    require_between("weight of a category with itself", weights[i][i], 1, 1);
    for (std::size_t j = 0; j < i; ++j)
      require_between("weight below the diagonal", weights[i][j], weights[j][i], weights[j][i]);
  }
}

}  // namespace stats
