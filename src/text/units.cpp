#include "text/units.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>

namespace text {
namespace {

// 0 dBu is the voltage of 1 mW in 600 ohm, sqrt(0.6) V: 10 log10(0.6) dB re 1 V (common
// usage in audio; computed).
constexpr double dbu_in_dbv = -2.218487496163564;
constexpr double degrees_per_radian = 57.29577951308232;

constexpr UnitName names[] = {
    {"ohm", "umkMG", {Unit::ohm}},
    {"ohms", "umkMG", {Unit::ohm}},
    {"H", "pnum", {Unit::henry}},
    {"henry", "", {Unit::henry}},
    {"F", "pnum", {Unit::farad}},
    {"farad", "", {Unit::farad}},
    {"S", "pnum", {Unit::siemens}},
    {"siemens", "", {Unit::siemens}},
    {"m", "umck", {Unit::metre}},
    {"metre", "", {Unit::metre}},
    {"meter", "", {Unit::metre}},
    {"m2", "", {Unit::square_metre}},
    {"cm2", "", {Unit::square_metre, -4}},
    {"mm2", "", {Unit::square_metre, -6}},
    {"mm^2", "", {Unit::square_metre, -6}},
    {"Hz", "kMG", {Unit::hertz}},
    {"hertz", "", {Unit::hertz}},
    {"s", "num", {Unit::second}},
    {"min", "", {Unit::second, 0, 60}},
    {"h", "", {Unit::second, 0, 3600}},
    {"V", "numk", {Unit::volt}},
    {"volt", "", {Unit::volt}},
    {"W", "umk", {Unit::watt}},
    {"V/sqrtHz", "pnum", {Unit::volt_per_sqrt_hertz}},
    {"V/rtHz", "pnum", {Unit::volt_per_sqrt_hertz}},
    {"ohm/m", "um", {Unit::ohm_per_metre}},
    {"ohm/km", "m", {Unit::ohm_per_metre, -3}},
    {"H/m", "pnum", {Unit::henry_per_metre}},
    {"H/km", "num", {Unit::henry_per_metre, -3}},
    {"F/m", "pnu", {Unit::farad_per_metre}},
    {"F/km", "pnu", {Unit::farad_per_metre, -3}},
    {"S/m", "pnum", {Unit::siemens_per_metre}},
    {"S/km", "pnum", {Unit::siemens_per_metre, -3}},
    {"dB", "", {Unit::decibel}},
    {"dBV", "", {Unit::decibel_volt}},
    {"dBu", "", {Unit::decibel_volt, 0, 1, dbu_in_dbv}},
    {"dBA", "", {Unit::decibel_a}},
    {"dB(A)", "", {Unit::decibel_a}},
    {"C", "", {Unit::celsius}},
    {"degC", "", {Unit::celsius}},
    {"K", "", {Unit::celsius, 0, 1, -273.15}},
    {"deg", "", {Unit::degree}},
    {"degree", "", {Unit::degree}},
    {"degrees", "", {Unit::degree}},
    {"rad", "", {Unit::degree, 0, degrees_per_radian}},
    {"%", "", {Unit::percent}},
    {"percent", "", {Unit::percent}},
};

constexpr UnitKind kinds[] = {
    {Unit::ohm, "a resistance", "ohm", "uohm mohm ohm kohm Mohm"},
    {Unit::henry, "an inductance", "uH", "nH uH mH H"},
    {Unit::farad, "a capacitance", "pF", "pF nF uF mF F"},
    {Unit::siemens, "a conductance", "nS", "pS nS uS mS S"},
    {Unit::metre, "a length", "m", "um mm cm m km"},
    {Unit::square_metre, "an area", "mm2", "mm2 cm2 m2"},
    {Unit::hertz, "a frequency", "Hz", "Hz kHz MHz GHz"},
    {Unit::second, "a time", "s", "ns us ms s min h"},
    {Unit::volt, "a voltage", "V", "nV uV mV V kV"},
    {Unit::watt, "a power", "W", "uW mW W kW"},
    {Unit::volt_per_sqrt_hertz, "a noise density", "nV/sqrtHz", "nV/sqrtHz uV/sqrtHz V/sqrtHz"},
    {Unit::ohm_per_metre, "a resistance per metre", "mohm/m", "uohm/m mohm/m ohm/km ohm/m"},
    {Unit::henry_per_metre, "an inductance per metre", "uH/m", "nH/m uH/m mH/km H/m"},
    {Unit::farad_per_metre, "a capacitance per metre", "pF/m", "pF/m nF/km nF/m F/m"},
    {Unit::siemens_per_metre, "a conductance per metre", "nS/m", "nS/m uS/m S/m"},
    {Unit::decibel, "a level difference", "dB", "dB"},
    {Unit::decibel_volt, "a voltage level", "dBV", "dBV dBu"},
    {Unit::decibel_a, "a sound level", "dBA", "dBA"},
    {Unit::celsius, "a temperature", "C", "C K"},
    {Unit::degree, "an angle", "deg", "deg rad"},
    {Unit::percent, "a percentage", "%", "%"},
};

}  // namespace

std::span<const UnitName> unit_names() { return names; }

const UnitKind& unit_kind(Unit unit) {
  const auto* found =
      std::find_if(std::begin(kinds), std::end(kinds), [&](const UnitKind& row) { return row.unit == unit; });
  if (found == std::end(kinds)) throw std::logic_error("a unit without a row in the list of kinds");
  return *found;
}

int power_of_prefix(char prefix) {
  switch (prefix) {
    case 'p':
      return -12;
    case 'n':
      return -9;
    case 'u':
      return -6;
    case 'm':
      return -3;
    case 'c':
      return -2;
    case 'k':
      return 3;
    case 'M':
      return 6;
    case 'G':
      return 9;
    default:
      return 0;
  }
}

}  // namespace text
