#include "stats/resampling/resampled_sums.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "stats/refusal.h"

namespace stats {
namespace {

/// The rule of the draw as the header says it, one number after the other.
std::vector<std::size_t> places_by_the_rule(QuickRandom& random, std::uint32_t units) {
  std::vector<std::uint32_t> numbers;
  while (numbers.size() < units) {
    const std::uint64_t word = random.word();
    for (int part = 0; part < 4; ++part)
      numbers.push_back(static_cast<std::uint32_t>(word >> (16 * part) & 0xffff));
  }
  std::vector<std::size_t> places;
  for (std::uint32_t i = 0; i < units; ++i) {
    const std::uint32_t product = numbers[i] * units;
    places.push_back((product & 0xffff) < 65'536 % units ? random.below(units) : product >> 16);
  }
  return places;
}

std::vector<std::int64_t> some_records(std::size_t units, std::size_t fields, std::uint32_t bound) {
  QuickRandom random(units);
  std::vector<std::int64_t> records(units * fields);
  for (std::size_t i = 0; i < records.size(); ++i)
    if (i % fields != 1) records[i] = random.below(bound);  // the second field is 0 throughout
  return records;
}

TEST(ResampledSums, AreTheSumsOfTheRecordsDrawn) {
  for (const std::size_t units : {1u, 2u, 3u, 40u, 41u, 200u, 5'000u})
    for (const std::size_t fields : {1u, 2u, 7u, 30u})
      for (const std::uint32_t bound : {1u, 2u, 100u, 2'000'000'000u}) {
        const auto records = some_records(units, fields, bound);
        ResampledSums sums(records, fields);
        QuickRandom one(9), other(9);
        for (int draw = 0; draw < 3; ++draw) {
          const auto drawn = sums.draw(one);
          std::vector<std::int64_t> expected(fields);
          for (const std::size_t place : places_by_the_rule(other, static_cast<std::uint32_t>(units)))
            for (std::size_t field = 0; field < fields; ++field)
              expected[field] += records[place * fields + field];
          EXPECT_TRUE(std::equal(drawn.begin(), drawn.end(), expected.begin(), expected.end()))
              << units << " units, " << fields << " fields below " << bound;
        }
      }
}

// 65,536 is 25,536 modulo 40,000: without the replacing, some places would come up twice as often as others.
// Every place is expected 20 times in 20 draws; the chi-square has mean 39,999 and standard deviation 283.
TEST(ResampledSums, DrawEveryUnitEquallyOften) {
  std::vector<std::int64_t> records(40'000);
  for (std::size_t i = 0; i < records.size(); ++i) records[i] = i % 2 == 0;  // half of the places
  ResampledSums even(records, 1);
  QuickRandom random(3);
  std::int64_t drawn = 0;
  for (int draw = 0; draw < 20; ++draw) drawn += even.draw(random)[0];
  EXPECT_NEAR(double(drawn), 400'000, 4 * std::sqrt(200'000));

  QuickRandom again(4);
  std::vector<double> often(40'000);
  for (int draw = 0; draw < 20; ++draw)
    for (const std::size_t place : places_by_the_rule(again, 40'000)) ++often[place];
  double chi_square = 0;
  for (const double count : often) chi_square += (count - 20) * (count - 20) / 20;
  EXPECT_NEAR(chi_square, 39'999, 4 * 283);
}

TEST(ResampledSums, RefuseMoreUnitsThanTheRuleCanDraw) {
  EXPECT_EQ(refusal([] { ResampledSums(std::vector<std::int64_t>(65'536), 1); }),
            "number of units must be between 1 and 65535, got 65536");
}

}  // namespace
}  // namespace stats
