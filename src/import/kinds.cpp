#include "import/kinds.h"

#include <algorithm>
#include <stdexcept>

namespace imported {
namespace {

using text::Unit;

std::vector<Kind> all_kinds() {
  const ColumnOfKind frequency = {"frequency", {Unit::hertz}, true, Content::positive};
  const ColumnOfKind phase = {"phase", {Unit::degree}, false, Content::any_number};
  const ColumnOfKind note = {"note", {}, false, Content::words};
  const ColumnOfKind comment = {"comment", {}, false, Content::words};
  const ColumnOfKind cable = {"cable", {}, true, Content::name};
  const std::vector<ColumnOfKind> circumstances = {{"rig", {}, false, Content::words},
                                                   {"piece", {}, false, Content::words},
                                                   {"condition", {}, false, Content::words},
                                                   {"instrument", {}, false, Content::words},
                                                   {"feature", {}, false, Content::words},
                                                   {"state", {}, false, Content::words},
                                                   {"repeat", {}, false, Content::count},
                                                   note,
                                                   comment};
  const auto with_circumstances = [&](std::vector<ColumnOfKind> columns) {
    columns.insert(columns.end(), circumstances.begin(), circumstances.end());
    return columns;
  };
  const auto required = [](ColumnOfKind column) { return column.required = true, column; };
  const auto optional = [](ColumnOfKind column) { return column.required = false, column; };
  return {
      {"cable-lcr", "a table of cables",
       "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF,frequency_Hz", RowsMean::one_reading_each,
       BelongsTo::cables_of_the_table,
       with_circumstances(
           {cable,
            {"length", {Unit::metre}, true, Content::positive},
            {"resistance", {Unit::ohm, Unit::ohm_per_metre}, true, Content::not_negative},
            {"inductance", {Unit::henry, Unit::henry_per_metre}, false, Content::not_negative},
            {"capacitance", {Unit::farad, Unit::farad_per_metre}, false, Content::not_negative},
            {"conductance", {Unit::siemens, Unit::siemens_per_metre}, false, Content::not_negative},
            {"temperature", {Unit::celsius}, false, Content::any_number},
            optional(frequency)})},
      {"phase", "a table of phases", "cable,frequency_Hz,phase_deg,rig", RowsMean::one_reading_each,
       BelongsTo::cables_of_the_table, with_circumstances({cable, frequency, required(phase)})},
      {"response",
       "a response",
       "frequency_Hz,level_dB,phase_deg",
       RowsMean::one_reading_together,
       BelongsTo::cable,
       {frequency, {"level", {Unit::decibel}, true, Content::any_number}, phase, note, comment}},
      {"impedance",
       "an impedance",
       "frequency_Hz,magnitude_ohm,phase_deg",
       RowsMean::one_reading_together,
       BelongsTo::rig,
       {frequency, {"magnitude", {Unit::ohm}, true, Content::positive}, required(phase), note, comment}},
      {"noise",
       "a noise spectrum",
       "frequency_Hz,level_dBV",
       RowsMean::one_reading_together,
       BelongsTo::cable,
       {frequency,
        {"level", {Unit::decibel_volt}, true, Content::any_number},
        {"bandwidth", {Unit::hertz}, false, Content::positive},
        note,
        comment}},
      {"noise",
       "a noise spectrum",
       "frequency_Hz,density_nV_per_sqrtHz",
       RowsMean::one_reading_together,
       BelongsTo::cable,
       {frequency, {"density", {Unit::volt_per_sqrt_hertz}, true, Content::positive}, note, comment}},
  };
}

std::string suffix(Unit unit) {
  switch (unit) {
    case Unit::ohm:
    case Unit::ohm_per_metre:
      return "_ohm";
    case Unit::henry:
    case Unit::henry_per_metre:
      return "_henry";
    case Unit::farad:
    case Unit::farad_per_metre:
      return "_farad";
    case Unit::siemens:
    case Unit::siemens_per_metre:
      return "_siemens";
    case Unit::metre:
      return "_m";
    case Unit::hertz:
      return "_hz";
    case Unit::decibel:
      return "_db";
    case Unit::decibel_volt:
      return "_dbv";
    case Unit::degree:
      return "_deg";
    case Unit::celsius:
      return "_celsius";
    case Unit::volt_per_sqrt_hertz:
      return "_volt_per_sqrt_hz";
    default:
      throw std::logic_error("a unit without a column name: " + text::kind_of(unit));
  }
}

}  // namespace

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all = all_kinds();
  return all;
}

const Kind& kind_named(std::string_view name) {
  const auto found =
      std::find_if(kinds().begin(), kinds().end(), [&](const Kind& kind) { return kind.name == name; });
  if (found == kinds().end())
    throw std::domain_error("kind must be a kind of reading, got \"" + std::string(name) + "\"");
  return *found;
}

std::string reading_column(std::string_view quantity, Unit unit) {
  return std::string(quantity) + suffix(unit);
}

bool is_per_metre(Unit unit) {
  return unit == Unit::ohm_per_metre || unit == Unit::henry_per_metre || unit == Unit::farad_per_metre ||
         unit == Unit::siemens_per_metre;
}

}  // namespace imported
