#include "findings/bench/coverage.h"

#include <gtest/gtest.h>

#include "findings/bench/bench_measurements.h"

namespace {

using bench_sample::impedance;
using bench_sample::repeat;
using bench_sample::response;
using bench_sample::totals;

TEST(Coverage, CountsWhatCountsAndShowsWhatIsMissing) {
  auto gone = totals(3, "thin", 3, 0.5);
  gone.superseded = true;
  const auto found =
      findings::coverage_of({"heavy", "thin", "new"}, {{"hall", false}, {"desk", true}},
                            {totals(1, "heavy", 3, 0.04), repeat(totals(2, "heavy", 3, 0.04), 2, 2), gone,
                             response(4, "heavy", {20, 20000}, {0, 0})});
  ASSERT_EQ(found.columns.size(), 2u);
  EXPECT_EQ(found.columns[0].title, "totals");
  EXPECT_EQ(found.columns[1].title, "response on hall");
  EXPECT_EQ(found.cells[0][0].readings, 2);
  EXPECT_EQ(found.cells[0][1].readings, 1);
  EXPECT_EQ(found.cells[1][0].readings, 0);
  EXPECT_EQ(found.cells[1][0].superseded, 1);
  EXPECT_EQ(found.cells[2][1].readings, 0);
  EXPECT_EQ(found.rigs_without_load, (std::vector<std::string>{"hall"}));
  EXPECT_TRUE(found.stale.empty());
}

TEST(Coverage, CallsStaleWhatANewerReadingOfTheSameNamesPutsInDoubt) {
  auto newer = totals(2, "heavy", 3, 0.05);
  newer.file = "mended.csv";
  auto at_another_frequency = totals(3, "heavy", 3, 0.04);
  at_another_frequency.columns.push_back("frequency_hz");
  at_another_frequency.values.push_back({10000});
  const auto found =
      findings::coverage_of({"heavy"}, {}, {totals(1, "heavy", 3, 0.04), newer, at_another_frequency});
  ASSERT_EQ(found.stale.size(), 1u);
  EXPECT_EQ(found.stale[0].reading, 1);
  EXPECT_EQ(found.cells[0][0].stale, (std::vector<int>{1}));
  EXPECT_EQ(
      found.stale[0].why,
      "reading 2 (mended.csv) has the same names: give it its own repeat, or let it supersede this one");
}

TEST(Coverage, CallsAResponseStaleWhereTheLoadWasMeasuredAnew) {
  const auto load = impedance(1, {20, 20000}, {8, 8}, {0, 0});
  const auto before = response(2, "heavy", {20, 20000}, {0, 0});
  EXPECT_TRUE(findings::coverage_of({"heavy"}, {}, {load, before}).stale.empty());
  const auto again = repeat(impedance(3, {20, 20000}, {7, 7}, {0, 0}), 3, 2);
  const auto found =
      findings::coverage_of({"heavy"}, {{"hall", false}},
                            {load, before, again, repeat(response(4, "heavy", {20, 20000}, {0, 0}), 4, 2)});
  ASSERT_EQ(found.stale.size(), 1u);
  EXPECT_EQ(found.stale[0].reading, 2);
  EXPECT_TRUE(found.rigs_without_load.empty());
}

}  // namespace
