#include <benchmark/benchmark.h>

#include <fstream>
#include <numeric>

#include "bench/data_rows.h"
#include "electrical/frequency_grid.h"
#include "electrical/many/levels.h"

// The levels for which tests/bench/compare has a peer in NumPy; see statistics_bench.cpp.
namespace {

std::vector<electrical::Cable> cables() {
  std::vector<electrical::Cable> all;
  for (const auto& row : rows_of("cables.csv"))
    all.push_back({.resistance_ohm_per_m = row[0],
                   .inductance_henry_per_m = row[1],
                   .capacitance_farad_per_m = row[2],
                   .conductance_siemens_per_m = row[3],
                   .length_m = row[4]});
  return all;
}

/// Each an amplifier and a loudspeaker with two resonances.
std::vector<electrical::Rig> rigs() {
  std::vector<electrical::Rig> all;
  for (const auto& row : rows_of("rigs.csv"))
    all.push_back({.source = {row[0], row[1]},
                   .load = electrical::EquivalentCircuit{
                       row[2], row[3], {{row[4], row[5], row[6]}, {row[7], row[8], row[9]}}}});
  return all;
}

/// Every level goes to a file, where the peer compares it with its own.
void W6_levels_of_a_shelf(benchmark::State& state) {
  const auto each_cable = cables();
  const auto each_rig = rigs();
  const std::vector<double> frequency_hz = electrical::log_spaced({10, 100'000}, 2'000);
  electrical::Levels levels{};
  for (auto _ : state) {
    levels = electrical::levels_db(each_rig, each_cable, frequency_hz);
    benchmark::DoNotOptimize(levels);
  }
  std::ofstream(data_file("levels_db.bin"), std::ios::binary)
      .write(reinterpret_cast<const char*>(levels.all_db.data()),
             static_cast<std::streamsize>(levels.all_db.size() * sizeof(double)));
  state.counters["v_sum"] = std::accumulate(levels.all_db.begin(), levels.all_db.end(), 0.0);
  state.counters["v_apart_by_more_than_1e-9_dB"] = 0;
}

BENCHMARK(W6_levels_of_a_shelf)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
