// Skin effect and constants from a cable's construction, and interconnects.
#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <numbers>

#include "desk/prediction_campaign.h"
#include "electrical/csv_rows.h"
#include "refusal.h"
#include "text/number.h"

namespace {

using Construction = std::vector<std::pair<std::string, std::string>>;

/// H_dB of a row of the golden cases.
double golden_db(const std::string& name, const std::string& frequency_hz) {
  for (const CsvRow& row : csv_rows("electrical/data/golden_line_cases.csv"))
    if (row.text("case") == name && row.text("f_Hz") == frequency_hz) return row.number("H_dB");
  throw std::runtime_error("no such golden row");
}

const Construction parallel_pair{{"geometry", "parallel pair"}};

}  // namespace

// T2, cases B2 and B3: ten metres of two solid wires of 0.75 and 4 mm2 of copper, with skin effect, into 4 ohm behind 0.05
// ohm. recomputed in binary128. Inductance 0.6 and 0.5 uH/m and 100 nH/m within the conductors.
TEST(PredictedSkinEffect, AgreesWithTheGoldenRows) {
  PredictionCampaign campaign(other_rig("0.05ohm", "4ohm"));
  campaign.cable("B2", parallel_pair);
  campaign.cable("B3", {{"geometry", "twisted pair"}});
  const auto loop_ohm = [](double area_mm2) { return text::shortest(2.0 / 58 / area_mm2 * 10); };
  campaign.table("cable,length_m,resistance_ohm,inductance_uH,capacitance_pF\nB2,10," + loop_ohm(0.75) +
                 ",7,500\nB3,10," + loop_ohm(4) + ",6,500\n");
  const desk::Prediction found = campaign.predicted("B2", "B3");
  EXPECT_NEAR(found.difference_db.front(), golden_db("B3", "20") - golden_db("B2", "20"), 4e-9);
  EXPECT_NEAR(found.difference_db.back(), golden_db("B3", "20000") - golden_db("B2", "20000"), 4e-9);
  EXPECT_EQ(campaign.json("B2", "B3").at("second").at("round_conductors"), 2);
  EXPECT_SAYS(campaign.words("B2", "B3"),
              "resistance, inductance and capacitance as read; skin effect of two round conductors included, "
              "proximity "
              "effect left out");
}

// T2: a pair of 4 mm2 with 0.6 uH/m at direct current has 0.577932785 uH/m at 20 kHz, as printed. recomputed.
TEST(PredictedSkinEffect, CarriesAnInductanceToDirectCurrent) {
  PredictionCampaign campaign(golden_hall());
  campaign.cable("pair", parallel_pair);
  campaign.cable("repeated", parallel_pair);
  const std::string header =
                        "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF,frequency_Hz,repeat\n",
                    loop_ohm = text::shortest(2.0 / 58 / 4);
  campaign.table(header + "pair,1," + loop_ohm + ",0.577932785,50,20000,1\nrepeated,1," + loop_ohm +
                 ",0.577932785,50,20000,1\nrepeated,1," + loop_ohm + ",0.6,50,1,2\n");
  const auto found = campaign.json("pair", "repeated");
  EXPECT_NEAR(found.at("first").at("inductance_henry").get<double>(), 0.6e-6, 1e-15);
  EXPECT_NEAR(found.at("second").at("inductance_henry").get<double>(), 0.6e-6, 1e-15);
  const std::string words = campaign.words("pair", "repeated");
  EXPECT_SAYS(words, "as read (the inductance carried to direct current); skin effect of two round");
  // At 20 kHz it would have 1.46 times its resistance, T2 as printed: 0.012595543 of 0.008620690 ohm.
  EXPECT_SAYS(words, "caution: pair: its resistance counts as that of direct current; if it too was read");
}

TEST(PredictedSkinEffect, IsLeftOutAndSaysWhy) {
  PredictionCampaign campaign(golden_hall());
  campaign.cable("quad", {{"geometry", "star quad"}});
  campaign.cable("flat", parallel_pair);
  campaign.cable("bare-coax", {{"geometry", "coaxial"}});
  campaign.cable("odd-coax", {{"geometry", "coaxial"}, {"cross-section", "0.1mm2"}});
  campaign.table(
      "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF\nquad,3,0.04,1.2,300\nflat,3,0.04,0.29,"
      "900\n"
      "bare-coax,3,0.04,0.6,300\nodd-coax,3,0.04,0.6,300\n");
  const std::string constant = "no skin effect, the same resistance at all frequencies: ";
  EXPECT_SAYS(campaign.words("quad", "flat"), constant + "none is calculated for geometry \"star quad\"");
  // Two round conductors have 100 nH/m within them, 0.3 uH of three metres.
  EXPECT_SAYS(campaign.words("quad", "flat"), constant + "its inductance is less than round conductors have");
  EXPECT_SAYS(campaign.words("quad", "bare-coax"),
              constant + "cross-section or metal of its inner conductor not known");
  // 0.1 mm2 of copper: 172 mohm/m.
  EXPECT_SAYS(campaign.words("quad", "odd-coax"),
              constant + "its inner conductor would by construction alone");
}

