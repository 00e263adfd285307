#include <iterator>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "electrical/construction/conductor.h"
#include "electrical/construction/geometry.h"
#include "electrical/construction/round_wire.h"
#include "electrical/line_facts.h"

namespace desk {
namespace {

using text::Unit;

const electrical::Material& material_of(const Given& given) {
  std::vector<std::string> names;
  for (const electrical::Material& material : electrical::materials()) names.emplace_back(material.name);
  return electrical::material_named(given.one_of("material", names));
}

/// A gauge as typed: "12", "2/0".
double gauge_of(const Given& given) {
  const std::string& typed = given.word("awg");
  if (typed.size() == 3 && typed.ends_with("/0") && '1' <= typed[0] && typed[0] <= '4') return '1' - typed[0];
  return given.number("awg");
}

double metal_area_m2(const Given& given) {
  const std::string size = given.only_one({"area", "diameter", "awg"});
  if (size == "area") return given.positive_quantity("area", Unit::square_metre);
  return electrical::round_area_m2(size == "awg" ? electrical::awg_diameter_m(gauge_of(given))
                                                 : given.positive_quantity("diameter", Unit::metre));
}

electrical::Wire wire_of(const Given& given) {
  electrical::Wire wire = electrical::solid_wire(material_of(given), metal_area_m2(given),
                                                 given.quantity("temperature", Unit::celsius));
  if (given.has("outline")) wire.outline_diameter_m = given.positive_quantity("outline", Unit::metre);
  return wire;
}

void add_skin_effect(Figures& figures, const electrical::Wire& wire, double ohm_per_m, double frequency_hz) {
  const double argument = electrical::skin_argument(ohm_per_m, frequency_hz);
  const double ratio = electrical::internal_impedance_ratio(argument).real();
  const double depth_m = electrical::skin_depth_m(wire.material, frequency_hz, wire.temperature_celsius);
  const double internal_henry_per_m =
      electrical::kInternalInductanceHenryPerM * electrical::internal_inductance_share(argument);
  figures.add("frequency_hz", "frequency", frequency_hz, "Hz");
  figures.add("skin_depth_mm", "skin depth", 1e3 * depth_m, "mm");
  figures.add("resistance_ratio", "resistance, AC over DC", ratio,
              "one solid round wire alone; a close neighbour adds more (proximity effect, left out)");
  figures.add("ac_resistance_mohm_per_m", "AC resistance per metre", 1e3 * ohm_per_m * ratio,
              "mohm/m, one conductor");
  figures.add("internal_inductance_nh_per_m", "inductance within the wire", 1e9 * internal_henry_per_m,
              "nH/m; 50 for slow currents");
}

Figures conductor_figures(const Given& given) {
  const electrical::Wire wire = wire_of(given);
  const double ohm_per_m =
      electrical::resistance_ohm_per_m(wire.material, wire.metal_area_m2, wire.temperature_celsius);
  const double length_m = given.positive_quantity("length", Unit::metre);
  Figures figures{
      "resistance of a conductor, from its size",
      {{"material", "metal", std::string(wire.material.name), std::string(wire.material.source)},
       {"area_mm2", "area", 1e6 * wire.metal_area_m2, "mm2, of the metal"},
       {"diameter_mm", "diameter", 1e3 * wire.outline_diameter_m, "mm, of a solid round wire"},
       {"temperature_celsius", "temperature", wire.temperature_celsius, "C"},
       {"length_m", "length", length_m, "m"},
       {"resistance_mohm_per_m", "resistance per metre", 1e3 * ohm_per_m, "mohm/m, one conductor, DC"},
       {"resistance_mohm", "resistance", 1e3 * ohm_per_m * length_m, "mohm, one conductor, DC"},
       {"loop_mohm", "loop resistance", 2e3 * ohm_per_m * length_m, "mohm, go and return, DC"}}};
  const auto standard = electrical::standard_conductor(wire.metal_area_m2);
  if (standard && wire.material.name == "copper") {
    figures.add("standard_solid_mohm_per_m", "allowed, solid or stranded",
                1e3 * standard->solid_or_stranded_ohm_per_m,
                "mohm/m at 20 C, class 1 and 2 of IEC 60228, which limits the resistance, not the area");
    figures.add("standard_flexible_mohm_per_m", "allowed, flexible", 1e3 * standard->flexible_ohm_per_m,
                "mohm/m at 20 C, class 5, plain");
  }
  if (given.has("frequency"))
    add_skin_effect(figures, wire, ohm_per_m, given.positive_quantity("frequency", Unit::hertz));
  return figures;
}

/// The cable at frequencies where the skin effect has left no current, and so no inductance, within its conductors.
electrical::Cable without_internal_inductance(electrical::Cable cable) {
  cable.inductance_henry_per_m -= cable.round_conductors.count * electrical::kInternalInductanceHenryPerM;
  return cable;
}

/// @param left_out  what the formulas leave out, so that a real cable differs.
Figures construction_figures(const std::string& title, const electrical::Cable& cable,
                             const std::string& left_out) {
  const electrical::CableTotals totals = electrical::totals(cable);
  const electrical::Cable fast = without_internal_inductance(cable);
  const bool is_round = cable.round_conductors.count > 0;
  Figures figures{
      title,
      {{"resistance_mohm_per_m", "loop resistance per metre", 1e3 * cable.resistance_ohm_per_m, "mohm/m, DC"},
       {"inductance_uh_per_m", "inductance per metre", 1e6 * cable.inductance_henry_per_m,
        "uH/m" + std::string(is_round ? ", at low frequencies" : "") + "; left out: " + left_out},
       {"capacitance_pf_per_m", "capacitance per metre", 1e12 * cable.capacitance_farad_per_m,
        "pF/m; left out: " + left_out},
       {"length_m", "length", cable.length_m, "m"},
       {"loop_mohm", "loop resistance", 1e3 * totals.loop_resistance_ohm, "mohm, DC"},
       {"inductance_uh", "inductance", 1e6 * totals.inductance_henry, "uH"},
       {"capacitance_pf", "capacitance", 1e12 * totals.capacitance_farad, "pF"}}};
  if (is_round)
    figures.add("outer_inductance_uh_per_m", "outer inductance per metre", 1e6 * fast.inductance_henry_per_m,
                "uH/m, at high frequencies, which leave no current within the conductors");
  const std::string lossless = is_round ? "without loss, by the outer inductance" : "without loss";
  figures.add("impedance_ohm", "characteristic impedance", electrical::characteristic_impedance_ohm(fast),
              "ohm, " + lossless);
  figures.add("speed_share", "speed", electrical::speed_relative_to_light(fast), "of light's, " + lossless);
  figures.add("delay_ns", "delay", 1e9 * electrical::delay_s(fast), "ns one way, " + lossless);
  return figures;
}

Figures pair_figures(const Given& given) {
  return construction_figures(
      "two round conductors side by side",
      electrical::round_pair(wire_of(given), given.positive_quantity("spacing", Unit::metre),
                             given.number("permittivity"), given.positive_quantity("length", Unit::metre)),
      "twist, proximity effect, loss of the insulation");
}

Figures coax_figures(const Given& given) {
  return construction_figures(
      "a round conductor within a round shield",
      electrical::coaxial(wire_of(given), given.positive_quantity("shield", Unit::metre),
                          given.quantity("shield-resistance", Unit::ohm_per_metre),
                          given.number("permittivity"), given.positive_quantity("length", Unit::metre)),
      "the shield's own skin effect and inductance, loss of the insulation");
}

Figures strips_figures(const Given& given) {
  return construction_figures(
      "two flat strips face to face",
      electrical::flat_strips(material_of(given), given.positive_quantity("width", Unit::metre),
                              given.positive_quantity("thickness", Unit::metre),
                              given.positive_quantity("separation", Unit::metre),
                              given.number("permittivity"), given.positive_quantity("length", Unit::metre),
                              given.quantity("temperature", Unit::celsius)),
      "fringing (in truth less inductance, more capacitance), skin effect, loss of the insulation");
}

const Argument material_argument{"--material", "copper, silver or aluminium", "copper"};
const Argument temperature_argument{"--temperature", "Of the metal, -60C to 200C", "20C"};
const Argument length_argument{"--length", "Of the cable, one way", "1m"};
const Argument outline_argument{"--outline", "Diameter over all strands: 2.1mm; else that of a solid wire",
                                ""};
const Argument permittivity_argument{
    "--permittivity", "Relative, of what is between: from 1, air, up to that of the plastic; 2.25"};

std::vector<Argument> with_size(std::vector<Argument> arguments) {
  std::vector<Argument> all{{"--area", "Of one conductor's metal: 2.5mm2. This, --diameter or --awg", ""},
                            {"--diameter", "Of the solid wire: 1.8mm", ""},
                            {"--awg", "Gauge of the solid wire, 4/0 to 50: 12", ""},
                            material_argument,
                            temperature_argument,
                            length_argument};
  all.insert(all.end(), std::make_move_iterator(arguments.begin()), std::make_move_iterator(arguments.end()));
  return all;
}

}  // namespace

Topic cables_topic() {
  Topic topic{
      "Cables, from numbers",
      {{"conductor", "Resistance of a conductor and of a loop, from its size; its skin effect",
        "--area 2.5mm2 --length 3m --frequency 20kHz",
        with_size({{"--frequency", "Adds the skin effect of a solid round wire there: 20kHz", ""}}),
        conductor_figures},
       {"pair", "Inductance, capacitance and resistance of two round conductors side by side",
        "--area 2.5mm2 --spacing 4mm --permittivity 2.5 --length 3m",
        with_size({outline_argument, {"--spacing", "From centre to centre: 4mm"}, permittivity_argument}),
        pair_figures},
       {"coax", "The same of a round conductor within a round shield",
        "--diameter 1mm --shield 3.5mm --shield-resistance 10mohm/m --permittivity 2.25",
        with_size({outline_argument,
                   {"--shield", "Inner diameter of the shield: 3.5mm"},
                   {"--shield-resistance", "Of the shield alone: 10mohm/m"},
                   permittivity_argument}),
        coax_figures},
       {"strips",
        "The same of two flat strips face to face",
        "--width 20mm --thickness 0.2mm --separation 0.1mm --permittivity 2.2 --length 2m",
        {{"--width", "Of each strip: 20mm"},
         {"--thickness", "Of each strip: 0.2mm"},
         {"--separation", "Between the surfaces that face each other: 0.1mm"},
         permittivity_argument,
         material_argument,
         temperature_argument,
         length_argument},
        strips_figures}}};
  for (Calculation& calculation : circuit_calculations())
    topic.calculations.push_back(std::move(calculation));
  return topic;
}

}  // namespace desk
