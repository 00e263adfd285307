#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <sstream>

#include "electrical/csv_rows.h"
#include "electrical/refusal.h"
#include "hearing/noise/seat.h"
#include "hearing/noise/spectrum.h"
#include "hearing/weighting.h"

namespace {

using hearing::NoiseSpectrum;
using hearing::Seat;

/// White noise of so many volts between two frequencies.
NoiseSpectrum white(double volt, double low_hz, double high_hz) {
  const double density = volt / std::sqrt(high_hz - low_hz);
  return {{low_hz, high_hz}, {density, density}};
}

const hearing::BandAtSeat& band_at(const std::vector<hearing::BandAtSeat>& bands, int third_octave) {
  for (const auto& band : bands)
    if (band.third_octave == third_octave) return band;
  throw std::runtime_error("no such band");
}

/// "0.0001 V; 88 dB; 1 m" to its numbers.
std::vector<double> numbers_of(const std::string& text) {
  std::istringstream parts(text);
  std::vector<double> numbers;
  for (std::string part; std::getline(parts, part, ';');) numbers.push_back(std::stod(part));
  return numbers;
}

}  // namespace

// N1, every row. recomputed.
TEST(ThermalNoise, IsThatOfTheFormula) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("hearing/data/noise_spl.csv")) {
    if (row.text("kind") != "thermal") continue;
    const auto given = numbers_of(row.text("input"));
    EXPECT_NEAR(hearing::thermal_noise_volt(1e3 * given[0], 1e3 * given[1], given[2]) * 1e6,
                row.number("value"), 5.1e-10);
    ++rows;
  }
  EXPECT_EQ(rows, 4);
  EXPECT_NEAR(hearing::thermal_noise_volt(1000, 1, 300) * 1e9, 4.070355, 5.1e-7);
  EXPECT_EQ(hearing::thermal_noise_volt(0, 1, 300), 0);
}

// N2, every row. recomputed.
TEST(SeatLevels, AreThoseOfOneLoudspeakerInTheOpen) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("hearing/data/noise_spl.csv")) {
    if (row.text("kind") != "spl") continue;
    const auto given = numbers_of(row.text("input"));
    const Seat seat{given[1], given[2], 1, 0};
    EXPECT_NEAR(hearing::seat_level_db(seat, given[0]), row.number("value"), 5.1e-10);
    EXPECT_NEAR(hearing::seat_volt(seat, row.number("value")), given[0], 1e-9 * given[0]);
    ++rows;
  }
  EXPECT_EQ(rows, 6);
}

// N2: two loudspeakers of the same uncorrelated noise are 10 log10(2) more; a room gain is added.
TEST(SeatLevels, AddLoudspeakersAndTheRoom) {
  const double one = hearing::seat_level_db({88, 2.5, 1, 0}, 1e-4);
  EXPECT_NEAR(hearing::seat_level_db({88, 2.5, 2, 0}, 1e-4), one + 3.0103, 5.1e-5);
  EXPECT_NEAR(hearing::seat_level_db({88, 2.5, 1, 4}, 1e-4), one + 4, 1e-12);
}

// Z5. IEC 60268-5, 20.3 (read in a secondary copy): sensitivity is for 1 W in the rated impedance. 2.83 V is what makes it
// here: 0.004829 dB more into 8 ohm, 3.0103 dB more into 4 ohm. recomputed.
TEST(SeatLevels, TakeTheSensitivityFor2Point83Volts) {
  const auto level_of_1_watt_db = [](double ohm) {
    return hearing::seat_level_db({90, 1, 1, 0}, std::sqrt(ohm));
  };
  EXPECT_NEAR(hearing::seat_level_db({90, 1, 1, 0}, 2.83), 90, 1e-12);
  EXPECT_NEAR(90 - level_of_1_watt_db(8), 0.004829, 5.1e-7);
  EXPECT_NEAR(level_of_1_watt_db(8) - level_of_1_watt_db(4), 3.0103, 5.1e-5);
}

// N4. recomputed.
TEST(SeatLevels, NeedThisVoltage) {
  EXPECT_NEAR(hearing::seat_volt({88, 2.5, 1, 0}, -6) * 1e6, 141.1648, 5.1e-5);
  EXPECT_NEAR(hearing::seat_volt({100, 2.5, 1, 0}, -6) * 1e6, 35.4590, 5.1e-5);
  EXPECT_NEAR(hearing::seat_volt({88, 2.5, 1, 0}, 2.4) * 1e6, 371.3013, 5.1e-5);
}