// G1 (tests/electrical/construction, recomputed): 578.637932 nH/m outside, 48.071946 pF/m; 50 nH/m within each conductor
// (Rosa & Grover 1916); copper of 58 MS/m, IEC 60028.
TEST(PredictedConstruction, OfAPairWithoutReadings) {
  PredictionCampaign campaign(golden_hall());
  Construction construction = parallel_pair;
  for (const auto& [name, value] : Construction{
           {"cross-section", "2.5mm2"}, {"spacing", "4mm"}, {"permittivity", "2.5"}, {"length", "3m"}})
    construction.emplace_back(name, value);
  campaign.cable("built", construction);
  campaign.cable("read", construction);
  campaign.table("cable,length_m,resistance_ohm\nread,2,0.1\n");
  const auto found = campaign.json("built", "read");
  const auto &first = found.at("first"), &second = found.at("second");
  EXPECT_NEAR(first.at("loop_resistance_ohm").get<double>(), 3 * 2 / 58.0 / 2.5, 1e-12);
  EXPECT_NEAR(first.at("inductance_henry").get<double>(), 3 * 678.637932e-9, 1e-15);
  EXPECT_NEAR(first.at("capacitance_farad").get<double>(), 3 * 48.071946e-12, 3e-18);
  EXPECT_EQ(first.at("resistance_from"), "construction");
  // What was read wins: the resistance, and the length of 2 m.
  EXPECT_EQ(second.at("loop_resistance_ohm"), 0.1);
  EXPECT_EQ(second.at("resistance_from"), "reading");
  EXPECT_NEAR(second.at("inductance_henry").get<double>(), 2 * 678.637932e-9, 1e-15);
  EXPECT_EQ(second.at("capacitance_from"), "construction");
  EXPECT_TRUE(found.at("left_open").is_null());
  const std::string words = campaign.words("built", "read");
  EXPECT_SAYS(
      words,
      "resistance, inductance and capacitance calculated from the construction (metal at 20 C; a standard "
      "cable may have 4 to 16 % more resistance, IEC 60228); skin effect of two round");
  EXPECT_SAYS(words,
              "resistance as read; inductance and capacitance calculated from the construction; skin effect");
}

// IEC 60228:2004, Tables 1 to 3 (read in secondary copies that agree): the greatest resistance allowed of a conductor, untinned.
TEST(PredictedConstruction, SaysHowMuchMoreAStandardCableMayHave) {
  double least = 2, most = 0;
  for (const CsvRow& row : csv_rows("electrical/data/conductor_rmax_iec60228.csv")) {
    if (row.number("area_mm2") > 6.5) continue;
    least = std::min(least, row.number("class2") / row.number("r_iacs_ohm_per_km"));
    most = std::max(most, row.number("class5_plain") / row.number("r_iacs_ohm_per_km"));
  }
  EXPECT_EQ(std::lround(100 * least), 104);
  EXPECT_EQ(std::lround(100 * most), 116);
}

// R3: ASTM B258's rule (memory; recomputed): gauge 12 has 5.2108 mohm/m. Silver: 1.587e-8 ohm m, a handbook value (memory).
TEST(PredictedConstruction, KnowsGaugesMetalsAndStrands) {
  PredictionCampaign campaign(golden_hall());
  const Construction length{{"geometry", "solid pair"}, {"length", "1m"}};
  const auto with = [&](Construction more) {
    more.insert(more.begin(), length.begin(), length.end());
    return more;
  };
  campaign.cable("gauge", with({{"awg", "12"}}));
  campaign.cable("silver", with({{"cross-section", "1mm2"}, {"material", "silver"}}));
  campaign.cable("solid", with({{"cross-section", "2.5mm2"}, {"spacing", "4mm"}, {"strands", "solid"}}));
  campaign.cable("strands", with({{"cross-section", "2.5mm2"}, {"spacing", "4mm"}, {"strands", "50"}}));
  const auto first = campaign.json("gauge", "silver"), second = campaign.json("solid", "strands");
  EXPECT_NEAR(first.at("first").at("loop_resistance_ohm").get<double>(), 2 * 5.2108e-3, 1.1e-7);
  EXPECT_NEAR(first.at("second").at("loop_resistance_ohm").get<double>(), 2 * 1.587e-2, 1e-12);
  EXPECT_EQ(first.at("first").at("capacitance_from"), "unknown");
  // acosh(4 mm / (1.14 * 1.784124 mm)) against acosh(4 mm / 1.784124 mm), mu0/pi = 400 nH/m each (textbook).
  const auto nanohenry = [](double diameter_mm) { return 400 * std::acosh(4 / diameter_mm); };
  EXPECT_NEAR(second.at("first").at("inductance_henry").get<double>() * 1e9 -
                  second.at("second").at("inductance_henry").get<double>() * 1e9,
              nanohenry(1.784124) - nanohenry(1.14 * 1.784124), 1e-3);
}

