#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "electrical/csv_rows.h"
#include "electrical/golden_cases.h"
#include "electrical/refusal.h"
#include "hearing/auditory/filter.h"
#include "hearing/auditory/published.h"
#include "hearing/auditory/smoothed.h"
#include "hearing/residual.h"

namespace {

hearing::LevelCurve golden_curve(const std::string& name) {
  const auto& [source, cable, load] = golden_cases().at(name);
  return hearing::predicted_curve(source, cable, load);
}

/// What a filter passes, by the trapezoid rule over 20,000 frequencies to the ends of the band.
double passed_difference_db(double centre_hz, const electrical::Band& band, const hearing::LevelCurve& first,
                            const hearing::LevelCurve& second) {
  double sums[2] = {0, 0};
  const int steps = 20'000;
  const double reach_hz = 8 * hearing::erb_hz(centre_hz),
               low_hz = std::max(band.low_hz, centre_hz - reach_hz),
               high_hz = std::min(band.high_hz, centre_hz + reach_hz);
  for (int i = 0; i <= steps; ++i) {
    const double f = std::clamp(low_hz + (high_hz - low_hz) * i / steps, band.low_hz, band.high_hz);
    const double weight = (i == 0 || i == steps ? 0.5 : 1) * hearing::auditory_weight(centre_hz, f);
    sums[0] += weight * std::pow(10, first.level_db(f) / 10);
    sums[1] += weight * std::pow(10, second.level_db(f) / 10);
  }
  return 10 * std::log10(sums[0] / sums[1]);
}

}  // namespace

// H3: Glasberg & Moore 1990 (read as printed in a later paper), every row of the file. recomputed.
TEST(AuditoryFilters, HaveTheirBandwidths) {
  for (const CsvRow& row : csv_rows("hearing/data/erb.csv")) {
    const double f = row.number("f_Hz");
    EXPECT_NEAR(hearing::erb_hz(f), row.number("ERB_Hz"), 5.1e-7);
    EXPECT_NEAR(hearing::erb_rate_cam(f), row.number("cam_21.4"), 5.1e-7);
    EXPECT_NEAR(hearing::frequency_at_cam_hz(hearing::erb_rate_cam(f)), f, 1e-9 * f);
  }
  EXPECT_EQ(hearing::erb_rate_cam(0), 0);
}

// H4: p = 4 f/ERB is 30.157043 at 1 kHz (printed); the weights from it, recomputed in Python.
TEST(AuditoryFilters, FallOffOnBothSides) {
  const auto weight_db = [](double f) { return 10 * std::log10(hearing::auditory_weight(1000, f)); };
  EXPECT_EQ(weight_db(1000), 0);
  EXPECT_NEAR(weight_db(1100), -7.0594200438, 5.1e-11);
  EXPECT_NEAR(weight_db(900), -7.0594200438, 5.1e-11);
  EXPECT_NEAR(weight_db(1200), -17.7236512239, 5.1e-11);
}

TEST(AuditoryFilters, RefuseImpossibleFrequencies) {
  EXPECT_EQ(refusal([] { hearing::erb_hz(0); }), "frequency_hz must be a finite number above 0, got 0");
  EXPECT_NE(refusal([] { hearing::erb_rate_cam(-1); }), "accepted");
  EXPECT_NE(refusal([] { hearing::frequency_at_cam_hz(std::nan("")); }), "accepted");
  EXPECT_NE(refusal([] { hearing::auditory_weight(1000, -1); }), "accepted");
}

// A sum over the filter of its own, hundreds of times finer.
TEST(AuditoryDifferences, AreThoseOfAFinerSum) {
  for (const auto& [first, second] : {std::pair("A2", "A1"), std::pair("A3", "A2")}) {
    const auto one = golden_curve(first), other = golden_curve(second);
    const auto found = hearing::auditory_difference(one, other, 0.4);
    ASSERT_GT(found.centre_hz.size(), 100u);
    for (std::size_t i = 0; i < found.centre_hz.size(); i += 7)
      EXPECT_NEAR(found.difference_db[i],
                  passed_difference_db(found.centre_hz[i], found.band, one, other) - 0.4, 1e-4)
          << found.centre_hz[i];
  }
}

TEST(AuditoryDifferences, OfALevelIsTheLevel) {
  const hearing::LevelCurve high([](double) { return 0.7; }, {20, 20000}),
      low([](double) { return 0.2; }, {20, 20000});
  const auto found = hearing::auditory_difference(high, low, 0.1);
  EXPECT_NEAR(found.largest_db, 0.4, 1e-12);
  EXPECT_NEAR(found.rms_db, 0.4, 1e-12);
}

// A hum-narrow peak reaches a filter with its share of the bandwidth alone: 10 dB over 4 Hz of an ERB of 132.6 Hz is
// about 10 log10(1 + 9 * 4/132.6) = 1.04 dB, which the curve itself shows as 10 dB.
TEST(AuditoryDifferences, AreSmallWhereTheDifferenceIsNarrow) {
  const std::vector<double> hz{20, 997.9, 998, 1002, 1002.1, 20000};
  const hearing::LevelCurve narrow(hz, {0, 0, 10, 10, 0, 0}), flat([](double) { return 0.0; }, {20, 20000});
  const auto found = hearing::auditory_difference(narrow, flat, 0);
  EXPECT_LT(found.largest_db, 3);
  EXPECT_NEAR(hearing::residual(narrow, flat, 0).largest_db, 10, 0.01);
}

TEST(AuditoryDifferences, RefuseImpossibleTrims) {
  const hearing::LevelCurve flat([](double) { return 0.0; }, {20, 20000});
  EXPECT_NE(refusal([&] { hearing::auditory_difference(flat, flat, std::nan("")); }), "accepted");
}

// H5: the fit of Jesteadt, Wier & Green 1977 (read in a secondary copy). recomputed.
TEST(PublishedThresholds, OfTheLevelOfATone) {
  EXPECT_NEAR(hearing::just_noticeable_tone_level_db(10), 1.437, 5.1e-4);
  EXPECT_NEAR(hearing::just_noticeable_tone_level_db(20), 1.246, 5.1e-4);
  EXPECT_NEAR(hearing::just_noticeable_tone_level_db(40), 0.929138, 5.1e-7);
  EXPECT_NEAR(hearing::just_noticeable_tone_level_db(80), 0.503443, 5.1e-7);
  EXPECT_EQ(refusal([] { hearing::just_noticeable_tone_level_db(120); }),
            "sensation_level_db must be from 0 to 100, got 120");
}

// H5 and H7, as listed there, each with a source; of those that are not confirmed (H8, H9) none.
TEST(PublishedThresholds, AreListedWithTheirSources) {
  std::multiset<double> level, response;
  for (const auto& threshold : hearing::published_thresholds()) {
    EXPECT_FALSE(threshold.source.empty());
    (threshold.concerns == hearing::Concerns::level ? level : response).insert(threshold.size_db);
  }
  EXPECT_EQ(level, (std::multiset<double>{0.3, 0.41, 0.50}));
  EXPECT_EQ(response, (std::multiset<double>{1.5, 3, 5}));
}
