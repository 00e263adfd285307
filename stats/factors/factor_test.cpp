#include "stats/factors/factor_test.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>
#include <string>

#include "stats/arguments.h"
#include "stats/cholesky.h"
#include "stats/factors/block_permutation.h"

namespace stats {
namespace {

/// Numbers from 0 for each different one.
template <typename Key>
std::vector<int> renumbered(const std::vector<Key>& keys) {
  std::map<Key, int> numbers;
  for (const Key& key : keys) numbers.try_emplace(key, 0);
  int next = 0;
  for (auto& [key, number] : numbers) number = next++;
  std::vector<int> list;
  for (const Key& key : keys) list.push_back(numbers.at(key));
  return list;
}

void check(const FactorLayout& layout) {
  const auto items = std::ssize(layout.values);
  require_count("number of values", items, 2, 10'000);
  require_finite("values", layout.values);
  require_count("number of levels", std::ssize(layout.levels), items, items);
  for (const int level : layout.levels) require_count("level", level, 0, 99);
  if (!layout.blocks.empty()) require_count("number of blocks", std::ssize(layout.blocks), items, items);
}

/// Values less the mean of their block, which leaves every statistic here as it is but for rounding.
struct Centred {
  std::vector<double> values;
  std::vector<int> blocks;      ///< from 0
  std::vector<double> squares;  ///< of each block, of its values
  std::vector<int> sizes;       ///< of each block
  double largest = 0;           ///< size of a value as given
};

Centred centred(const FactorLayout& layout) {
  Centred all;
  all.blocks = renumbered(std::vector<int>(layout.blocks.begin(), layout.blocks.end()));
  if (all.blocks.empty()) all.blocks.assign(layout.values.size(), 0);
  const auto blocks = static_cast<std::size_t>(*std::max_element(all.blocks.begin(), all.blocks.end()) + 1);
  std::vector<double> means(blocks);
  all.squares.resize(blocks);
  all.sizes.resize(blocks);
  for (std::size_t i = 0; i < layout.values.size(); ++i) ++all.sizes[std::size_t(all.blocks[i])];
  for (std::size_t i = 0; i < layout.values.size(); ++i) {
    const auto block = std::size_t(all.blocks[i]);
    means[block] += layout.values[i] / all.sizes[block];
    all.largest = std::max(all.largest, std::abs(layout.values[i]));
  }
  for (std::size_t i = 0; i < layout.values.size(); ++i) {
    const auto block = std::size_t(all.blocks[i]);
    double value = layout.values[i] - means[block];
    if (std::abs(value) <= 1e-12 * all.largest) value = 0;
    all.values.push_back(value);
    all.squares[block] += value * value;
  }
  return all;
}

/// Sums of the values of each level, less what the null expects (0), and their covariance under it.
class LevelSums {
 public:
  LevelSums(const Centred& centred, std::span<const int> levels)
      : centred_(centred),
        levels_(static_cast<std::size_t>(*std::max_element(levels.begin(), levels.end()) + 1)) {
    std::vector<double> covariance(levels_ * levels_);
    for (std::size_t block = 0; block < centred.sizes.size(); ++block) {
      std::vector<double> counts(levels_);
      for (std::size_t i = 0; i < levels.size(); ++i)
        if (centred.blocks[i] == int(block)) ++counts[std::size_t(levels[i])];
      const double n = centred.sizes[block];
      if (n < 2) continue;
      const double scale = centred.squares[block] / (n * (n - 1));
      for (std::size_t g = 0; g < levels_; ++g)
        for (std::size_t h = 0; h < levels_; ++h)
          covariance[g * levels_ + h] += scale * ((g == h ? n * counts[g] : 0) - counts[g] * counts[h]);
    }
    choose(covariance);
  }

  std::size_t rank() const { return chosen_.size(); }

  double statistic(std::span<const int> levels) const {
    std::vector<double> sums(levels_);
    for (std::size_t i = 0; i < levels.size(); ++i) sums[std::size_t(levels[i])] += centred_.values[i];
    double square = 0;
    for (std::size_t a = 0; a < chosen_.size(); ++a)
      for (std::size_t b = 0; b < chosen_.size(); ++b)
        square += inverse_[a * chosen_.size() + b] * sums[chosen_[a]] * sums[chosen_[b]];
    return square;
  }

 private:
  /// Levels whose sums do not follow from those before, and the inverse of their covariance: the distance is the same for any
  /// such choice.
  void choose(const std::vector<double>& covariance) {
    double log_determinant = 0;
    for (std::size_t level = 0; level < levels_; ++level) {
      auto tried = chosen_;
      tried.push_back(level);
      std::vector<double> part;
      for (const std::size_t a : tried)
        for (const std::size_t b : tried) part.push_back(covariance[a * levels_ + b]);
      const auto cholesky = Cholesky::of(std::move(part), tried.size());
      if (!cholesky || std::exp(cholesky->log_determinant() - log_determinant) <=
                           1e-9 * covariance[level * levels_ + level])
        continue;
      log_determinant = cholesky->log_determinant();
      inverse_ = cholesky->inverse();
      chosen_ = std::move(tried);
    }
  }

  const Centred& centred_;
  std::size_t levels_;
  std::vector<std::size_t> chosen_;
  std::vector<double> inverse_;
};

/// One comparison of level means in each block that has all the levels with weights.
class Contrast {
 public:
  Contrast(const Centred& centred, std::span<const int> levels, std::span<const double> weights)
      : centred_(centred) {
    const std::size_t blocks = centred.sizes.size();
    coefficients_.assign(blocks, std::vector<double>(weights.size()));
    double all = 0;
    for (std::size_t block = 0; block < blocks; ++block) {
      std::vector<double> counts(weights.size());
      for (std::size_t i = 0; i < levels.size(); ++i)
        if (centred.blocks[i] == int(block) && std::size_t(levels[i]) < weights.size())
          ++counts[std::size_t(levels[i])];
      double variance = 0;
      for (std::size_t level = 0; level < weights.size(); ++level)
        if (weights[level] != 0) variance += weights[level] * weights[level] / counts[level];
      if (!std::isfinite(variance)) continue;  // a level is missing
      ++used_;
      all += 1 / variance;
      varies_ = varies_ || centred.squares[block] > 0;
      for (std::size_t level = 0; level < weights.size(); ++level)
        if (weights[level] != 0) coefficients_[block][level] = weights[level] / counts[level] / variance;
    }
    for (auto& of_block : coefficients_)
      for (double& coefficient : of_block) coefficient /= all;
  }

  int used() const { return used_; }
  bool varies() const { return varies_; }

  double estimate(std::span<const int> levels) const {
    double sum = 0;
    for (std::size_t i = 0; i < levels.size(); ++i) {
      const auto& of_block = coefficients_[std::size_t(centred_.blocks[i])];
      if (std::size_t(levels[i]) < of_block.size())
        sum += of_block[std::size_t(levels[i])] * centred_.values[i];
    }
    return sum;
  }

  double largest_coefficient() const {
    double largest = 0;
    for (const auto& of_block : coefficients_)
      for (const double coefficient : of_block) largest = std::max(largest, std::abs(coefficient));
    return largest;
  }

 private:
  const Centred& centred_;
  std::vector<std::vector<double>> coefficients_;  ///< by block and level
  int used_ = 0;
  bool varies_ = false;
};

}  // namespace

std::optional<FactorTest> factor_test(const FactorLayout& layout, const MonteCarlo& monte_carlo) {
  check(layout);
  require_draws(monte_carlo);
  const Centred values = centred(layout);
  const std::vector<int> levels = renumbered(std::vector<int>(layout.levels.begin(), layout.levels.end()));
  const LevelSums sums(values, levels);
  if (sums.rank() == 0) return std::nullopt;
  const double statistic = sums.statistic(levels);
  const auto found = permute_within_blocks(
      levels, values.blocks, [&](std::span<const int> order) { return sums.statistic(order); },
      Alternative::greater, 1e-10 * double(levels.size()), kExactArrangements, monte_carlo);
  return FactorTest{statistic, static_cast<int>(sums.rank()), found.test, found.arrangements,
                    found.smallest_p};
}

std::vector<std::optional<FactorTest>> main_effects(std::span<const double> values,
                                                    const std::vector<std::vector<int>>& factors,
                                                    std::span<const int> blocks,
                                                    const MonteCarlo& monte_carlo) {
  require_count("number of factors", std::ssize(factors), 1, 10);
  for (const auto& factor : factors) check({values, factor, blocks});
  std::vector<std::optional<FactorTest>> tests;
  for (std::size_t tested = 0; tested < factors.size(); ++tested) {
    std::vector<std::vector<int>> others(values.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
      if (!blocks.empty()) others[i].push_back(blocks[i]);
      for (std::size_t factor = 0; factor < factors.size(); ++factor)
        if (factor != tested) others[i].push_back(factors[factor][i]);
    }
    tests.push_back(factor_test({values, factors[tested], renumbered(others)}, monte_carlo));
  }
  return tests;
}

std::optional<ContrastTest> contrast_test(const FactorLayout& layout, std::span<const double> weights,
                                          Alternative alternative, const MonteCarlo& monte_carlo) {
  check(layout);
  require_draws(monte_carlo);
  require_count("number of weights", std::ssize(weights), 2, 100);
  require_finite("weights", weights);
  double sum = 0, size = 0;
  for (const double weight : weights) {
    sum += weight;
    size += std::abs(weight);
  }
  if (size == 0 || std::abs(sum) > 1e-9 * size)
    throw std::domain_error("the weights must add up to 0, and not all be 0");
  const Centred values = centred(layout);
  const std::vector<int> levels(layout.levels.begin(), layout.levels.end());
  const Contrast contrast(values, levels, weights);
  if (contrast.used() == 0 || !contrast.varies()) return std::nullopt;
  const double tolerance = 1e-12 * values.largest * contrast.largest_coefficient() * double(levels.size());
  const auto found = permute_within_blocks(
      levels, values.blocks, [&](std::span<const int> order) { return contrast.estimate(order); },
      alternative, tolerance, kExactArrangements, monte_carlo);
  return ContrastTest{contrast.estimate(levels), contrast.used(), found.test, found.arrangements,
                      found.smallest_p};
}

}  // namespace stats