// G2 (tests/electrical/construction, recomputed): 250.552594 nH/m outside, 99.917650 pF/m; 50 nH/m within.
TEST(PredictedConstruction, OfACoaxialCable) {
  PredictionCampaign campaign(golden_hall());
  const std::string area_mm2 = text::shortest(std::numbers::pi * 0.25);
  campaign.cable("coax", {{"geometry", "coaxial"},
                          {"cross-section", area_mm2 + "mm2"},
                          {"shield-diameter", "3.5mm"},
                          {"permittivity", "2.25"}});
  campaign.table("cable,length_m,resistance_ohm\ncoax,1,0.05\n");
  const auto found = campaign.json("coax", "coax").at("first");
  EXPECT_NEAR(found.at("inductance_henry").get<double>(), 300.552594e-9, 1e-15);
  EXPECT_NEAR(found.at("capacitance_farad").get<double>(), 99.917650e-12, 1e-18);
  EXPECT_EQ(found.at("round_conductors"), 1);
  EXPECT_SAYS(campaign.words("coax", "coax"),
              "skin effect of the inner conductor included, that of the shield left out");
}

// 50 nH/m within each round conductor is all that counts of an unknown inductance.
TEST(PredictedConstruction, CountsNoMoreThanTheInternalInductance) {
  PredictionCampaign campaign(golden_hall());
  campaign.cable("pair", parallel_pair);
  campaign.table("cable,length_m,resistance_ohm,capacitance_pF\npair,3,0.1,150\n");
  EXPECT_NEAR(campaign.json("pair", "pair").at("first").at("inductance_henry").get<double>(), 3 * 2 * 50e-9,
              1e-14);
  EXPECT_SAYS(
      campaign.words("pair", "pair"),
      "resistance and capacitance as read; inductance unknown (counted: the 50 nH/m within each round "
      "conductor); skin effect of two round conductors included");
}

TEST(PredictedConstruction, RefusesDimensionsThatCannotBe) {
  PredictionCampaign campaign(golden_hall());
  const auto refused = [&](Construction more) {
    more.insert(more.begin(), parallel_pair.front());
    const std::string words = refusal([&] { campaign.cable("x", more); });
    const std::string begin = "cable \"x\" cannot be built so as a parallel pair:\n";
    return words.starts_with(begin) ? words.substr(begin.size()) : words;
  };
  EXPECT_EQ(refused({{"spacing", "4"}}), "spacing \"4\": \"4\" has no unit: write 4m");
  EXPECT_EQ(refused({{"length", "0m"}}), "length \"0m\": must be above 0, got \"0m\"");
  EXPECT_EQ(refused({{"awg", "60"}}), "awg \"60\": a gauge is a number from 4/0 to 50, as 12, got \"60\"");
  EXPECT_EQ(refused({{"awg", "12"}, {"cross-section", "2mm2"}}),
            "cross-section \"2mm2\": cross-section and awg say it twice; give one of them");
  EXPECT_EQ(refused({{"permittivity", "0.9"}}),
            "permittivity \"0.9\": a relative permittivity is a number of 1 or more, as 2.5, got \"0.9\"");
  EXPECT_EQ(refused({{"strands", "many"}}),
            "strands \"many\": strands are a whole number from 1 to 100000, or \"solid\", got \"many\"");
  EXPECT_EQ(refused({{"cross-section", "2.5mm2"}, {"spacing", "1mm"}}),
            "centre_spacing_m must be above the conductor's diameter, 0.0017841241161527712, got 0.001");
  // Words are free where there is no formula.
  campaign.cable("free",
                 {{"geometry", "star quad"}, {"cross-section", "2x(2x1.5mm2)"}, {"spacing", "close"}});
}

