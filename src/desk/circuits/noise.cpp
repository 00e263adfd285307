#include "desk/circuits/noise.h"

#include <algorithm>
#include <cmath>

#include "desk/circuits/measured.h"
#include "desk/shelf/circuit.h"
#include "desk/shelf/one_state.h"
#include "hearing/weighting.h"
#include "text/error.h"
#include "text/number.h"

namespace desk {
namespace {

constexpr double kRoomKelvin = 293;
constexpr electrical::Band kItu468Band{31.5, 20000};

/// Spectra scatter: so much below the thermal noise is no contradiction yet. Common practice, no source.
constexpr double kThermalScatter_db = 1;

std::optional<hearing::NoiseSpectrum> spectrum_of(const imported::Reading& reading) {
  return hearing::spectrum_of_columns(*column(reading, "frequency_hz"),
                                      column(reading, "density_volt_per_sqrt_hz"),
                                      column(reading, "level_dbv"), column(reading, "bandwidth_hz"));
}

std::string without_bandwidth(const store::NumberedReading& each, int free_repeat) {
  return named_reading(each) +
         " holds levels without the bandwidth that each was measured in\n"
         "import the file again with --bandwidth 1.46Hz (its own) and --repeat " +
         std::to_string(free_repeat) + ", then supersede reading " + std::to_string(each.number) + " by it";
}

/// The resistance whose thermal noise stands at the load's terminals: source and load side by side, where both are known.
double noisy_ohm(const findings::RigEvidence& rig, double frequency_hz) {
  const std::complex<double> source = electrical::impedance_ohm(*rig.source, frequency_hz);
  if (!rig.load || source == 0.0) return source.real();
  const electrical::Band known = electrical::known_band(*rig.load);
  if (frequency_hz < known.low_hz || frequency_hz > known.high_hz) return source.real();
  return (1.0 / (1.0 / source + 1.0 / electrical::impedance_ohm(*rig.load, frequency_hz))).real();
}

ThermalNoise thermal_beside(const hearing::NoiseSpectrum& spectrum,
                            const std::vector<hearing::BandAtSeat>& bands, const findings::RigEvidence& rig) {
  ThermalNoise thermal;
  if (rig.source && rig.source->resistance_ohm > 0) {
    thermal.resistance_ohm = rig.source->resistance_ohm;
    thermal.is_of_the_rig = true;
    double least_db = HUGE_VAL;
    for (const hearing::BandAtSeat& each : bands) {
      const electrical::Band band = hearing::third_octave_band(each.third_octave);
      const double thermal_volt = hearing::thermal_noise_volt(noisy_ohm(rig, each.centre_hz),
                                                              band.high_hz - band.low_hz, kRoomKelvin);
      least_db = std::min(least_db,
                          10 * std::log10(spectrum.mean_square_volt2(band)) - 20 * std::log10(thermal_volt));
    }
    thermal.least_above_db = least_db;
  }
  thermal.density_volt_per_sqrt_hz = hearing::thermal_noise_volt(thermal.resistance_ohm, 1, kRoomKelvin);
  return thermal;
}

void add_cautions(NoiseAtSeat& noise, const std::string& rig_name, bool line_level) {
  const std::string which = "reading " + std::to_string(noise.number);
  if (noise.thermal.least_above_db && *noise.thermal.least_above_db < -kThermalScatter_db)
    noise.cautions.push_back(which + " is up to " + text::fixed(-*noise.thermal.least_above_db, 1) +
                             " dB below the thermal noise of rig " + rig_name +
                             ": it cannot be right; check its unit, its bandwidth, the rig's source");
  if (line_level)
    noise.cautions.push_back(which + ": rig " + rig_name +
                             " is at line level, and the gain of the amplifier behind it is not counted; add "
                             "it to --sensitivity");
}

NoiseAtSeat at_seat(const store::Campaign& campaign, const store::NumberedReading& each,
                    const hearing::NoiseSpectrum& spectrum, const hearing::Seat& seat) {
  const imported::Reading& reading = each.reading;
  NoiseAtSeat noise;
  noise.number = each.number;
  noise.words = named_reading(each);
  noise.feature = reading.feature;
  noise.state = reading.state;
  noise.bands = hearing::bands_at_seat(seat, spectrum);
  noise.heard = electrical::overlap(spectrum.band(), electrical::kAudioBand);
  noise.unweighted_volt = std::sqrt(spectrum.mean_square_volt2(noise.heard));
  noise.a_weighted_volt = hearing::weighted_volt(spectrum, hearing::a_weighting_db, noise.heard);
  if (electrical::common_band(spectrum.band(), kItu468Band))
    noise.itu_468_weighted_volt =
        hearing::weighted_volt(spectrum, hearing::itu_468_weighting_db, kItu468Band);
  noise.level_db = hearing::seat_level_db(seat, noise.unweighted_volt);
  noise.a_weighted_level_db = hearing::seat_level_db(seat, noise.a_weighted_volt);
  const auto rig = reading.rig.empty() ? findings::RigEvidence{} : rig_evidence(campaign, reading.rig);
  noise.thermal = thermal_beside(spectrum, noise.bands, rig);
  add_cautions(noise, reading.rig,
               !reading.rig.empty() && rig_named(campaign, reading.rig).kind == "line level");
  return noise;
}

/// Whether two readings are of one feature, under circumstances that do not differ otherwise.
bool belong_together(const imported::Reading& one, const imported::Reading& other) {
  return !one.feature.empty() && one.feature == other.feature && one.rig == other.rig &&
         one.piece == other.piece && one.condition == other.condition && one.repeat == other.repeat;
}

/// Refuses an impossible seat before any reading is looked at.
void check_seat(const hearing::Seat& seat) { hearing::seat_level_db(seat, 1); }

}  // namespace

const hearing::BandAtSeat& worst_band(const NoiseAtSeat& noise) {
  return *std::min_element(noise.bands.begin(), noise.bands.end(), [](const auto& one, const auto& other) {
    return one.margin_db < other.margin_db;
  });
}

int bands_at_or_above(const NoiseAtSeat& noise) {
  return static_cast<int>(std::count_if(noise.bands.begin(), noise.bands.end(),
                                        [](const auto& band) { return band.margin_db <= 0; }));
}

NoiseOfCable noise_of(const Path& file, const std::string& cable, const std::string& rig,
                      const hearing::Seat& seat) {
  const store::Campaign campaign = store::Campaign::open(file);
  const auto readings = measured(campaign, cable, "noise", rig,
                                 "import one: frequency_Hz,density_nV_per_sqrtHz, or frequency_Hz,level_dBV "
                                 "with --bandwidth");
  check_seat(seat);
  NoiseOfCable noise{cable, seat, {}, {}};
  int free_repeat = 1;
  for (const store::NumberedReading& each : readings)
    free_repeat = std::max(free_repeat, each.reading.repeat + 1);
  std::vector<const imported::Reading*> firsts;  // of the groups
  for (const store::NumberedReading& each : readings) {
    std::optional<NoiseAtSeat> one;
    try {
      if (const auto spectrum = spectrum_of(each.reading)) one = at_seat(campaign, each, *spectrum, seat);
    } catch (const std::domain_error& error) {
      throw text::BadInput(named_reading(each) + ": " + error.what());
    }
    if (!one) {
      noise.left_out.push_back(without_bandwidth(each, free_repeat++));
      continue;
    }
    const auto together = [&](const imported::Reading* first) {
      return belong_together(*first, each.reading);
    };
    const auto place =
        static_cast<std::size_t>(std::find_if(firsts.begin(), firsts.end(), together) - firsts.begin());
    if (place == firsts.size()) {
      firsts.push_back(&each.reading);
      noise.groups.emplace_back();
    }
    noise.groups[place].push_back(*std::move(one));
  }
  if (noise.groups.empty()) throw text::BadInput(noise.left_out.front());
  return noise;
}

}  // namespace desk
