// Hearing from numbers, as the calculator shows it. Values: see tests/hearing for their sources.
#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "desk/calculated.h"
#include "electrical/csv_rows.h"
#include "hearing/auditory/published.h"
#include "refusal.h"

namespace desk {
namespace {

/// The quantities of a row of noise_spl.csv, "0.0001 V; 88 dB; 1 m", as words.
std::vector<std::string> typed_quantities(const CsvRow& row) {
  std::vector<std::string> words;
  std::istringstream parts(row.text("input"));
  for (std::string part; std::getline(parts, part, ';');)
    words.push_back("'" + part.substr(part.find_first_not_of(' ')) + "'");
  return words;
}

// N1, every row. recomputed.
TEST(CalculateThermal, IsThatOfTheFormula) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("hearing/data/noise_spl.csv")) {
    if (row.text("kind") != "thermal") continue;
    ++rows;
    const auto typed = typed_quantities(row);
    EXPECT_NEAR(
        amount("thermal " + typed[0] + " --bandwidth " + typed[1] + " --temperature " + typed[2], "noise_uv"),
        row.number("value"), 5.1e-10);
  }
  EXPECT_EQ(rows, 4);
  EXPECT_NEAR(amount("thermal 1kohm --temperature 300K", "density_nv_per_sqrt_hz"), 4.070355, 5.1e-7);
  EXPECT_NEAR(amount("thermal 1kohm --temperature 20C", "noise_uv"), 0.569025310, 5.1e-10);
}

// N2, every row: one loudspeaker in the open; two are 10 log10(2) more. recomputed.
TEST(CalculateSeat, HasTheLevelOfANoise) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("hearing/data/noise_spl.csv")) {
    if (row.text("kind") != "spl") continue;
    ++rows;
    const auto typed = typed_quantities(row);
    const std::string seat =
        "seat --noise " + typed[0] + " --sensitivity " + typed[1] + " --distance " + typed[2];
    EXPECT_NEAR(amount(seat + " --loudspeakers 1", "level_db"), row.number("value"), 5.1e-10);
    EXPECT_NEAR(amount(seat, "level_db"), row.number("value") + 3.0103, 5.1e-5);
    EXPECT_NEAR(amount(seat + " --loudspeakers 1 --room-gain 4dB", "level_db"), row.number("value") + 4,
                5.1e-10);
  }
  EXPECT_EQ(rows, 6);
}

// N3: white noise of 100 uV over 20 Hz to 20 kHz; thresholds of ISO 389-7:2019. recomputed. Its A-weighting:
// numerical integration of IEC 61672-1's Annex E in SciPy.
TEST(CalculateSeat, SetsBandsAgainstTheirThresholds) {
  const Figures found = calculated("seat --noise 100uV --sensitivity 88dB --distance 2.5m --loudspeakers 1");
  EXPECT_NEAR(amount(found, "worst_band_hz"), 3981.07, 0.01);
  EXPECT_NEAR(amount(found, "worst_margin_db"), 16.9687, 5.1e-5);
  EXPECT_EQ(found.figures.back().note, "dB; below the published threshold of that band");
  EXPECT_EQ(std::get<long long>(found.at("bands_above")), 0);
  const auto& centre = series(found, "centre_hz");
  const auto at =
      std::find_if(centre.begin(), centre.end(), [](double hz) { return hz > 3000; }) - centre.begin();
  EXPECT_NEAR(series(found, "band_level_db").at(at), -23.3687, 5.1e-5);
  EXPECT_EQ(series(found, "threshold_db").at(at), -6);
  EXPECT_NEAR(series(found, "margin_db").at(at), 17.3687, 5.1e-5);
  EXPECT_NEAR(amount(found, "level_dba") - amount(found, "level_db"), -2.048271, 1e-5);
}

// 17 dB more takes the band of 4 kHz, 16.9687 dB below, over its threshold, and no other (N3: 17.3687 at 3150 Hz).
TEST(CalculateSeat, SaysWhatIsAboveAThreshold) {
  const Figures found = calculated("seat --noise 100uV --sensitivity 105dB --distance 2.5m --loudspeakers 1");
  EXPECT_EQ(std::get<long long>(found.at("bands_above")), 1);
  EXPECT_EQ(found.figures.back().note, "dB; at or above the published threshold of that band");
}

