#include "electrical/many/levels.h"

#include <algorithm>
#include <atomic>
#include <future>
#include <numbers>

#include "electrical/argument.h"
#include "electrical/many/kernel.h"
#include "electrical/two_port.h"

namespace electrical {
namespace {

using Frequencies = std::span<const double>;

std::vector<Frequencies> blocks_of(Frequencies frequency_hz) {
  std::vector<Frequencies> blocks;
  for (std::size_t first = 0; first < frequency_hz.size(); first += kBlock)
    blocks.push_back(frequency_hz.subspan(first, std::min(kBlock, frequency_hz.size() - first)));
  return blocks;
}

/// A shorter last block keeps zeros behind its end: level 0 dB.
std::vector<BlockOfEnds> ends_of(const Rig& rig, Frequencies frequency_hz) {
  const std::complex<double> source_at_1_hz = impedance_ohm(rig.source, 1);
  const auto load_ohm = impedances_ohm(rig.load, frequency_hz);
  std::vector<BlockOfEnds> ends((frequency_hz.size() + kBlock - 1) / kBlock);
  for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
    BlockOfEnds& block = ends[i / kBlock];
    block.source_ohm.put(i % kBlock, {source_at_1_hz.real(), frequency_hz[i] * source_at_1_hz.imag()});
    block.load_siemens.put(i % kBlock, 1.0 / load_ohm[i]);
  }
  return ends;
}

void fill_long_chains(const Cable& cable, Frequencies frequency_hz, BlockOfChains& chains) {
  for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
    const TwoPort port = two_port(cable, frequency_hz[i]);
    chains.a.put(i, 1.0 + port.a_minus_1);
    chains.b_ohm.put(i, port.b_ohm);
    chains.c_siemens.put(i, port.c_siemens);
    chains.d.put(i, 1.0 + port.d_minus_1);
  }
}

void fill_chains(const Cable& cable, Frequencies frequency_hz, BlockOfChains& chains) {
  const CableTotals total = totals(cable);
  const bool skin = cable.round_conductors.count > 0;
  BlockOfComplex series{}, shunt{};
  for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
    const double omega = 2 * std::numbers::pi * frequency_hz[i];
    series.put(i, {total.loop_resistance_ohm, omega * total.inductance_henry});
    shunt.put(i, {total.conductance_siemens, omega * total.capacitance_farad});
    if (skin) series.put(i, series_ohm(cable, frequency_hz[i]));
  }
  if (!fill_chains(series, shunt, cable.load_end_resistance_ohm, chains))
    fill_long_chains(cable, frequency_hz, chains);
}

void fill_levels(const Rig& rig, const Cable& cable, Frequencies frequency_hz, const BlockOfChains& chains,
                 const BlockOfEnds& ends, double* levels_db) {
  BlockOfReals block_db;
  if (fill_levels_db(chains, ends, block_db)) {
    std::copy_n(block_db.begin(), frequency_hz.size(), levels_db);
  } else {
    std::ranges::transform(frequency_hz, levels_db,
                           [&](double f) { return level_db(response(rig.source, cable, rig.load, f)); });
  }
}

/// Calls `work(i)` for each i below `count`, each thread taking the next when it is ready for one. What it throws is thrown
/// here.
template <typename Work>
void for_each_shared(std::size_t count, int threads, const Work& work) {
  std::atomic<std::size_t> next = 0;
  const auto take = [&] {
    for (std::size_t i = next++; i < count; i = next++) work(i);
  };
  std::vector<std::future<void>> others;
  for (int thread = 1; thread < threads; ++thread) others.push_back(std::async(std::launch::async, take));
  take();
  for (auto& other : others) other.get();
}

}  // namespace

Levels levels_db(std::span<const Rig> rigs, std::span<const Cable> cables, Frequencies frequency_hz,
                 int threads) {
  require_within("threads", threads, 1, 256);
  for (const double f : frequency_hz) require_not_negative("frequency_hz", f);
  for (const Cable& cable : cables) check(cable);
  std::vector<std::vector<BlockOfEnds>> ends(rigs.size());
  for_each_shared(rigs.size(), threads, [&](std::size_t r) { ends[r] = ends_of(rigs[r], frequency_hz); });
  const std::vector<Frequencies> blocks = blocks_of(frequency_hz);
  Levels levels{cables.size(), frequency_hz.size(), {}};
  levels.all_db.resize(rigs.size() * cables.size() * frequency_hz.size());
  for_each_shared(cables.size(), threads, [&](std::size_t c) {
    BlockOfChains chains{};
    for (std::size_t b = 0; b < blocks.size(); ++b) {
      fill_chains(cables[c], blocks[b], chains);
      for (std::size_t r = 0; r < rigs.size(); ++r) {
        double* row_db = &levels.all_db[(r * cables.size() + c) * frequency_hz.size()];
        fill_levels(rigs[r], cables[c], blocks[b], chains, ends[r][b], row_db + b * kBlock);
      }
    }
  });
  return levels;
}

}  // namespace electrical