// T3, C3: recomputed; exact corner 271554.015 Hz, one pole 270902.031 Hz, -0.206482214 dB at 20 kHz and -0.182958090 dB at
// 20 Hz. Shares from one pi section: half of the cable's capacitance at each end, its R and L between. It is off by
// Rs (omega C)^2 R/12 of the level, 1.4e-6 dB (first term of the series of the line less that of the section).
TEST(PredictedInterconnects, HaveCornersAndShares) {
  PredictionCampaign campaign(other_rig("1000ohm", "47kohm||100pF", "line level"));
  campaign.table(
      "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF\nC3,5,0.5,2,500\nC4,5,0.5,2,1500\n");
  const desk::LineLevel found = campaign.predicted("C3", "C4").first.line_level.value();
  EXPECT_NEAR(found.corner_hz.value(), 271554.015, 5.1e-4);
  EXPECT_NEAR(found.one_pole_hz.value(), 270902.031, 0.6);
  EXPECT_NEAR(found.top_level_db, -0.206482214 + 0.182958090, 1.1e-9);
  const std::complex<double> jw(0, 2 * std::numbers::pi * 20e3);
  const auto level_db = [&](double source_ohm, double ohm, double henry, double farad) {
    const auto load = 1.0 / (1 / 47e3 + jw * (100e-12 + farad / 2)), through = ohm + jw * henry + load;
    const auto near_end = 1.0 / (jw * farad / 2.0 + 1.0 / through);
    return 20 * std::log10(std::abs(near_end / (source_ohm + near_end) * load / through));
  };
  const double all_db = level_db(1000, 0.5, 2e-6, 500e-12);
  EXPECT_NEAR(found.load_ohm, std::abs(1.0 / (1 / 47e3 + jw * 100e-12)), 1e-9);
  EXPECT_NEAR(found.shares.source_resistance_db, all_db - level_db(0, 0.5, 2e-6, 500e-12), 2e-6);
  EXPECT_NEAR(found.shares.cable_resistance_db, all_db - level_db(1000, 0, 2e-6, 500e-12), 2e-6);
  EXPECT_NEAR(found.shares.cable_inductance_db, all_db - level_db(1000, 0.5, 0, 500e-12), 2e-6);
  EXPECT_NEAR(found.shares.cable_capacitance_db, all_db - level_db(1000, 0.5, 2e-6, 0), 2e-6);
  EXPECT_NEAR(found.shares.cable_resistance_db, -0.000099, 1e-6);
  const std::string words = campaign.words("C3", "C4");
  EXPECT_SAYS(
      words,
      "C3: 3 dB down from its level at 20.0 Hz at 272 kHz, exact; at 271 kHz by the one-pole estimate; "
      "at 20.0 kHz -0.024 dB against 20.0 Hz");
  EXPECT_SAYS(words,
              "of the level at 20.0 kHz, the source's 1.00 kohm takes -0.21 dB, the cable's 500 mohm in "
              "series with it "
              "and with 40.5 kohm of load takes -0.000099 dB, the cable's inductance 0.000092 dB, its "
              "capacitance -0.023 dB");
  EXPECT_SAYS_NOT(words, "damping factor");
}

// Unknown capacitance: 100 to 1500 pF of five metres, and the load's 100 pF, on 1000 ohm || 47 kohm: 1/(2 pi R C); the
// line's inductance moves it by less than 3 %.
TEST(PredictedInterconnects, SayWhatAnUnknownCapacitanceLeavesOpen) {
  desk::RigTyped rig = other_rig("1000ohm", "47kohm||100pF", "line level");
  rig.rated_impedance = "8ohm";
  PredictionCampaign campaign(rig);
  campaign.table("cable,length_m,resistance_ohm\nmultimeter,5,0.5\n");
  const auto span =
      campaign.predicted("multimeter", "multimeter").first.line_level->possible_corner_hz.value();
  const auto pole_hz = [](double farad) { return (1 / 1000.0 + 1 / 47e3) / (2 * std::numbers::pi * farad); };
  EXPECT_NEAR(span.least / pole_hz(1600e-12), 1, 0.01);
  EXPECT_NEAR(span.greatest / pole_hz(200e-12), 1, 0.03);
  const std::string words = campaign.words("multimeter", "multimeter");
  EXPECT_SAYS(words, "at 102 kHz to 832 kHz with what is left open below");
  EXPECT_SAYS(words, "the cable's inductance unknown, its capacitance unknown");
  EXPECT_SAYS_NOT(words, "damping factor");
}
