#include <benchmark/benchmark.h>

#include <numeric>
#include <string>
#include <vector>

#include "bench/data_rows.h"
#include "stats/association/spearman.h"
#include "stats/evidence/hedged_capital.h"
#include "stats/pooled/study_simulation.h"
#include "stats/resampling/bootstrap_agreement.h"
#include "stats/share/operating_table.h"
#include "stats/worth/bootstrap_worths.h"
#include "stats/worth/worth.h"

// The statistics for which tests/bench/compare has peers in R, NumPy and SciPy. It makes the data, reads the counters that
// begin with v_, and holds them against the peers' answers.
namespace {

template <typename Numbers>
double sum(const Numbers& numbers) {
  return std::accumulate(numbers.begin(), numbers.end(), 0.0);
}

void W1_operating_table(benchmark::State& state) {
  const double shares[] = {0.6, 0.7, 0.8, 0.9};
  stats::OperatingTable table;
  for (auto _ : state) {
    table = stats::operating_table(500, 0.05, 0.5, shares);
    benchmark::DoNotOptimize(table);
  }
  state.counters["v_minimum"] = sum(table.minimum_correct);
  state.counters["v_size"] = sum(table.size);
  for (std::size_t i = 0; i < table.power.size(); ++i)
    state.counters["v_power" + std::to_string(i + 1)] = sum(table.power[i]);
}

/// The ability Beta(11.4, 7.6): mean 0.6, gamma 1/20.
void W2_simulated_studies(benchmark::State& state) {
  const stats::StudyDesign design{.raters = 8, .comparisons = 4, .trials = 16, .chance = 0.5, .level = 0.05};
  stats::SimulatedStudies studies;
  for (auto _ : state) {
    studies = stats::simulate_studies(design, {0.6, 0.05}, 100'000, 1, 2);
    benchmark::DoNotOptimize(studies);
  }
  state.counters["v_any"] = studies.share_with_any();
  state.counters["v_all"] = studies.share_with_all();
  state.counters["v_share"] = studies.share_supported();
}

void W3_permuted_ranks(benchmark::State& state) {
  std::vector<double> x, y;
  for (const auto& row : rows_of("pairs.csv")) {
    x.push_back(row[0]);
    y.push_back(row[1]);
  }
  std::optional<stats::RankCorrelation> found;
  for (auto _ : state) {
    found = stats::spearman(x, y, stats::Alternative::two_sided, {.seed = 1, .draws = 1'000'000}, 2);
    benchmark::DoNotOptimize(found);
  }
  state.counters["v_rho"] = found->rho;
  state.counters["v_p"] = found->test.p;
}

void W4_refitted_worths(benchmark::State& state) {
  std::vector<stats::PairCount> counts;
  for (const auto& row : rows_of("preferences.csv"))
    counts.push_back(
        {int(row[0]), int(row[1]), std::int64_t(row[2]), std::int64_t(row[3]), std::int64_t(row[4])});
  std::optional<stats::BootstrapWorths> found;
  for (auto _ : state) {
    found = stats::bootstrap_worths(32, counts, 0, false, 0.95, {.seed = 1, .draws = 2'000}, 2);
    benchmark::DoNotOptimize(found);
  }
  const auto fit = stats::fit_worths(32, counts);
  state.counters["v_worth"] = sum(fit->worth);
  state.counters["v_tie_weight"] = *fit->tie_weight;
  state.counters["v_error"] = sum(found->standard_error) / 31;
  state.counters["v_lower"] = found->interval[31].lower;
  state.counters["v_upper"] = found->interval[31].upper;
}

stats::CountTable counts_of(const std::vector<std::vector<double>>& ratings) {
  stats::CountTable counts;
  for (const auto& unit : ratings) {
    counts.emplace_back(5);
    for (const double rating : unit) ++counts.back()[static_cast<std::size_t>(rating)];
  }
  return counts;
}

void W5_bootstrap_agreement(benchmark::State& state) {
  const stats::CountTable counts = counts_of(rows_of("ratings.csv"));
  stats::BootstrapAgreement found;
  for (auto _ : state) {
    found = stats::bootstrap_agreement(counts, 0.95, {.seed = 1, .draws = 10'000}, 2, {.gwet_ac1 = false});
    benchmark::DoNotOptimize(found);
  }
  for (const auto& [name, one] :
       {std::pair("v_alpha", found.alpha), std::pair("v_kappa", found.fleiss_kappa)}) {
    state.counters[name] = one->estimate;
    state.counters[std::string(name) + "_lower"] = one->interval.lower;
    state.counters[std::string(name) + "_upper"] = one->interval.upper;
  }
}

void W8_betting_sequence(benchmark::State& state) {
  std::vector<double> observations;
  for (const auto& row : rows_of("observations.csv")) observations.push_back(row.front());
  const std::vector<double> candidates = stats::candidate_midpoints(1'000);
  std::vector<stats::Survivors> survivors;
  for (auto _ : state) {
    survivors = stats::hedged_survivors(observations, candidates, 0.05);
    benchmark::DoNotOptimize(survivors);
  }
  double width = 0;
  for (const stats::Survivors& step : survivors) width += step.last - step.first;
  state.counters["v_width"] = width;
  for (const std::size_t t : {100, 1'000, 10'000}) {
    state.counters["v_lower" + std::to_string(t)] = survivors[t - 1].first;
    state.counters["v_upper" + std::to_string(t)] = survivors[t - 1].last;
  }
}

BENCHMARK(W1_operating_table)->Unit(benchmark::kMicrosecond)->UseRealTime();
BENCHMARK(W2_simulated_studies)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(W3_permuted_ranks)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(W4_refitted_worths)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(W5_bootstrap_agreement)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(W8_betting_sequence)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
