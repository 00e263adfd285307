#include "text/time.h"

#include <gtest/gtest.h>

#include <stdexcept>

using namespace text;
using namespace std::chrono;

namespace {

const TimePoint example =
    sys_days(year(2031) / 5 / 1) + hours(19) + minutes(30) + seconds(7) + milliseconds(250);

}  // namespace

TEST(Rfc3339, WritesUtc) {
  EXPECT_EQ(rfc3339(example), "2031-05-01T19:30:07Z");
  EXPECT_EQ(rfc3339(example, Precision::milliseconds), "2031-05-01T19:30:07.250Z");
  EXPECT_EQ(rfc3339(TimePoint(milliseconds(-1))), "1969-12-31T23:59:59Z");
  EXPECT_EQ(rfc3339(TimePoint(milliseconds(-1)), Precision::milliseconds), "1969-12-31T23:59:59.999Z");
}

TEST(Rfc3339, ReadsBackWhatItWrites) {
  EXPECT_EQ(parse_rfc3339(rfc3339(example, Precision::milliseconds)), example);
  EXPECT_EQ(parse_rfc3339("2031-05-01T21:30:07.25+02:00"), example);
  EXPECT_EQ(parse_rfc3339("2031-05-01T14:00:07.250000000-05:30"), example);
}

// RFC 3339, section 5.8, examples (memory).
TEST(Rfc3339, AgreesWithTheExamplesOfTheStandard) {
  EXPECT_EQ(parse_rfc3339("1985-04-12T23:20:50.52Z"),
            TimePoint(sys_days(year(1985) / 4 / 12) + hours(23) + minutes(20) + milliseconds(50520)));
  EXPECT_EQ(parse_rfc3339("1996-12-19T16:39:57-08:00"), parse_rfc3339("1996-12-20T00:39:57Z"));
}

TEST(Rfc3339, RefusesEverythingElse) {
  for (const char* text : {"",
                           "2031-05-01",
                           "2031-05-01 19:30:07Z",
                           "2031-05-01T19:30Z",
                           "2031-05-01T19:30:07",
                           "2031-5-1T19:30:07Z",
                           "2031-02-29T00:00:00Z",
                           "2031-13-01T00:00:00Z",
                           "2031-05-00T00:00:00Z",
                           "2031-05-01T24:00:00Z",
                           "2031-05-01T19:60:00Z",
                           "2031-05-01T19:30:60Z",
                           "2031-05-01T19:30:07.Z",
                           "2031-05-01T19:30:07.1234567890Z",
                           "2031-05-01T19:30:07,25Z",
                           "2031-05-01T19:30:07+2:00",
                           "2031-05-01T19:30:07+02",
                           "2031-05-01T19:30:07+24:00",
                           "2031-05-01T19:30:07Z ",
                           " 2031-05-01T19:30:07Z",
                           "2031-05-01t19:30:07z",
                           "+2031-05-01T19:30:07Z",
                           "1500-05-01T19:30:07Z",
                           "9999-05-01T19:30:07Z"})
    EXPECT_FALSE(parse_rfc3339(text)) << text;
  EXPECT_TRUE(parse_rfc3339("2032-02-29T00:00:00Z"));
}
