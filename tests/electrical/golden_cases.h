#pragma once

#include <map>
#include <string>

#include "electrical/cable.h"
#include "electrical/load.h"
#include "electrical/response.h"

/// The circuits named in data/golden_line_cases.csv, as its `#` lines state them.
struct GoldenCase {
  electrical::Source source;
  electrical::Cable cable;
  electrical::Load load;
};

/// LS1, a synthetic loudspeaker: data/loudspeaker_LS1.csv.
inline electrical::EquivalentCircuit ls1() {
  return {.resistance_ohm = 3.0,
          .inductance_henry = 0.1e-3,
          .resonances = {{27, 475e-6, 21.3e-3}, {11, 9.6e-6, 0.81e-3}}};
}

inline electrical::Cable line(double resistance, double inductance, double capacitance, double length,
                              double conductance = 0) {
  return {.resistance_ohm_per_m = resistance,
          .inductance_henry_per_m = inductance,
          .capacitance_farad_per_m = capacitance,
          .conductance_siemens_per_m = conductance,
          .length_m = length};
}

inline const std::map<std::string, GoldenCase>& golden_cases() {
  using electrical::Resistor;
  static const electrical::Cable d1 = line(0.05, 0.25e-6, 100e-12, 5);
  static const electrical::Cable d2 = line(0.05, 0.6e-6, 60e-12, 5);
  static const electrical::Cable d3 = line(0.05, 0.1e-6, 400e-12, 5);
  static const Resistor matched{50};
  static const Resistor high{1e6, 15e-12};
  static const std::map<std::string, GoldenCase> cases{
      {"A1", {{0.1}, line(0.2, 0.6e-6, 60e-12, 3), ls1()}},
      {"A2", {{0.1}, line(0.01596, 0.55e-6, 80e-12, 3), ls1()}},
      {"A3", {{0.1}, line(0.01596, 0.12e-6, 300e-12, 3), ls1()}},
      {"B1", {{0.05}, line(0.052, 0.7e-6, 50e-12, 10), Resistor{4}}},
      {"C1", {{100}, line(0.1, 0.4e-6, 100e-12, 5), Resistor{47e3, 100e-12}}},
      {"C3", {{1000}, line(0.1, 0.4e-6, 100e-12, 5), Resistor{47e3, 100e-12}}},
      {"C4", {{1000}, line(0.1, 0.4e-6, 300e-12, 5), Resistor{10e3, 100e-12}}},
      {"D1m", {{50}, d1, matched}},
      {"D1h", {{50}, d1, high}},
      {"D2m", {{50}, d2, matched}},
      {"D2h", {{50}, d2, high}},
      {"D3m", {{50}, d3, matched}},
      {"D3h", {{50}, d3, high}},
      {"E1", {{0.1}, line(0.2, 0.6e-6, 60e-12, 3, 1e-6), Resistor{8}}},
  };
  return cases;
}
