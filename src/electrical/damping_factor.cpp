#include "electrical/damping_factor.h"

#include <cmath>

#include "electrical/argument.h"

namespace electrical {
namespace {

double over(double rated_impedance_ohm, double seen_ohm) {
  require_positive("impedance seen by the load", seen_ohm);
  return rated_impedance_ohm / seen_ohm;
}

}  // namespace

double damping_factor(double rated_impedance_ohm, const Source& source, const Cable& cable) {
  require_positive("rated_impedance_ohm", rated_impedance_ohm);
  require_not_negative("source resistance_ohm", source.resistance_ohm);
  return over(rated_impedance_ohm, source.resistance_ohm + loop_resistance_ohm(cable));
}

double damping_factor(double rated_impedance_ohm, const Source& source, const Cable& cable,
                      double frequency_hz) {
  require_positive("rated_impedance_ohm", rated_impedance_ohm);
  return over(rated_impedance_ohm, std::abs(output_impedance_ohm(source, cable, frequency_hz)));
}

double source_resistance_by_loading_ohm(double unloaded_volt, double loaded_volt, double load_ohm) {
  require_positive("unloaded_volt", unloaded_volt);
  require_positive("loaded_volt", loaded_volt);
  require_positive("load_ohm", load_ohm);
  require_within("loaded_volt", loaded_volt, 0, unloaded_volt);
  return load_ohm * (unloaded_volt - loaded_volt) / loaded_volt;
}

}  // namespace electrical
