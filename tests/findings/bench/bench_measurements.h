#pragma once

#include <cmath>

#include "findings/bench/measurement.h"

/// Readings for the tests of this folder.
namespace bench_sample {

inline findings::Measurement totals(int number, const std::string& cable, double length_m,
                                    double resistance_ohm, double inductance_henry = 0,
                                    double capacitance_farad = 0) {
  findings::Measurement one;
  one.number = number;
  one.kind = "cable-lcr";
  one.cable = cable;
  one.file = "shelf/cables.csv";
  one.columns = {"length_m", "resistance_ohm"};
  one.values = {{length_m}, {resistance_ohm}};
  if (inductance_henry > 0) {
    one.columns.insert(one.columns.end(), {"inductance_henry", "capacitance_farad"});
    one.values.insert(one.values.end(), {{inductance_henry}, {capacitance_farad}});
  }
  return one;
}

inline findings::Measurement response(int number, const std::string& cable, std::vector<double> frequency_hz,
                                      std::vector<double> level_db) {
  findings::Measurement one;
  one.number = number;
  one.kind = "response";
  one.cable = cable;
  one.rig = "hall";
  one.file = "response.csv";
  one.columns = {"frequency_hz", "level_db"};
  one.values = {std::move(frequency_hz), std::move(level_db)};
  return one;
}

inline findings::Measurement impedance(int number, std::vector<double> frequency_hz,
                                       std::vector<double> magnitude_ohm, std::vector<double> phase_deg) {
  findings::Measurement one;
  one.number = number;
  one.kind = "impedance";
  one.rig = "hall";
  one.file = "load.csv";
  one.columns = {"frequency_hz", "magnitude_ohm", "phase_deg"};
  one.values = {std::move(frequency_hz), std::move(magnitude_ohm), std::move(phase_deg)};
  return one;
}

inline findings::Measurement repeat(findings::Measurement one, int number, int of) {
  one.number = number;
  one.repeat = of;
  return one;
}

}  // namespace bench_sample
