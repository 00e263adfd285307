#include <benchmark/benchmark.h>

#include "electrical/frequency_grid.h"
#include "electrical/response.h"
#include "stats/association/spearman.h"
#include "stats/random.h"

// The calculations for which a peer's time is known: the median of the fastest of R, NumPy/SciPy and ngspice on two
// shared 3.5 GHz processors stands beside each.
namespace {

/// Spearman with ties, n = 32, 1,000,000 permutations. Peer 251 ms; budget 8 times faster with two threads.
void spearman_permutations(benchmark::State& state) {
  stats::Random random(1);
  std::vector<double> x, y;
  for (int i = 0; i < 32; ++i) {
    x.push_back(random.below(12));
    y.push_back(random.below(12));
  }
  for (auto _ : state)
    benchmark::DoNotOptimize(
        stats::spearman(x, y, stats::Alternative::greater, {.seed = 1, .draws = 1'000'000}));
}

/// 32 cables on 10 loads at 2,000 frequencies. Peer 24 ms; budget 10 times faster.
void responses_of_a_shelf(benchmark::State& state) {
  const std::vector<double> frequency_hz = electrical::log_spaced({10, 100'000}, 2'000);
  std::vector<std::vector<std::complex<double>>> loads;
  for (int i = 0; i < 10; ++i)
    loads.push_back(electrical::impedances_ohm(
        electrical::EquivalentCircuit{3.0 + i, 0.1e-3, {{27, 475e-6, 21.3e-3}, {11, 9.6e-6, 0.81e-3}}},
        frequency_hz));
  for (auto _ : state)
    for (int i = 0; i < 32; ++i) {
      const electrical::Cable cable{0.01 + 0.005 * i, 0.6e-6, 60e-12, 0, 3, 0};
      const auto two_ports = electrical::two_ports(cable, frequency_hz);
      for (const auto& load_ohm : loads)
        benchmark::DoNotOptimize(electrical::responses({0.1}, frequency_hz, two_ports, load_ohm));
    }
}

BENCHMARK(spearman_permutations)->Unit(benchmark::kMillisecond);
BENCHMARK(responses_of_a_shelf)->Unit(benchmark::kMillisecond);

}  // namespace