// N4. recomputed.
TEST(CalculateTone, NeedsThisVoltage) {
  EXPECT_NEAR(amount("tone --level -6dB --sensitivity 88dB --distance 2.5m", "voltage_uv"), 141.1648, 5.1e-5);
  EXPECT_NEAR(amount("tone --level -6dB --sensitivity 100dB --distance 2,5m", "voltage_uv"), 35.4590, 5.1e-5);
  EXPECT_NEAR(amount("tone --level 2.4dB --sensitivity 88dB --distance 2.5m", "voltage_uv"), 371.3013,
              5.1e-5);
  EXPECT_NEAR(amount("tone --frequency 3150Hz --sensitivity 88dB --distance 2.5m", "voltage_uv"), 141.1648,
              5.1e-5);
}

// H1: ISO 389-7:2019, Table 1: the lower field, at the nominal frequencies of its bands.
TEST(CalculateTone, TakesTheThresholdOfItsBand) {
  int rows = 0;
  for (const CsvRow& row : csv_rows("hearing/data/threshold_hearing.csv")) {
    if (row.text("iso389_7_2019_free").empty() || row.text("iso389_7_2019_diffuse").empty()) continue;
    ++rows;
    EXPECT_EQ(
        amount("tone --frequency " + row.text("f_Hz") + "Hz --sensitivity 88dB --distance 1m", "level_db"),
        std::min(row.number("iso389_7_2019_free"), row.number("iso389_7_2019_diffuse")))
        << row.text("f_Hz");
  }
  EXPECT_EQ(rows, 30);
}

// H5: the fit of Jesteadt, Wier & Green 1977 (read in a secondary copy). recomputed.
TEST(CalculateJustNoticeable, HasTheFitAndTheListBesideIt) {
  EXPECT_NEAR(amount("just-noticeable 40dB", "difference_db"), 0.929138, 5.1e-7);
  EXPECT_NEAR(amount("just-noticeable 80dB", "difference_db"), 0.503443, 5.1e-7);
  const Figures found = calculated("just-noticeable 40dB");
  std::multiset<double> published;  // H5 and H7
  for (int i = 1; i <= 6; ++i) published.insert(amount(found, "published_" + std::to_string(i)));
  EXPECT_EQ(published, (std::multiset<double>{0.3, 0.41, 0.50, 1.5, 3, 5}));
  EXPECT_NE(found.figures.at(2).note.find("a university course text (read)"), std::string::npos);
  EXPECT_EQ(found.at("share_right"), Value());
  EXPECT_EQ(found.figures.back().note, hearing::kNoSlope);
}

TEST(CalculateHearing, NeverSaysInaudible) {
  for (const Topic& topic : topics())
    for (const Calculation& calculation : topic.calculations) {
      if (topic.title != "What reaches the ear, from numbers") continue;
      std::string example = calculation.example;
      std::replace(example.begin(), example.end(), '"', '\'');
      EXPECT_EQ(figures_text(calculated(calculation.name + " " + example)).find("audible"),
                std::string::npos);
    }
}

TEST(CalculateHearing, RefusesWhatCannotBe) {
  EXPECT_EQ(
      refusal([] { calculated("seat --noise 1uV --sensitivity 88dB --distance 2m --from 1kHz --to 900Hz"); }),
      "from must be below to, got \"1kHz\" and \"900Hz\"");
  EXPECT_EQ(
      refusal(
          [] { calculated("seat --noise 1uV --sensitivity 88dB --distance 2m --from 100Hz --to 110Hz"); }),
      "a noise spectrum must hold at least one third-octave band from 20 Hz to 16 kHz, got 100 to 110 Hz");
  EXPECT_EQ(refusal([] { calculated("seat --noise 1uV --sensitivity 8dB --distance 2m"); }),
            "sensitivity_db must be from 40 to 130, got 8");
  EXPECT_EQ(
      refusal([] { calculated("tone --frequency 30kHz --sensitivity 88dB --distance 2m"); }),
      "frequency must be in a third-octave band from 20Hz to 16kHz, got \"30kHz\"; give --level instead");
  EXPECT_EQ(refusal([] { calculated("tone --sensitivity 88dB --distance 2m"); }),
            "exactly one of --frequency or --level must be given, got 0\nsee blindswap calc tone --help");
  EXPECT_EQ(refusal([] { calculated("just-noticeable 120dB"); }),
            "sensation_level_db must be from 0 to 100, got 120");
  EXPECT_NE(
      refusal([] { calculated("thermal 1kohm --temperature -300C"); }).find("temperature_kelvin must be"),
      std::string::npos);
}

}  // namespace
}  // namespace desk
