#pragma once

#include <complex>
#include <span>
#include <variant>
#include <vector>

#include "electrical/extreme.h"
#include "electrical/frequency_grid.h"

namespace electrical {

/// A resistor (above 0), with an optional capacitance across it: a dummy load "8 ohm", or a line input
/// "47 kohm || 100 pF".
struct Resistor {
  double resistance_ohm;
  double parallel_capacitance_farad = 0;
};

/// A measured impedance.
///
/// Between its frequencies ln |Z| and the phase are linear in ln f: exact for a resistor, an inductor or
/// a capacitor. Outside its frequencies it is refused, never extrapolated: clip to `band()` first.
/// On the synthetic loudspeaker of tests/electrical (64 points over three decades, the two resonances
/// included) the level behind 0.7 ohm is within 0.017 dB of the circuit's own.
class ImpedanceTable {
 public:
  /// @param frequency_hz   at least 2, above 0, rising.
  /// @param impedance_ohm  as many; magnitude above 0, real part 0 or more (a passive load).
  /// @throws std::domain_error  naming the argument, its value, its place and its range.
  ImpedanceTable(std::vector<double> frequency_hz, std::vector<std::complex<double>> impedance_ohm);

  /// @throws std::domain_error  naming the table's range when `frequency_hz` is outside it.
  std::complex<double> at(double frequency_hz) const;

  Band band() const { return {frequency_hz_.front(), frequency_hz_.back()}; }
  std::span<const double> frequency_hz() const { return frequency_hz_; }

 private:
  std::vector<double> frequency_hz_;
  std::vector<std::complex<double>> log_impedance_;
};

/// R, C and L in parallel: resistance and inductance above 0, capacitance 0 or more.
struct Resonance {
  double resistance_ohm;
  double capacitance_farad;
  double inductance_henry;
};

/// A loudspeaker driver as circuit: voice coil R (above 0) and L (0 or more) in series with any number of
/// parallel resonances.
/// Source: R. H. Small, "Direct-Radiator Loudspeaker System Analysis", JAES 20(5), 1972 (from memory).
struct EquivalentCircuit {
  double resistance_ohm;
  double inductance_henry = 0;
  std::vector<Resonance> resonances = {};
};

using Load = std::variant<Resistor, ImpedanceTable, EquivalentCircuit>;

/// The load's impedance at one frequency (0 or more).
/// @throws std::domain_error  naming the argument, its value and its range.
std::complex<double> impedance_ohm(const Load& load, double frequency_hz);

/// The load at each frequency: computed once, it serves every cable (`responses`).
std::vector<std::complex<double>> impedances_ohm(const Load& load, std::span<const double> frequency_hz);

/// The frequencies at which the load is known: a table's range, else every frequency.
Band known_band(const Load& load);

/// The least |Z| within the band, with its frequency.
/// @throws std::domain_error  for an impossible band, or one that leaves the table.
Extreme minimum_impedance(const Load& load, const Band& band);

/// The greatest |Z| within the band, with its frequency.
Extreme maximum_impedance(const Load& load, const Band& band);

/// The least |Z| that a loudspeaker of this rated impedance (above 0) may show: 80 % of it.
/// Source: IEC 60268-5, 16.1.
double lowest_permitted_impedance_ohm(double rated_impedance_ohm);

}  // namespace electrical
