#include "desk/circuits/phase.h"

#include <cmath>

#include "desk/circuits/measured.h"
#include "desk/shelf/circuit.h"
#include "desk/shelf/one_state.h"
#include "text/number.h"
#include "text/quantity.h"

namespace desk {
namespace {

using text::Unit;

/// What has to be known before a phase can be predicted; "" when all is.
std::string missing_for(const findings::CableEvidence& cable, const std::string& cable_name,
                        const findings::RigEvidence& rig, double frequency_hz) {
  if (rig.name.empty())
    return "it names no rig: name one in a column rig, with the source and load it was read on";
  if (!rig.source) return "rig " + rig.name + " has no source resistance: add a rig with --source";
  if (!rig.load)
    return "rig " + rig.name + " has no load: import its impedance with --rig " + rig.name +
           ", or add a rig with --load";
  const electrical::Band known = electrical::known_band(*rig.load);
  if (frequency_hz < known.low_hz || frequency_hz > known.high_hz)
    return "the load of rig " + rig.name + " is known from " + text::with_unit(known.low_hz, Unit::hertz) +
           " to " + text::with_unit(known.high_hz, Unit::hertz) + " only: import its impedance there";
  if (!cable.line || cable.line->inductance_henry_per_m == 0 || cable.line->capacitance_farad_per_m == 0)
    return "inductance or capacitance of " + cable_name +
           " is not known: import cable,length_m,resistance_ohm,inductance_uH,capacitance_pF";
  return "";
}

std::string ends_of(const store::Campaign& campaign, const findings::RigEvidence& rig) {
  if (rig.name.empty()) return "source and load not known";
  const store::Rig typed = rig_named(campaign, rig.name);
  std::string words =
      rig.source ? "source " + text::with_unit(rig.source->resistance_ohm, Unit::ohm) : "source not known";
  if (rig.source && rig.source->inductance_henry > 0)
    words += " and " + text::with_unit(rig.source->inductance_henry, Unit::henry);
  return words + ", load " +
         (!typed.load.empty() ? typed.load
          : rig.load          ? "by its imported impedance"
                              : "not known");
}

/// What would be left of the reading with its sign changed, where that is less than a quarter.
std::optional<double> better_with_other_sign(const electrical::PhaseShares& shares, double measured_deg) {
  const double predicted_deg = shares.propagation_deg + shares.terminations_deg;
  const double left_deg = std::remainder(-measured_deg - predicted_deg, 360);
  if (4 * std::abs(left_deg) >= std::abs(shares.left_over_deg)) return std::nullopt;
  return left_deg;
}

PhaseReading phase_reading(const store::Campaign& campaign, const std::string& cable,
                           const store::NumberedReading& each) {
  const findings::RigEvidence rig =
      each.reading.rig.empty() ? findings::RigEvidence{} : rig_evidence(campaign, each.reading.rig);
  const findings::CableEvidence evidence = cable_evidence(campaign, cable, each.reading.rig);
  PhaseReading phase;
  phase.number = each.number;
  phase.words = named_reading(each);
  phase.ends = ends_of(campaign, rig);
  phase.frequency_hz = column(each.reading, "frequency_hz")->front();
  phase.measured_deg = column(each.reading, "phase_deg")->front();
  phase.missing = missing_for(evidence, cable, rig, phase.frequency_hz);
  if (!phase.missing.empty()) return phase;
  phase.shares = electrical::phase_shares(*rig.source, *evidence.line, *rig.load, phase.frequency_hz,
                                          phase.measured_deg);
  phase.left_over_of_other_sign_deg = better_with_other_sign(*phase.shares, phase.measured_deg);
  return phase;
}

}  // namespace

PhasesOfCable phases_of(const Path& file, const std::string& cable) {
  const store::Campaign campaign = store::Campaign::open(file);
  PhasesOfCable phases{cable, {}};
  for (const store::NumberedReading& each :
       measured(campaign, cable, "phase", "", "import a table: cable,frequency_Hz,phase_deg,rig"))
    phases.readings.push_back(phase_reading(campaign, cable, each));
  return phases;
}

}  // namespace desk
