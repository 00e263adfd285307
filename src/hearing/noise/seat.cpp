#include "hearing/noise/seat.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "electrical/argument.h"

namespace hearing {
namespace {

constexpr double kReferenceVolt = 2.83;

/// ISO 389-7:2019, Table 1, third-octaves from 20 Hz: free field, diffuse field.
constexpr double kThresholdRows[][2] = {
    {78.1, 78.1}, {68.7, 68.7}, {59.5, 59.5}, {51.1, 51.1}, {44.0, 44.0}, {37.5, 37.5},
    {31.5, 31.5}, {26.5, 26.5}, {22.1, 22.1}, {17.9, 17.9}, {14.4, 14.4}, {11.4, 11.4},
    {8.6, 8.4},   {6.2, 5.8},   {4.4, 3.8},   {3.0, 2.1},   {2.2, 1.0},   {2.4, 0.8},
    {3.5, 1.9},   {1.7, 0.5},   {-1.3, -1.5}, {-4.2, -3.1}, {-6.0, -4.0}, {-5.4, -3.8},
    {-1.5, -1.8}, {6.0, 2.5},   {12.6, 6.8},  {13.9, 8.4},  {12.3, 14.4}, {40.2, 43.7},
};
constexpr int kFirstThirdOctave389 = -17;

double gain_db(const Seat& seat) {
  electrical::require_within("sensitivity_db", seat.sensitivity_db, 40, 130);
  electrical::require_positive("distance_m", seat.distance_m);
  electrical::require_within("loudspeakers", seat.loudspeakers, 1, 100);
  electrical::require_within("room_gain_db", seat.room_gain_db, -40, 40);
  return seat.sensitivity_db - 20 * std::log10(seat.distance_m) + 10 * std::log10(seat.loudspeakers) +
         seat.room_gain_db;
}

}  // namespace

double seat_level_db(const Seat& seat, double volt) {
  electrical::require_positive("volt", volt);
  return gain_db(seat) + 20 * std::log10(volt / kReferenceVolt);
}

double seat_volt(const Seat& seat, double level_db) {
  electrical::require_within("level_db", level_db, -400, 400);
  return kReferenceVolt * std::pow(10, (level_db - gain_db(seat)) / 20);
}

std::vector<HearingThreshold> hearing_thresholds() {
  std::vector<HearingThreshold> all;
  for (const auto& [free_field_db, diffuse_field_db] : kThresholdRows)
    all.push_back({kFirstThirdOctave389 + static_cast<int>(all.size()), free_field_db, diffuse_field_db});
  return all;
}

std::vector<BandAtSeat> bands_at_seat(const Seat& seat, const NoiseSpectrum& noise) {
  std::vector<BandAtSeat> bands;
  const auto thresholds = hearing_thresholds();
  for (const BandLevel& band : third_octave_levels(noise)) {
    const auto threshold = std::ranges::find(thresholds, band.third_octave, &HearingThreshold::third_octave);
    if (threshold == thresholds.end()) continue;
    const double level_db = seat_level_db(seat, std::pow(10, band.level_dbv / 20));
    const double threshold_db = std::min(threshold->free_field_db, threshold->diffuse_field_db);
    bands.push_back({band.third_octave, band.centre_hz, level_db, threshold_db, threshold_db - level_db});
  }
  if (bands.empty())
    throw std::domain_error(
        "a noise spectrum must hold at least one third-octave band from 20 Hz to 16 kHz, got " +
        electrical::number_text(noise.band().low_hz) + " to " +
        electrical::number_text(noise.band().high_hz) + " Hz");
  return bands;
}

}  // namespace hearing
