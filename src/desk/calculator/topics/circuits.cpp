#include <cmath>
#include <variant>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "electrical/damping_factor.h"
#include "electrical/facts/corner.h"
#include "electrical/facts/delay.h"
#include "electrical/line_facts.h"
#include "electrical/response.h"
#include "import/load_text.h"

namespace desk {
namespace {

using text::Unit;

/// A source, a cable and a load as typed.
struct TypedCircuit {
  electrical::Source source;
  electrical::Cable cable;
  electrical::Load load;
  double frequency_hz;

  std::complex<double> ratio_at(double hertz) const {
    return electrical::response(source, cable, load, hertz);
  }
};

TypedCircuit typed_circuit(const Given& given) {
  const electrical::CableTotals totals{.loop_resistance_ohm = given.quantity("resistance", Unit::ohm),
                                       .inductance_henry = given.quantity("inductance", Unit::henry),
                                       .capacitance_farad = given.quantity("capacitance", Unit::farad)};
  const double length_m = given.has("length") ? given.positive_quantity("length", Unit::metre) : 1;
  return {{given.quantity("source", Unit::ohm), given.quantity("source-inductance", Unit::henry)},
          electrical::cable_from_totals(totals, length_m),
          imported::parse_load(given.word("load")),
          given.positive_quantity("frequency", Unit::hertz)};
}

std::string source_words(const Given& given) {
  const std::string inductance =
      given.quantity("source-inductance", Unit::henry) > 0 ? " + " + given.word("source-inductance") : "";
  return given.word("source") + inductance;
}

/// Source and load, to be named beside every phase.
std::string ends_words(const Given& given) {
  return "behind " + source_words(given) + " into " + given.word("load");
}

Figures figures_of(const std::string& title, const Given& given, const TypedCircuit& circuit) {
  const electrical::CableTotals totals = electrical::totals(circuit.cable);
  return {title,
          {{"loop_mohm", "loop resistance", 1e3 * totals.loop_resistance_ohm, "mohm, the whole cable"},
           {"inductance_uh", "inductance", 1e6 * totals.inductance_henry, "uH, the whole cable"},
           {"capacitance_pf", "capacitance", 1e12 * totals.capacitance_farad, "pF, the whole cable"},
           {"source", "source", source_words(given)},
           {"load", "load", given.word("load")},
           {"frequency_hz", "frequency", circuit.frequency_hz, "Hz"}}};
}

/// Adds the speed where the length is known, and whether it can be true.
void add_speed(Figures& figures, const Given& given, const electrical::Cable& cable) {
  if (!given.has("length") || cable.inductance_henry_per_m == 0 || cable.capacitance_farad_per_m == 0) return;
  figures.add("speed_share", "speed", electrical::speed_relative_to_light(cable),
              electrical::faster_than_light(cable)
                  ? "of light's: impossible, so inductance, capacitance or length is wrong"
                  : "of light's");
}

void add_impedance(Figures& figures, const std::string& key, const std::string& label,
                   std::complex<double> ohm, const std::string& note) {
  figures.add(key + "_ohm", label, std::abs(ohm), "ohm, " + note);
  figures.add(key + "_deg", "its angle", electrical::phase_deg(ohm), "degrees");
}

Figures cable_figures(const Given& given) {
  const TypedCircuit circuit = typed_circuit(given);
  const auto& [source, cable, load, frequency_hz] = circuit;
  const std::complex<double> ratio = circuit.ratio_at(frequency_hz);
  Figures figures = figures_of("a cable between source and load", given, circuit);
  figures.add("level_db", "level at the load", electrical::level_db(ratio),
              "dB, against the source without load");
  figures.add("cable_db", "of it by the cable",
              electrical::level_difference_db(source, cable, electrical::Cable{}, load, frequency_hz),
              "dB, against no cable between the same ends");
  figures.add("phase_deg", "phase at the load", electrical::phase_deg(ratio),
              "degrees, " + ends_words(given) + "; other ends, another phase");
  add_impedance(figures, "input", "input impedance",
                electrical::input_impedance_ohm(cable, load, frequency_hz), "what the source sees");
  add_impedance(figures, "output", "output impedance",
                electrical::output_impedance_ohm(source, cable, frequency_hz), "what the load sees");
  if (given.has("rated")) {
    const double rated_ohm = given.positive_quantity("rated", Unit::ohm);
    figures.add("damping_factor", "damping factor", electrical::damping_factor(rated_ohm, source, cable),
                "rated impedance over resistances of source and cable");
    figures.add("damping_factor_at_frequency", "the same at the frequency",
                electrical::damping_factor(rated_ohm, source, cable, frequency_hz),
                "rated impedance over output impedance");
  }
  figures.add("capacitance_caution", "capacitance above 1 nF", electrical::capacitance_needs_caution(cable),
              "there some amplifiers may oscillate: common practice, no source");
  add_speed(figures, given, cable);
  return figures;
}

/// What the load takes from the level: against an end that is open but for 10^15 ohm.
double load_share_db(const TypedCircuit& circuit) {
  const double open_db = electrical::level_db(
      electrical::response(circuit.source, circuit.cable, electrical::Resistor{1e15}, circuit.frequency_hz));
  return electrical::level_db(circuit.ratio_at(circuit.frequency_hz)) - open_db;
}

Figures interconnect_figures(const Given& given) {
  const TypedCircuit circuit = typed_circuit(given);
  const auto& [source, cable, load, frequency_hz] = circuit;
  const auto level_db = [&](double hertz) { return electrical::level_db(circuit.ratio_at(hertz)); };
  Figures figures = figures_of("an interconnect between source and load", given, circuit);
  const auto corner_hz = electrical::corner_frequency_hz(source, cable, load);
  figures.add("corner_hz", "corner frequency", known(corner_hz),
              corner_hz ? "Hz, exact: half the power of 20 Hz"
                        : "up to 1 GHz the level stays above half the power of 20 Hz");
  if (const auto* resistor = std::get_if<electrical::Resistor>(&load)) {
    const auto one_pole_hz = electrical::one_pole_corner_hz(source, cable, *resistor);
    figures.add("one_pole_corner_hz", "its one-pole estimate", known(one_pole_hz),
                one_pole_hz ? "Hz, from resistances of source and load and all capacitance"
                            : "without capacitance or source resistance there is none");
  }
  figures.add("level_db", "level at the load", level_db(frequency_hz),
              "dB at the frequency, against the source without load");
  figures.add("against_1khz_db", "against 1 kHz", level_db(frequency_hz) - level_db(1000), "dB");
  const electrical::LevelShares shares = electrical::level_shares(source, cable, load, frequency_hz);
  const std::string without = "dB, with it less without it";
  figures.add("source_resistance_db", "by the source's resistance", shares.source_resistance_db,
              without + "; the parts act together and do not add up");
  figures.add("cable_resistance_db", "by the cable's resistance", shares.cable_resistance_db,
              without + "; in series with source and load, it counts as its part of their sum");
  figures.add("cable_inductance_db", "by the cable's inductance", shares.cable_inductance_db, without);
  figures.add("cable_capacitance_db", "by the cable's capacitance", shares.cable_capacitance_db,
              without + "; it loads what comes through the source's resistance");
  figures.add("load_db", "by the load", load_share_db(circuit), "dB, against an open end");
  return figures;
}

Figures phase_figures(const Given& given) {
  const TypedCircuit circuit = typed_circuit(given);
  const auto& [source, cable, load, frequency_hz] = circuit;
  Figures figures = figures_of("delay and phase of a cable", given, circuit);
  const auto nanoseconds = [&](double (*delay_s)(const electrical::Source&, const electrical::Cable&,
                                                 const electrical::Load&, double)) {
    return 1e9 * delay_s(source, cable, load, frequency_hz);
  };
  figures.add("propagation_ns", "propagation delay", 1e9 * electrical::delay_s(cable),
              "ns, of the line alone, between ends that match it");
  figures.add("phase_delay_ns", "phase delay", nanoseconds(electrical::phase_delay_s),
              "ns, of a steady sine, " + ends_words(given));
  figures.add("group_delay_ns", "group delay", nanoseconds(electrical::group_delay_s),
              "ns, of the envelope, likewise");
  const double predicted_deg = electrical::unwrapped_phase_deg(source, cable, load, frequency_hz);
  figures.add("phase_deg", "phase at the load", predicted_deg,
              "degrees, whole turns counted, " + ends_words(given) + "; other ends, another phase");
  add_speed(figures, given, cable);
  const electrical::PhaseShares shares = electrical::phase_shares(
      source, cable, load, frequency_hz,
      given.has("measured") ? given.quantity("measured", Unit::degree) : predicted_deg);
  figures.add("propagation_deg", "phase by propagation", shares.propagation_deg, "degrees, -360 f delay");
  figures.add("terminations_deg", "phase by the ends", shares.terminations_deg,
              "degrees, since source and load do not match the line; its loss with them");
  if (!given.has("measured")) return figures;
  figures.add("measured_deg", "measured phase", shares.measured_deg,
              "degrees, in the turn nearest to the prediction");
  figures.add("left_over_deg", "left over", shares.left_over_deg,
              "degrees, which resistance, inductance, capacitance and ends leave unexplained");
  return figures;
}

std::vector<Argument> circuit_arguments(const std::string& frequency, std::vector<Argument> more) {
  std::vector<Argument> all{
      {"--source", "Output resistance of the source: 0.1ohm"},
      {"--source-inductance", "Its output inductance", "0uH"},
      {"--load", "8ohm; \"47kohm||100pF\"; \"3.0ohm + 0.1mH + [27ohm||475uF||21.3mH]\", a loudspeaker"},
      {"--resistance", "Of the whole cable, both conductors: 0.6ohm"},
      {"--inductance", "Of the whole cable: 1.8uH"},
      {"--capacitance", "Of the whole cable: 180pF"},
      {"--length", "Of the cable: 3m; tells the speed, else nothing", ""},
      {"--frequency", "Where the circuit is looked at: 1kHz", frequency}};
  for (Argument& argument : more) all.push_back(std::move(argument));
  return all;
}

}  // namespace

std::vector<Calculation> circuit_calculations() {
  return {{"cable", "Level, phase and impedances of a cable between source and load; damping factor",
           "--source 0.1ohm --load 8ohm --resistance 0.6ohm --inductance 1.8uH --capacitance 180pF "
           "--frequency 20kHz --rated 8ohm",
           circuit_arguments(Argument::required,
                             {{"--rated", "Rated impedance of the load, for the damping factor: 8ohm", ""}}),
           cable_figures},
          {"interconnect", "Corner frequency of an interconnect, and what each part takes from the level",
           "--source 1kohm --load \"47kohm||100pF\" --resistance 0.5ohm --inductance 2uH --capacitance 500pF",
           circuit_arguments("20kHz", {}), interconnect_figures},
          {"phase", "Delays of a cable, and what a phase measured at one frequency consists of",
           "--source 50ohm --load \"1Mohm||15pF\" --resistance 0.25ohm --inductance 1.25uH "
           "--capacitance 500pF --frequency 500kHz --measured -4.9deg",
           circuit_arguments(Argument::required,
                             {{"--measured", "Phase at the load, measured at the frequency: -4.9deg", ""}}),
           phase_figures}};
}

}  // namespace desk