// H1: ISO 389-7:2019, Table 1 (read in secondary copies that agree), every row of the file that it has.
TEST(HearingThresholds, AreThoseOfTheStandard) {
  const auto rows = csv_rows("hearing/data/threshold_hearing.csv");
  const auto found = hearing::hearing_thresholds();
  std::size_t place = 0;
  for (const CsvRow& row : rows) {
    if (row.text("iso389_7_2019_free").empty() || row.text("iso389_7_2019_diffuse").empty() ||
        place == found.size())
      continue;
    const double centre_hz = electrical::third_octave_centre_hz(found[place].third_octave);
    ASSERT_NEAR(row.number("f_Hz") / centre_hz, 1, 0.02);
    EXPECT_EQ(found[place].free_field_db, row.number("iso389_7_2019_free")) << centre_hz;
    EXPECT_EQ(found[place].diffuse_field_db, row.number("iso389_7_2019_diffuse")) << centre_hz;
    ++place;
  }
  EXPECT_EQ(place, found.size());
}

// N3. recomputed; the margins below either field's threshold.
TEST(BandsAtSeat, OfWhiteNoise) {
  const auto bands = hearing::bands_at_seat({88, 2.5, 1, 0}, white(1e-4, 20, 20000));
  EXPECT_NEAR(band_at(bands, 5).level_db, -23.3687, 5.1e-5);
  EXPECT_NEAR(band_at(bands, 5).margin_db, 17.3687, 5.1e-5);
  EXPECT_NEAR(band_at(bands, 6).level_db, -22.3687, 5.1e-5);
  EXPECT_NEAR(band_at(bands, 6).margin_db, 16.9687, 5.1e-5);
  const auto least = std::min_element(bands.begin(), bands.end(),
                                      [](auto& a, auto& b) { return a.margin_db < b.margin_db; });
  EXPECT_EQ(least->third_octave, 6);
  // The spectrum begins at 20 Hz, within the band of 20 Hz.
  EXPECT_EQ(bands.front().third_octave, -16);
}

TEST(BandsAtSeat, RefuseASpectrumWithoutAWholeBand) {
  EXPECT_EQ(
      refusal([] {
        hearing::bands_at_seat({88, 2.5}, white(1e-4, 100, 110));
      }),
      "a noise spectrum must hold at least one third-octave band from 20 Hz to 16 kHz, got 100 to 110 Hz");
  EXPECT_NE(refusal([] { hearing::bands_at_seat({8, 2.5}, white(1e-4, 20, 20000)); }), "accepted");
  EXPECT_NE(refusal([] { hearing::bands_at_seat({88, 0}, white(1e-4, 20, 20000)); }), "accepted");
  EXPECT_NE(refusal([] { hearing::bands_at_seat({88, 1, 0}, white(1e-4, 20, 20000)); }), "accepted");
}

// By the integrals of 1, 1/f and f^-2.
TEST(NoiseSpectra, HoldTheirPower) {
  EXPECT_NEAR(white(1e-4, 20, 20000).mean_square_volt2({20, 20000}), 1e-8, 1e-20);
  EXPECT_NEAR(white(1e-4, 20, 20000).mean_square_volt2({0.1, 1019}), 1e-8 * 999 / 19980, 1e-20);
  EXPECT_EQ(white(1e-4, 20, 20000).mean_square_volt2({30000, 40000}), 0);
  const NoiseSpectrum pink({20, 200, 2000, 20000}, {1 / std::sqrt(20), 1 / std::sqrt(200),
                                                    1 / std::sqrt(2000), 1 / std::sqrt(20000)});
  EXPECT_NEAR(pink.mean_square_volt2({100, 1000}), std::log(10), 1e-12);
  const NoiseSpectrum steep({10, 1000}, {0.1, 0.001});
  EXPECT_NEAR(steep.mean_square_volt2({10, 1000}), 1 / 10. - 1 / 1000., 1e-13);
  EXPECT_NEAR(steep.density_volt_per_sqrt_hz(100), 0.01, 1e-15);
}

// 1/f between 100 Hz and 1 kHz holds ln(10), whether its points lie close or as far apart as bins may; 0.03 dB is 0.7 %.
TEST(NoiseSpectra, HoldPinkNoiseInBins) {
  for (const double ratio : {1.01, 1.1, 1.29}) {
    std::vector<double> hz, density;
    for (double f = 20; f < 20000; f *= ratio) {
      hz.push_back(f);
      density.push_back(1 / std::sqrt(f));
    }
    const double error_db =
        10 * std::log10(NoiseSpectrum(hz, density).mean_square_volt2({100, 1000}) / std::log(10));
    EXPECT_LT(std::abs(error_db), 0.03) << ratio;
  }
}

// A level in a bin of 1.5 Hz; and third-octaves of white noise, whose levels rise 1 dB each.
TEST(NoiseSpectra, ComeFromLevels) {
  const auto bins = hearing::spectrum_of_levels({20, 20000}, {-120, -120}, {1.5, 1.5});
  EXPECT_NEAR(bins.density_volt_per_sqrt_hz(100), 1e-6 / std::sqrt(1.5), 1e-18);
  std::vector<double> centres, levels, widths;
  for (int n = -17; n <= 13; ++n) {
    const auto band = hearing::third_octave_band(n);
    centres.push_back(electrical::third_octave_centre_hz(n));
    widths.push_back(band.high_hz - band.low_hz);
    levels.push_back(10 * std::log10(1e-14 * widths.back()));
  }
  const auto thirds = hearing::spectrum_of_levels(centres, levels, widths);
  EXPECT_NEAR(thirds.density_volt_per_sqrt_hz(700), 1e-7, 1e-15);
}

