#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/shelf/shelf.h"
#include "hearing/noise/seat.h"

namespace desk {

/// Thermal noise beside a reading, at 293 K.
struct ThermalNoise {
  double resistance_ohm = 1000;
  bool is_of_the_rig = false;  ///< the rig's source; else a resistance taken for comparison
  double density_volt_per_sqrt_hz = 0;
  /// The reading over the thermal noise of source and load side by side, in the third-octave where it is least; nothing
  /// where the source is not known.
  std::optional<double> least_above_db;
};

/// One noise reading of a cable, taken as the voltage at the terminals of each loudspeaker.
struct NoiseAtSeat {
  int number = 0;
  std::string words;  ///< "reading 7 (noise.csv), rig hall, shield connected on"
  std::string feature, state;
  std::vector<hearing::BandAtSeat> bands;  ///< one at least
  electrical::Band heard{};                ///< the part of 20 Hz to 20 kHz in which the spectrum is known
  double unweighted_volt = 0, a_weighted_volt = 0;
  double level_db = 0, a_weighted_level_db = 0;  ///< dB SPL at the seat
  std::optional<double> itu_468_weighted_volt;   ///< r.m.s.; nothing where the spectrum ends below 31.5 Hz
  ThermalNoise thermal;
  std::vector<std::string> cautions;
};

const hearing::BandAtSeat& worst_band(const NoiseAtSeat& noise);
int bands_at_or_above(const NoiseAtSeat& noise);

/// The noise readings of a cable at a seat; those that differ in the state of a feature alone stand together.
struct NoiseOfCable {
  std::string cable;
  hearing::Seat seat;
  std::vector<std::vector<NoiseAtSeat>> groups;
  std::vector<std::string> left_out;  ///< levels without their bandwidth, each with what to do
};

/// @param rig  "" for the readings on any rig and on none.
/// @throws text::BadInput for a cable or rig that is not there, a cable without such readings or with levels alone whose
///         bandwidth is not known, a spectrum without a third-octave; std::domain_error for an impossible seat.
NoiseOfCable noise_of(const Path& campaign, const std::string& cable, const std::string& rig,
                      const hearing::Seat& seat);

std::string noise_text(const NoiseOfCable& noise);

/// {"schema": 1, ...}
std::string noise_json(const NoiseOfCable& noise);

}  // namespace desk
