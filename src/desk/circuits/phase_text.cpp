#include <nlohmann/json.hpp>

#include "desk/circuits/phase.h"
#include "report/wrapped_text.h"
#include "text/columns.h"
#include "text/number.h"
#include "text/quantity.h"

namespace desk {
namespace {

using text::Align;

constexpr std::size_t kPhaseColumns = 100;

std::string phase_table(const PhasesOfCable& phases) {
  text::Columns table({"reading", "frequency", "measured", "propagation", "terminations", "left over", ""},
                      {Align::right, Align::right, Align::right, Align::right, Align::right, Align::right});
  for (const PhaseReading& each : phases.readings) {
    const auto share = [&](double electrical::PhaseShares::*member) {
      return each.shares ? text::fixed((*each.shares).*member, 3) : "not known";
    };
    table.add({std::to_string(each.number), text::with_unit(each.frequency_hz, text::Unit::hertz),
               text::fixed(each.measured_deg, 3), share(&electrical::PhaseShares::propagation_deg),
               share(&electrical::PhaseShares::terminations_deg),
               share(&electrical::PhaseShares::left_over_deg), each.ends});
  }
  return table.text(2);
}

}  // namespace

std::string phases_text(const PhasesOfCable& phases) {
  const auto lines = [](const std::string& words) { return report::wrapped(words, kPhaseColumns); };
  std::string all = lines("phase of " + phases.cable +
                          ", degrees: of the voltage at the load against that of the source without load") +
                    phase_table(phases);
  for (const PhaseReading& each : phases.readings) {
    all += lines(each.words + (each.missing.empty() ? "" : ": " + each.missing));
    if (each.left_over_of_other_sign_deg)
      all += lines("caution: reading " + std::to_string(each.number) +
                   " of the other sign? With its sign changed only " +
                   text::fixed(*each.left_over_of_other_sign_deg, 3) +
                   " degrees would be left over; here a negative phase is late");
  }
  return all + lines(
                   "Propagation is -360 f times the delay of the line; terminations, what source and load "
                   "that do not "
                   "match it add by the cable's own resistance, inductance and capacitance; left over, what "
                   "these do "
                   "not explain. Phase at one frequency need not follow the delay: into a high impedance it "
                   "follows "
                   "the capacitance behind the source, into a low one the inductance, so that between other "
                   "ends the "
                   "same two cables can stand in the other order.");
}

std::string phases_json(const PhasesOfCable& phases) {
  using nlohmann::json;
  json readings = json::array();
  for (const PhaseReading& each : phases.readings) {
    json value = {{"reading", each.number},
                  {"words", each.words},
                  {"ends", each.ends},
                  {"frequency_Hz", each.frequency_hz},
                  {"measured_deg", each.measured_deg},
                  {"missing", each.missing}};
    const auto share = [&](double electrical::PhaseShares::*member) {
      return each.shares ? json((*each.shares).*member) : json();
    };
    value["propagation_deg"] = share(&electrical::PhaseShares::propagation_deg);
    value["terminations_deg"] = share(&electrical::PhaseShares::terminations_deg);
    value["left_over_deg"] = share(&electrical::PhaseShares::left_over_deg);
    value["left_over_of_other_sign_deg"] =
        each.left_over_of_other_sign_deg ? json(*each.left_over_of_other_sign_deg) : json();
    readings.push_back(value);
  }
  return json{{"schema", 1}, {"cable", phases.cable}, {"readings", readings}}.dump(2) + "\n";
}

}  // namespace desk
