#include "electrical/load.h"

#include <algorithm>
#include <numbers>

#include "electrical/argument.h"

namespace electrical {
namespace {

using Complex = std::complex<double>;

double angular(double frequency_hz) { return 2 * std::numbers::pi * frequency_hz; }

/// 1/y without the many precautions of a complex division, where they are not needed.
Complex reciprocal(Complex y) {
  const double squared = std::norm(y);
  return squared > 1e-290 && squared < 1e290 ? std::conj(y) / squared : 1.0 / y;
}

void check(const Resistor& resistor) {
  require_positive("resistance_ohm", resistor.resistance_ohm);
  require_not_negative("parallel_capacitance_farad", resistor.parallel_capacitance_farad);
}

void check(const ImpedanceTable&) {}

void check(const EquivalentCircuit& circuit) {
  require_positive("resistance_ohm", circuit.resistance_ohm);
  require_not_negative("inductance_henry", circuit.inductance_henry);
  for (const Resonance& resonance : circuit.resonances) {
    require_positive("resonance resistance_ohm", resonance.resistance_ohm);
    require_not_negative("resonance capacitance_farad", resonance.capacitance_farad);
    require_positive("resonance inductance_henry", resonance.inductance_henry);
  }
}

Complex impedance_of(const Resistor& resistor, double frequency_hz) {
  const double turns = angular(frequency_hz) * resistor.resistance_ohm * resistor.parallel_capacitance_farad;
  return resistor.resistance_ohm / Complex(1, turns);
}

Complex impedance_of(const ImpedanceTable& table, double frequency_hz) { return table.at(frequency_hz); }

Complex impedance_of(const Resonance& resonance, double frequency_hz) {
  if (frequency_hz == 0) return 0;  // the inductance shorts it
  const double omega = angular(frequency_hz);
  const double susceptance = omega * resonance.capacitance_farad - 1 / (omega * resonance.inductance_henry);
  return reciprocal({1 / resonance.resistance_ohm, susceptance});
}

Complex impedance_of(const EquivalentCircuit& circuit, double frequency_hz) {
  Complex sum(circuit.resistance_ohm, angular(frequency_hz) * circuit.inductance_henry);
  for (const Resonance& resonance : circuit.resonances) sum += impedance_of(resonance, frequency_hz);
  return sum;
}

std::span<const double> own_points(const Load& load) {
  const auto* table = std::get_if<ImpedanceTable>(&load);
  return table ? table->frequency_hz() : std::span<const double>{};
}

}  // namespace

Complex impedance_ohm(const Load& load, double frequency_hz) {
  require_not_negative("frequency_hz", frequency_hz);
  return std::visit(
      [&](const auto& kind) {
        check(kind);
        return impedance_of(kind, frequency_hz);
      },
      load);
}

std::vector<Complex> impedances_ohm(const Load& load, std::span<const double> frequency_hz) {
  for (const double f : frequency_hz) require_not_negative("frequency_hz", f);
  std::vector<Complex> impedances(frequency_hz.size());
  const auto fill = [&](const auto& kind) {
    check(kind);
    std::ranges::transform(frequency_hz, impedances.begin(), [&](double f) { return impedance_of(kind, f); });
  };
  std::visit(fill, load);
  return impedances;
}

Band known_band(const Load& load) {
  const auto* table = std::get_if<ImpedanceTable>(&load);
  return table ? table->band() : kEveryFrequency;
}

Extreme minimum_impedance(const Load& load, const Band& band) {
  return minimum_over([&](double f) { return std::abs(impedance_ohm(load, f)); }, band, own_points(load));
}

Extreme maximum_impedance(const Load& load, const Band& band) {
  return maximum_over([&](double f) { return std::abs(impedance_ohm(load, f)); }, band, own_points(load));
}

double lowest_permitted_impedance_ohm(double rated_impedance_ohm) {
  require_positive("rated_impedance_ohm", rated_impedance_ohm);
  return 0.8 * rated_impedance_ohm;
}

}  // namespace electrical
