#include "stats/pooled/study_simulation.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

#include "stats/arguments.h"
#include "stats/blocks.h"
#include "stats/pooled/beta_binomial.h"
#include "stats/pooled/count_sampler.h"
#include "stats/random.h"
#include "stats/share/binomial.h"

namespace stats {
namespace {

constexpr std::int64_t kBlockOfStudies = 500;

/// Everything that is worked out before drawing.
struct StudyTables {
  std::size_t raters;
  std::size_t comparisons;
  /// [comparison][number right of the rater in those before]
  std::vector<std::vector<CountSampler>> right;
  /// [comparisons supported so far]: the number right that the next one needs; one more than all where none
  /// is enough
  std::vector<std::int64_t> needed;
};

/// Ability after so many right of so many trials.
RaterAbility ability_after(const RaterAbility& before, int right, int trials) {
  if (trials == 0) return before;
  const double sum = 1 - before.gamma + trials * before.gamma;
  const double mean = (before.mean * (1 - before.gamma) + right * before.gamma) / sum;
  return {std::clamp(mean, 0.0, 1.0), before.gamma / (sum + before.gamma)};
}

StudyTables study_tables(const StudyDesign& design, const RaterAbility& ability) {
  StudyTables tables{
      static_cast<std::size_t>(design.raters), static_cast<std::size_t>(design.comparisons), {}, {}};
  const int answers = design.raters * design.trials;
  for (int comparison = 0; comparison < design.comparisons; ++comparison) {
    const int before = comparison * design.trials;
    auto& samplers = tables.right.emplace_back();
    for (int right = 0; right <= before; ++right) {
      const auto [mean, gamma] = ability_after(ability, right, before);
      samplers.emplace_back(beta_binomial(design.trials, mean, gamma));
    }
    const double level = design.level / (design.comparisons - comparison);
    tables.needed.push_back(minimum_correct(answers, level, design.chance).value_or(answers + 1));
  }
  return tables;
}

/// Holm's method on counts: one more comparison is supported while more of them reach what the next one needs
/// than are supported already.
std::size_t supported_by_holm(const std::vector<std::int64_t>& right,
                              const std::vector<std::int64_t>& needed) {
  std::size_t count = 0;
  while (count < needed.size()) {
    const auto enough = [&](std::int64_t total) { return total >= needed[count]; };
    if (std::count_if(right.begin(), right.end(), enough) <= static_cast<std::ptrdiff_t>(count)) break;
    ++count;
  }
  return count;
}

void simulate_block(const StudyTables& tables, std::int64_t studies, std::uint64_t seed,
                    std::vector<std::int64_t>& by_supported) {
  Random random(seed);
  std::vector<std::int64_t> right(tables.comparisons);
  for (std::int64_t study = 0; study < studies; ++study) {
    std::fill(right.begin(), right.end(), 0);
    for (std::size_t rater = 0; rater < tables.raters; ++rater) {
      std::size_t so_far = 0;
      for (std::size_t comparison = 0; comparison < tables.comparisons; ++comparison) {
        const std::uint32_t count = tables.right[comparison][so_far].of(random.word());
        right[comparison] += count;
        so_far += count;
      }
    }
    ++by_supported[supported_by_holm(right, tables.needed)];
  }
}

void require_study(const StudyDesign& design, const RaterAbility& ability) {
  require_count("raters", design.raters, 1, 1'000);
  require_count("comparisons", design.comparisons, 1, 100);
  require_count("trials", design.trials, 1, 1'000);
  require_count("trials times comparisons", design.trials * design.comparisons, 1, 1'000);
  require_open_probability("chance", design.chance);
  require_level("level", design.level);
  require_closed_probability("mean", ability.mean);
  require_closed_probability("gamma", ability.gamma);
}

}  // namespace

double SimulatedStudies::share_with_any() const {
  return 1 - double(by_supported.front()) /
                 double(std::accumulate(by_supported.begin(), by_supported.end(), std::int64_t{0}));
}

double SimulatedStudies::share_with_all() const {
  return double(by_supported.back()) /
         double(std::accumulate(by_supported.begin(), by_supported.end(), std::int64_t{0}));
}

double SimulatedStudies::share_supported() const {
  std::int64_t studies = 0, all = 0;
  for (std::size_t count = 0; count < by_supported.size(); ++count) {
    studies += by_supported[count];
    all += static_cast<std::int64_t>(count) * by_supported[count];
  }
  return double(all) / double(studies) / double(by_supported.size() - 1);
}

SimulatedStudies simulate_studies(const StudyDesign& design, const RaterAbility& ability,
                                  std::int64_t studies, std::uint64_t seed, int threads) {
  require_study(design, ability);
  require_count("studies", studies, 1, 1'000'000'000);
  require_count("threads", threads, 1, 256);
  const StudyTables tables = study_tables(design, ability);
  const std::int64_t blocks = (studies + kBlockOfStudies - 1) / kBlockOfStudies;
  std::vector<std::vector<std::int64_t>> found(static_cast<std::size_t>(threads),
                                               std::vector<std::int64_t>(tables.comparisons + 1));
  for_each_block(blocks, threads, [&](std::int64_t block, int thread) {
    simulate_block(tables, std::min(kBlockOfStudies, studies - block * kBlockOfStudies),
                   seed + static_cast<std::uint64_t>(block), found[static_cast<std::size_t>(thread)]);
  });
  SimulatedStudies result{std::vector<std::int64_t>(tables.comparisons + 1)};
  for (const auto& counts : found)
    for (std::size_t i = 0; i < counts.size(); ++i) result.by_supported[i] += counts[i];
  return result;
}

}  // namespace stats
