#include <gtest/gtest.h>

#include <boost/random/mersenne_twister.hpp>
#include <cmath>
#include <fstream>
#include <iomanip>

#include "electrical/golden_cases.h"
#include "electrical/ngspice_run.h"
#include "electrical/response.h"
#include "tier.h"

// recomputed: ngspice's lossy line (LTRA, which has no conductance) on the netlists in data/netlists.
TEST(Ngspice, AgreesOnLevelAndPhaseOfEveryNetlist) {
  if (!has_ngspice()) GTEST_SKIP() << "ngspice is not on the PATH: netlists not run";
  for (const char* name : {"A1", "B1", "C1", "C3", "D2h", "D3h"}) {
    const NgspiceRun run(SOURCE_FOLDER "/tests/electrical/data/netlists/n_" + std::string(name) +
                         "_ltra.cir");
    const auto frequency_hz = run.frequency_hz();
    const auto real = run.printed("real(v(b))");
    const auto imaginary = run.printed("imag(v(b))");
    ASSERT_GE(frequency_hz.size(), 11u) << name;
    ASSERT_EQ(real.size(), frequency_hz.size()) << name;
    ASSERT_EQ(imaginary.size(), frequency_hz.size()) << name;
    const auto& [source, cable, load] = golden_cases().at(name);
    for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
      const auto ours = electrical::response(source, cable, load, frequency_hz[i]);
      const std::complex<double> theirs(real[i], imaginary[i]);
      // ngspice prints 12 digits of each part: 1e-11 dB, 1e-10 degrees.
      EXPECT_NEAR(electrical::level_db(ours), electrical::level_db(theirs), 1e-10) << name << frequency_hz[i];
      EXPECT_NEAR(electrical::phase_deg(ours), electrical::phase_deg(theirs), 1e-9)
          << name << frequency_hz[i];
    }
  }
}

namespace {

constexpr double kFrequencies[] = {20, 200, 1000, 5000, 20000, 100000, 500000};

/// The circuit in ngspice's language.
void write_netlist(const std::string& path, const GoldenCase& circuit) {
  const auto& [source, cable, load] = circuit;
  std::ofstream netlist(path);
  netlist << std::setprecision(17) << "* drawn\nV1 s 0 DC 0 AC 1\nRs s m " << source.resistance_ohm
          << "\nLs m a " << source.inductance_henry
          << "\nO1 a 0 e 0 ln1\n.model ln1 ltra(R=" << cable.resistance_ohm_per_m
          << " L=" << cable.inductance_henry_per_m << " G=0 C=" << cable.capacitance_farad_per_m
          << " LEN=" << cable.length_m << " compactrel=1e-4)\nRe e b " << cable.load_end_resistance_ohm
          << "\n";
  if (const auto* resistor = std::get_if<electrical::Resistor>(&load)) {
    netlist << "RL b 0 " << resistor->resistance_ohm << "\nCL b 0 " << resistor->parallel_capacitance_farad
            << "\n";
  } else {
    const auto& speaker = std::get<electrical::EquivalentCircuit>(load);
    const auto& resonance = speaker.resonances.front();
    netlist << "RC b n " << speaker.resistance_ohm << "\nLC n p " << speaker.inductance_henry << "\nRr p 0 "
            << resonance.resistance_ohm << "\nCr p 0 " << resonance.capacitance_farad << "\nLr p 0 "
            << resonance.inductance_henry << "\n";
  }
  netlist << ".options noacct reltol=1e-9 numdgt=12\n.control\nset numdgt=12\n";
  for (const double f : kFrequencies)
    netlist << "ac lin 1 " << f << " " << f << "\nprint real(v(b)) imag(v(b))\n";
  netlist << "quit\n.endc\n.end\n";
}

GoldenCase drawn_circuit(boost::random::mt19937_64& engine) {
  const auto draw = [&](double low, double high) {
    return low * std::pow(high / low, static_cast<double>(engine() >> 11) * 0x1p-53);
  };
  GoldenCase circuit{{draw(1e-3, 1e3), draw(1e-8, 1e-5)},
                     line(draw(1e-3, 1), draw(5e-8, 2e-6), draw(1e-11, 4e-9), draw(0.3, 30)),
                     electrical::Resistor{draw(2, 1e5), draw(1e-11, 1e-7)}};
  circuit.cable.load_end_resistance_ohm = draw(1e-3, 1);
  if (engine() >> 63)
    circuit.load = electrical::EquivalentCircuit{
        draw(2, 8), draw(5e-5, 2e-3), {{draw(5, 80), draw(1e-5, 1e-3), draw(1e-3, 0.1)}}};
  return circuit;
}

}  // namespace

// recomputed: the same, on circuits drawn by a fixed seed.
TEST(Ngspice, AgreesOnDrawnCircuits) {
  if (!has_ngspice()) GTEST_SKIP() << "ngspice is not on the PATH: netlists not run";
  boost::random::mt19937_64 engine(20241117);
  const std::string path = testing::TempDir() + "drawn.cir";
  double farthest_db = 0;
  const int circuits = tier() == "long" ? 200 : 10;
  for (int i = 0; i < circuits; ++i) {
    const GoldenCase circuit = drawn_circuit(engine);
    write_netlist(path, circuit);
    const NgspiceRun run(path);
    const auto real = run.printed("real(v(b))"), imaginary = run.printed("imag(v(b))");
    ASSERT_EQ(real.size(), std::size(kFrequencies)) << i;
    ASSERT_EQ(imaginary.size(), std::size(kFrequencies)) << i;
    for (std::size_t k = 0; k < real.size(); ++k) {
      const auto ours = electrical::response(circuit.source, circuit.cable, circuit.load, kFrequencies[k]);
      const std::complex<double> theirs(real[k], imaginary[k]);
      // 1e-9 dB. ngspice solves the equations of the whole network in double precision and loses up to 2e-11 where
      // their sizes differ much; ours is held to 100-digit arithmetic in exactness_test.cpp.
      EXPECT_LT(std::abs(ours - theirs), 1e-10 * std::abs(ours))
          << "circuit " << i << " at " << kFrequencies[k];
      farthest_db =
          std::max(farthest_db, std::abs(electrical::level_db(ours) - electrical::level_db(theirs)));
    }
  }
  RecordProperty("farthest_db", std::to_string(farthest_db * 1e9) + "e-9");
}
