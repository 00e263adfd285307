#include <algorithm>
#include <cmath>
#include <map>

#include "electrical/construction/conductor.h"
#include "electrical/construction/material.h"
#include "electrical/line_facts.h"
#include "findings/bench/doubts.h"
#include "text/number.h"
#include "text/quantity.h"

namespace findings {
namespace {

using text::Unit;

/// Usual values per metre; common practice, no source. They serve only to tell a unit off by 1000.
struct Usual {
  const char* column;
  Unit unit;
  double least_per_m, most_per_m;
  const char* units_mixed;
};
constexpr Usual kUsual[] = {
    {"resistance_ohm", Unit::ohm, 0.5e-3, 3, "ohm and mohm"},
    {"inductance_henry", Unit::henry, 10e-9, 3e-6, "uH, nH and mH"},
    {"capacitance_farad", Unit::farad, 5e-12, 10e-9, "pF and nF"},
};

void doubt_units(const Measurement& one, double length_m, std::vector<Doubt>& doubts) {
  for (const Usual& usual : kUsual) {
    const auto value = one.single(usual.column);
    if (!value || *value == 0) continue;
    const double per_m = *value / length_m;
    if (per_m >= usual.least_per_m && per_m <= usual.most_per_m) continue;
    for (const double times : {1e3, 1e-3}) {
      if (per_m * times < usual.least_per_m || per_m * times > usual.most_per_m) continue;
      doubts.push_back({{one.number},
                        one.cable,
                        described(one) + ": " + text::with_unit(*value, usual.unit) + " for " +
                            text::with_unit(length_m, Unit::metre) + " is not usual, " +
                            text::with_unit(*value * times, usual.unit) + " would be",
                        std::string("a unit off by 1000: ") + usual.units_mixed + " mixed up"});
    }
  }
}

void doubt_speed(const Measurement& one, double length_m, std::vector<Doubt>& doubts) {
  const auto inductance = one.single("inductance_henry"), capacitance = one.single("capacitance_farad");
  if (!inductance || !capacitance || *inductance == 0 || *capacitance == 0) return;
  const electrical::Cable line = electrical::cable_from_totals({0, *inductance, *capacitance, 0}, length_m);
  if (!electrical::faster_than_light(line)) return;
  doubts.push_back(
      {{one.number},
       one.cable,
       described(one) + ": its inductance and capacitance would carry a signal at " +
           text::significant(electrical::speed_relative_to_light(line), 3) + " times the speed of light",
       "inductance, capacitance or length is wrong, in its unit or by a probe's own part taken away twice"});
}

/// Of the area that a resistance implies to the one stated: the standard's limits allow down to 0.85, plugs take their part.
constexpr double kLeastAreaRatio = 0.7, kMostAreaRatio = 1.15;

/// What a ratio of implied to stated area means. The standard lets a conductor have some 15 % more resistance than its
/// nominal area, contacts and warmth add to it.
std::string explanation_of_area(double ratio, double length_m) {
  const auto near = [&](double expected) { return std::abs(ratio / expected - 1) < 0.2; };
  if (ratio < 3e-3) return "a unit off by 1000: ohm for mohm";
  if (ratio > 300) return "a unit off by 1000: mohm for ohm";
  if (near(2)) return "the value of one conductor taken for that of the loop, which is twice as much";
  if (near(0.5)) return "a loop counted twice, or the length of go and return together given as the length";
  if (near(1 / 1.64)) return "aluminium, or copper-clad aluminium, which has 1.64 times copper's resistance";
  if (ratio > 1) return "the length, the cross-section, or test leads taken away twice";
  return "contacts, or a thinner conductor than stated; " + text::with_unit(length_m, Unit::metre) +
         " may not be the whole length";
}

void doubt_area(const Measurement& one, double length_m, const BenchCable& cable,
                std::vector<Doubt>& doubts) {
  const auto resistance = one.single("resistance_ohm");
  if (!resistance || *resistance == 0 || !cable.conductor_area_m2) return;
  const auto& material = electrical::material_named(cable.material);
  const double celsius = std::clamp(one.single("temperature_celsius").value_or(20), -60.0, 200.0);
  const double implied_m2 = electrical::area_of_resistance_m2(material, *resistance / length_m / 2, celsius);
  const double ratio = implied_m2 / *cable.conductor_area_m2;
  if (ratio > kLeastAreaRatio && ratio < kMostAreaRatio) return;
  doubts.push_back({{one.number},
                    one.cable,
                    described(one) + ": a loop of " + text::with_unit(*resistance, Unit::ohm) + " over " +
                        text::with_unit(length_m, Unit::metre) + " has the resistance of " +
                        text::with_unit(implied_m2, Unit::square_metre) + " of " + cable.material +
                        ", stated is " + text::with_unit(*cable.conductor_area_m2, Unit::square_metre),
                    explanation_of_area(ratio, length_m)});
}

/// The part of the loop that exceeds what the standard allows its conductors, where it is large against the loop.
void doubt_contacts(const Measurement& one, double length_m, const BenchCable& cable,
                    std::vector<Doubt>& doubts) {
  constexpr double kLargeShare = 0.1, kSmallestOhm = 2e-3;
  const auto resistance = one.single("resistance_ohm");
  const auto standard = cable.conductor_area_m2 && cable.material == "copper"
                            ? electrical::standard_conductor(*cable.conductor_area_m2)
                            : std::nullopt;
  if (!resistance || !standard) return;
  const double celsius = std::clamp(one.single("temperature_celsius").value_or(20), -60.0, 200.0);
  const auto& copper = electrical::material_named("copper");
  const double allowed = 2 * length_m * standard->flexible_tinned_ohm_per_m *
                         electrical::resistivity_ohm_m(copper, celsius) /
                         electrical::resistivity_ohm_m(copper, 20);
  const double excess = *resistance - allowed;
  if (excess < kSmallestOhm || excess < kLargeShare * *resistance || excess > allowed) return;
  doubts.push_back({{one.number},
                    one.cable,
                    described(one) + ": " + text::with_unit(excess, Unit::ohm) + " of the loop's " +
                        text::with_unit(*resistance, Unit::ohm) +
                        " is more than the largest that IEC 60228 allows conductors of " +
                        text::with_unit(*cable.conductor_area_m2, Unit::square_metre),
                    "contacts at plugs or probes; measure with four wires, or at two lengths"});
}

/// The first quantity in which two of the readings are farther apart than `most_ratio`.
void doubt_pairs(const std::vector<const Measurement*>& first, const std::vector<const Measurement*>& second,
                 double most_ratio, const std::string& whose, const std::string& explanation,
                 std::vector<Doubt>& doubts) {
  for (const Usual& usual : kUsual) {
    for (const Measurement* one : first)
      for (const Measurement* other : second) {
        const auto a = one->single(usual.column), b = other->single(usual.column);
        if (one == other || !a || !b || *a <= 0 || *b <= 0 || std::max(*a / *b, *b / *a) <= most_ratio)
          continue;
        doubts.push_back({{one->number, other->number},
                          one->cable,
                          described(*one) + " and " + described(*other) + ": " + whose + " have " +
                              text::with_unit(*a, usual.unit) + " and " + text::with_unit(*b, usual.unit),
                          explanation});
        return;
      }
  }
}

}  // namespace

std::vector<Doubt> line_doubts(const std::vector<Measurement>& measurements,
                               const std::vector<BenchCable>& cables) {
  std::vector<Doubt> doubts;
  for (const Measurement& one : measurements) {
    const auto length_m = one.single("length_m");
    if (one.superseded || one.kind != "cable-lcr" || !length_m) continue;
    const auto cable = std::find_if(cables.begin(), cables.end(),
                                    [&](const BenchCable& each) { return each.name == one.cable; });
    const std::size_t before = doubts.size();
    doubt_units(one, *length_m, doubts);
    if (doubts.size() == before) doubt_speed(one, *length_m, doubts);
    if (cable == cables.end() || doubts.size() > before) continue;
    doubt_area(one, *length_m, *cable, doubts);
    if (doubts.size() == before) doubt_contacts(one, *length_m, *cable, doubts);
  }
  constexpr double kRepeatsAlike = 1.2, kPiecesAlike = 1.1;
  const auto groups = repeats_of(measurements);
  for (const auto& group : groups)
    if (group.front()->kind == "cable-lcr")
      doubt_pairs(group, group, kRepeatsAlike, "repeats",
                  "one of them is mistaken: a range, a loose contact, another cable; supersede it", doubts);
  std::map<std::string, std::vector<const Measurement*>> pieces[2];
  for (const Measurement& one : measurements)
    if (!one.superseded && one.kind == "cable-lcr" && (one.piece == "left" || one.piece == "right"))
      pieces[one.piece == "right"][one.cable].push_back(&one);
  for (const auto& [cable, left] : pieces[0])
    if (pieces[1].contains(cable))
      doubt_pairs(left, pieces[1][cable], kPiecesAlike, "the pieces left and right",
                  "pieces of different length, a bad joint in one, or pieces of two cables mixed up", doubts);
  return doubts;
}

}  // namespace findings