// The level of a third-octave is what was read of it, however loud its neighbours are.
TEST(NoiseSpectra, KeepTheLevelsOfThirdOctaves) {
  std::vector<double> centres, levels, widths;
  for (int n = -15; n <= 10; ++n) {
    centres.push_back(electrical::third_octave_centre_hz(n));
    widths.push_back(centres.back() * (std::pow(10, 0.05) - std::pow(10, -0.05)));
    levels.push_back(n == -13 ? -95 : -150 + n);
  }
  const auto kept = hearing::third_octave_levels(hearing::spectrum_of_levels(centres, levels, widths));
  ASSERT_EQ(kept.size(), 24);  // the first and the last are known by half
  for (const auto& band : kept)
    EXPECT_NEAR(band.level_dbv, band.third_octave == -13 ? -95 : -150 + band.third_octave, 1e-9);
}

// By Parseval's theorem: the powers of a tone's bins add up to the tone's power times the window's noise bandwidth in bins.
// Under a Hann window (noise bandwidth 1.5 bins) a tone in a bin's middle stands 1, 1/4, 1/4 in it and its two neighbours;
// without a window (1 bin) in one bin alone.
TEST(NoiseSpectra, KeepThePowerOfHum) {
  constexpr double kSpacing_hz = 1.5, kTone_volt2 = 3e-10;
  const auto measured = [&](const std::vector<double>& shares, double bandwidth_hz) {
    std::vector<double> hz, level_dbv;
    for (int bin = 10; bin <= 2000; ++bin) {
      hz.push_back(bin * kSpacing_hz);
      const auto place = static_cast<std::size_t>(std::abs(bin - 100));
      level_dbv.push_back(10 * std::log10(place < shares.size() ? kTone_volt2 * shares[place] : 1e-18));
    }
    const std::vector<double> widths(hz.size(), bandwidth_hz);
    return hearing::spectrum_of_levels(hz, level_dbv, widths);
  };
  const auto plain = measured({1}, kSpacing_hz), hann = measured({1, 0.25}, 1.5 * kSpacing_hz);
  // 1e-18 V2 in every other bin add 2e-15 V2 at most; the middle between bins is geometric, which widens a bin by 1e-5.
  for (const auto& spectrum : {plain, hann}) {
    EXPECT_NEAR(spectrum.mean_square_volt2({20, 2000}) / kTone_volt2, 1, 2e-5);
    EXPECT_NEAR(spectrum.mean_square_volt2({141, 158.4}) / kTone_volt2, 1, 2e-5);
  }
  const double a_db =
      10 * std::log10(plain.mean_square_volt2({20, 2000}, hearing::a_weighting_db) / kTone_volt2);
  EXPECT_NEAR(a_db, hearing::a_weighting_db(150), 2e-3);
}

TEST(NoiseSpectra, RefuseWhatIsNone) {
  EXPECT_NE(refusal([] { NoiseSpectrum({20}, {1}); }), "accepted");
  EXPECT_NE(refusal([] { NoiseSpectrum({20, 20}, {1, 1}); }), "accepted");
  EXPECT_NE(refusal([] { NoiseSpectrum({20, 30}, {1, 0}); }), "accepted");
  EXPECT_NE(refusal([] { NoiseSpectrum({20, 30}, {1}); }), "accepted");
  EXPECT_EQ(refusal([] {
              hearing::spectrum_of_levels({20, 30}, {-100, -100}, {1.5, 0});
            }),
            "bandwidth_hz must be a finite number above 0, got 0");
}

// W6: ITU-R BS.468-4, Table 1 (read in a secondary copy), every row of the file.
TEST(Itu468, IsTheTable) {
  for (const CsvRow& row : csv_rows("hearing/data/weighting_bs468.csv"))
    EXPECT_NEAR(hearing::itu_468_weighting_db(row.number("f_Hz")), row.number("dB"), 1e-9)
        << row.number("f_Hz");
  EXPECT_NE(refusal([] { hearing::itu_468_weighting_db(30); }), "accepted");
}

// White noise under A: numerical integration of IEC 61672-1's Annex E in SciPy over 20 Hz to 20 kHz, quad to 1e-10.
TEST(WeightedNoise, UnderA) {
  const double volt = hearing::weighted_volt(white(1e-4, 20, 20000), hearing::a_weighting_db, {20, 20000});
  EXPECT_NEAR(20 * std::log10(volt / 1e-4), -2.048271, 1e-5);
}
