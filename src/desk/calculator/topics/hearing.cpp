#include <algorithm>
#include <cmath>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "hearing/auditory/published.h"
#include "hearing/noise/seat.h"
#include "hearing/weighting.h"
#include "text/error.h"

namespace desk {
namespace {

using text::Unit;

constexpr double kZeroCelsiusInKelvin = 273.15;

hearing::Seat seat_of(const Given& given, int loudspeakers) {
  return {given.quantity("sensitivity", Unit::decibel), given.positive_quantity("distance", Unit::metre),
          loudspeakers, given.quantity("room-gain", Unit::decibel)};
}

/// White noise of this voltage between --from and --to.
hearing::NoiseSpectrum white_noise(const Given& given, double volt) {
  const double from_hz = given.positive_quantity("from", Unit::hertz),
               to_hz = given.positive_quantity("to", Unit::hertz);
  if (from_hz >= to_hz)
    throw text::BadInput("from must be below to, got \"" + given.word("from") + "\" and \"" +
                         given.word("to") + "\"");
  const double density = volt / std::sqrt(to_hz - from_hz);
  return {{from_hz, to_hz}, {density, density}};
}

Series band_series(const std::string& key, const std::string& label,
                   const std::vector<hearing::BandAtSeat>& bands, double hearing::BandAtSeat::*member) {
  Series series{key, label, {}};
  for (const hearing::BandAtSeat& band : bands) series.values.push_back(band.*member);
  return series;
}

Figures seat_figures(const Given& given) {
  const hearing::Seat seat = seat_of(given, given.count("loudspeakers", 1, 100));
  const double volt = given.positive_quantity("noise", Unit::volt);
  const hearing::NoiseSpectrum noise = white_noise(given, volt);
  const auto bands = hearing::bands_at_seat(seat, noise);
  const auto worst = *std::min_element(bands.begin(), bands.end(), [](const auto& one, const auto& other) {
    return one.margin_db < other.margin_db;
  });
  const auto above =
      std::count_if(bands.begin(), bands.end(), [](const auto& band) { return band.margin_db <= 0; });
  const std::string which = worst.margin_db > 0 ? "below" : "at or above";
  return {
      "noise at the seat, from white noise at the loudspeakers' terminals",
      {{"noise_uv", "noise", 1e6 * volt, "uV, from " + given.word("from") + " to " + given.word("to")},
       {"sensitivity_db", "sensitivity", seat.sensitivity_db, "dB SPL at 1 m for 2.83 V"},
       {"distance_m", "distance", seat.distance_m, "m; 1/r, which understates the level in a room"},
       {"loudspeakers", "loudspeakers", static_cast<long long>(seat.loudspeakers), "noise of their own each"},
       {"room_gain_db", "room gain", seat.room_gain_db, "dB more than 1/r"},
       {"level_db", "level at the seat", hearing::seat_level_db(seat, volt), "dB SPL, the whole noise"},
       {"level_dba", "A-weighted",
        hearing::seat_level_db(seat, hearing::weighted_volt(noise, hearing::a_weighting_db, noise.band())),
        "dB(A) SPL"},
       {"bands", "third-octave bands", std::ssize(bands), "that lie within the noise, 20 Hz to 16 kHz"},
       {"bands_above", "at or above their thresholds", static_cast<long long>(above),
        "published thresholds of hearing, ISO 389-7"},
       {"worst_band_hz", "worst band", worst.centre_hz, "Hz"},
       {"worst_margin_db", "its margin", worst.margin_db,
        "dB; " + which + " the published threshold of that band"}},
      {band_series("centre_hz", "band, Hz", bands, &hearing::BandAtSeat::centre_hz),
       band_series("band_level_db", "level, dB SPL", bands, &hearing::BandAtSeat::level_db),
       band_series("threshold_db", "threshold, dB SPL", bands, &hearing::BandAtSeat::threshold_db),
       band_series("margin_db", "margin, dB", bands, &hearing::BandAtSeat::margin_db)}};
}

/// The threshold in the third-octave band of --frequency.
hearing::HearingThreshold threshold_near(const Given& given) {
  const double frequency_hz = given.positive_quantity("frequency", Unit::hertz);
  const auto all = hearing::hearing_thresholds();
  const auto near = [&](const hearing::HearingThreshold& threshold) {
    const electrical::Band band = hearing::third_octave_band(threshold.third_octave);
    return band.low_hz <= frequency_hz && frequency_hz < band.high_hz;
  };
  const auto found = std::find_if(all.begin(), all.end(), near);
  if (found == all.end())
    throw text::BadInput("frequency must be in a third-octave band from 20Hz to 16kHz, got \"" +
                         given.word("frequency") + "\"; give --level instead");
  return *found;
}

Figures tone_figures(const Given& given) {
  const hearing::Seat seat = seat_of(given, 1);
  const bool by_level = given.only_one({"frequency", "level"}) == "level";
  Figures figures{"voltage that a tone at the seat needs at a loudspeaker's terminals",
                  {{"sensitivity_db", "sensitivity", seat.sensitivity_db, "dB SPL at 1 m for 2.83 V"},
                   {"distance_m", "distance", seat.distance_m, "m; 1/r, so that less may do in a room"},
                   {"room_gain_db", "room gain", seat.room_gain_db, "dB more than 1/r"}}};
  double level_db = 0;
  if (by_level) {
    level_db = given.quantity("level", Unit::decibel);
    figures.add("level_db", "level at the seat", level_db, "dB SPL");
  } else {
    const hearing::HearingThreshold threshold = threshold_near(given);
    level_db = std::min(threshold.free_field_db, threshold.diffuse_field_db);
    figures.add("frequency_hz", "frequency", given.quantity("frequency", Unit::hertz), "Hz");
    figures.add("level_db", "level at the seat", level_db,
                "dB SPL: published threshold of its third-octave band, ISO 389-7, the lower field");
  }
  figures.add("voltage_uv", "voltage", 1e6 * hearing::seat_volt(seat, level_db), "uV, of one loudspeaker");
  return figures;
}

Figures thermal_figures(const Given& given) {
  const double ohm = given.positive_quantity("resistance", Unit::ohm),
               bandwidth_hz = given.positive_quantity("bandwidth", Unit::hertz),
               kelvin = given.quantity("temperature", Unit::celsius) + kZeroCelsiusInKelvin;
  const double volt = hearing::thermal_noise_volt(ohm, bandwidth_hz, kelvin);
  return {"thermal noise of a resistance",
          {{"resistance_ohm", "resistance", ohm, "ohm"},
           {"bandwidth_hz", "bandwidth", bandwidth_hz, "Hz"},
           {"temperature_kelvin", "temperature", kelvin, "K"},
           {"noise_uv", "noise", 1e6 * volt, "uV, r.m.s.; nothing of this resistance is quieter"},
           {"noise_dbv", "the same", 20 * std::log10(volt), "dB re 1 V"},
           {"density_nv_per_sqrt_hz", "density", 1e9 * hearing::thermal_noise_volt(ohm, 1, kelvin),
            "nV/sqrt(Hz)"}}};
}

Figures just_noticeable_figures(const Given& given) {
  const double sensation_db = given.quantity("sensation", Unit::decibel);
  Figures figures{
      "level difference of a tone that is just noticed",
      {{"sensation_level_db", "sensation level", sensation_db, "dB above the listener's own threshold"},
       {"difference_db", "just noticed", hearing::just_noticeable_tone_level_db(sensation_db),
        "dB; fit of Jesteadt, Wier & Green 1977 to tones"}}};
  int published = 0;
  for (const hearing::PublishedThreshold& threshold : hearing::published_thresholds())
    figures.add("published_" + std::to_string(++published),
                threshold.concerns == hearing::Concerns::level ? "published, level" : "published, resonance",
                threshold.size_db,
                "dB; " + std::string(threshold.what) + "; " + std::string(threshold.source));
  figures.add("share_right", "share right from it", Value(), std::string(hearing::kNoSlope));
  return figures;
}

const Argument sensitivity_argument{"--sensitivity", "At 1 m for 2.83 V: 88dB"};
const Argument distance_argument{"--distance", "From loudspeaker to seat: 2.5m"};
const Argument room_gain_argument{"--room-gain", "How much more than 1/r the room leaves at the seat: 4dB",
                                  "0dB"};

}  // namespace

Topic hearing_topic() {
  return {"What reaches the ear, from numbers",
          {{"seat",
            "Level at the seat of a noise voltage at the loudspeakers, against thresholds of hearing",
            "--noise 100uV --sensitivity 88dB --distance 2.5m",
            {{"--noise", "White noise at the terminals of each loudspeaker: 100uV"},
             sensitivity_argument,
             distance_argument,
             {"--loudspeakers", "How many, alike", "2"},
             room_gain_argument,
             {"--from", "Where the noise's band begins", "20Hz"},
             {"--to", "Where it ends", "20kHz"}},
            seat_figures},
           {"tone",
            "Voltage at a loudspeaker that brings a tone to the threshold of hearing, or to a level",
            "--frequency 3150Hz --sensitivity 88dB --distance 2.5m",
            {{"--frequency", "Of the tone: 3150Hz, to its published threshold. This or --level", ""},
             {"--level", "Sound pressure level at the seat: -6dB", ""},
             sensitivity_argument,
             distance_argument,
             room_gain_argument},
            tone_figures},
           {"thermal",
            "Thermal noise of a resistance over a bandwidth",
            "1kohm --bandwidth 20kHz --temperature 300K",
            {{"resistance", "Of a cable, a source, a resistor: 1kohm"},
             {"--bandwidth", "Over which it is measured", "20kHz"},
             {"--temperature", "Of the resistance: 20C, 300K", "20C"}},
            thermal_figures},
           {"just-noticeable",
            "Level difference of a tone that is just noticed, beside published thresholds",
            "40dB",
            {{"sensation", "Level above the listener's own threshold, 0dB to 100dB"}},
            just_noticeable_figures}}};
}

}  // namespace desk
