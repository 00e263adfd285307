#pragma once

#include <optional>
#include <vector>

#include "hearing/noise/spectrum.h"

namespace hearing {

/// Loudspeakers and a listener. Where no room gain is stated the level falls as 1/r, as in the open: a room falls off less,
/// so that 1/r understates the level at the seat and is NOT the cautious choice.
struct Seat {
  double sensitivity_db;    ///< dB SPL at 1 m for 2.83 V, 40 to 130
  double distance_m;        ///< above 0
  int loudspeakers = 2;     ///< 1 to 100; equal, their noise uncorrelated
  double room_gain_db = 0;  ///< -40 to 40: how much more than 1/r the room leaves at the seat
};

/// Sound pressure level at the seat of a voltage at the terminals of each loudspeaker:
/// S + 20 log10(V/2.83) - 20 log10(r) + 10 log10(n) + room gain.
/// @param volt  above 0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 100 uV, 88 dB, 1 m, one loudspeaker: -1.04 dB SPL.
double seat_level_db(const Seat& seat, double volt);

/// The voltage at the terminals that makes this level at the seat: the inverse.
double seat_volt(const Seat& seat, double level_db);

/// Threshold of hearing of a tone or a third-octave band, listened to with both ears, young healthy listeners.
struct HearingThreshold {
  int third_octave;  ///< 0 is 1 kHz
  double free_field_db;
  double diffuse_field_db;
};

/// 20 Hz to 16 kHz. Source: ISO 389-7:2019, Table 1 (read in secondary copies that agree).
std::vector<HearingThreshold> hearing_thresholds();

/// A third-octave band at the seat beside the threshold of hearing there.
struct BandAtSeat {
  int third_octave;
  double centre_hz;
  double level_db;
  double threshold_db;  ///< the lower of the two fields
  double margin_db;     ///< threshold less level: above 0 where the band is below the threshold
};

/// Every third-octave band that lies within the spectrum's frequencies, 20 Hz to 16 kHz.
///
/// A band below its threshold is below the published threshold for that band alone: bands are not added up, and real rooms
/// have noise of their own.
/// @throws std::domain_error  naming the argument; if no band lies within the spectrum.
std::vector<BandAtSeat> bands_at_seat(const Seat& seat, const NoiseSpectrum& noise);

}  // namespace hearing
