#include "text/number.h"

#include <gtest/gtest.h>

#include <clocale>
#include <cmath>
#include <limits>
#include <locale>
#include <stdexcept>
#include <string>

using namespace text;

TEST(Number, ReadsDecimalPointAndCommaWithSignAndExponent) {
  EXPECT_EQ(number("0.6"), 0.6);
  EXPECT_EQ(number("0,6"), 0.6);
  EXPECT_EQ(number("-3"), -3.0);
  EXPECT_EQ(number("+1e-3"), 1e-3);
  EXPECT_EQ(number("1E+3"), 1000.0);
  EXPECT_EQ(number(".5"), 0.5);
  EXPECT_EQ(number("5."), 5.0);
  EXPECT_EQ(number("\xE2\x88\x92"
                   "2,5"),
            -2.5);  // U+2212
}

TEST(Number, RoundsOnceWhenScaledByAPowerOfTen) {
  EXPECT_EQ(number("470", -12), 470e-12);
  EXPECT_EQ(number("0.55", -6), 0.55e-6);
  EXPECT_EQ(number("1.7e3", 3), 1.7e6);
}

TEST(Number, RefusesEverythingElse) {
  for (const char* text :
       {"",       " ",     "-",        "+",     ".",   ",",   "e3",  "1e",    "1e+",
        "1e1.5",  "1.2.3", "1,234.5",  "1 000", " 1",  "1 ",  "1x",  "0x10",  "0x1p3",
        "inf",    "-inf",  "infinity", "nan",   "NaN", "--1", "+-1", "1e999", "1e99999999999",
        "1e-999", "1d3",   "\xC2\xBD"})
    EXPECT_FALSE(number(text)) << '"' << text << '"';
}

TEST(Number, HoldsWhateverTheLocale) {
  struct DecimalComma : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
  };
  const std::locale before = std::locale::global(std::locale(std::locale(), new DecimalComma));
  std::setlocale(LC_ALL, "de_DE.UTF-8");  // where it is installed
  EXPECT_EQ(number("0.5"), 0.5);
  EXPECT_EQ(fixed(12345.5, 1), "12345.5");
  EXPECT_EQ(shortest(12345.5), "12345.5");
  EXPECT_EQ(significant(12345.5, 6), "12345.5");
  std::locale::global(before);
  std::setlocale(LC_ALL, "C");
}

TEST(WholeNumber, ReadsDigitsWithASign) {
  EXPECT_EQ(whole_number("17"), 17);
  EXPECT_EQ(whole_number("-17"), -17);
  EXPECT_EQ(whole_number("+007"), 7);
  EXPECT_EQ(whole_number("9223372036854775807"), std::numeric_limits<long long>::max());
  EXPECT_EQ(whole_number("-9223372036854775808"), std::numeric_limits<long long>::min());
}

TEST(WholeNumber, RefusesEverythingElse) {
  for (const char* text :
       {"", "-", "1.0", "1,0", "1e3", "9223372036854775808", "0x1", " 1", "1 ", "--1", "+-1"})
    EXPECT_FALSE(whole_number(text)) << '"' << text << '"';
}

TEST(Fixed, RoundsAndNeverPrintsMinusZero) {
  EXPECT_EQ(fixed(2.0 / 3, 3), "0.667");
  EXPECT_EQ(fixed(-0.001, 2), "0.00");
  EXPECT_EQ(fixed(-0.0, 2), "0.00");
  EXPECT_EQ(fixed(-0.5, 2), "-0.50");
  EXPECT_EQ(fixed(1e21, 0), "1000000000000000000000");
  EXPECT_EQ(fixed(std::nan(""), 2), "nan");
  EXPECT_EQ(fixed(-std::numeric_limits<double>::infinity(), 2), "-inf");
  EXPECT_EQ(fixed(-std::numeric_limits<double>::max(), 30).size(), 1U + 309U + 1U + 30U);
}

TEST(Fixed, RefusesImpossibleDecimalsAlsoForWhatIsNotFinite) {
  EXPECT_THROW(fixed(std::nan(""), -1), std::domain_error);
  EXPECT_THROW(fixed(1, 31), std::domain_error);
}

TEST(Shortest, ReadsBackExactly) {
  for (const double value :
       {0.1, 1e-12, 1.0 / 3, 1.2345678901234567e-6, 5e-324, -1.7976931348623157e308, 48.0})
    EXPECT_EQ(number(shortest(value)), value);
  EXPECT_EQ(shortest(0.1), "0.1");
  EXPECT_EQ(shortest(-0.0), "0");
  EXPECT_EQ(shortest(100000), "100000");
  EXPECT_EQ(shortest(999999999999999), "999999999999999");
  EXPECT_EQ(shortest(1e15), "1e+15");
  EXPECT_EQ(shortest(-1e-6), "-0.000001");
  EXPECT_EQ(shortest(-1.0000000000000002e-6), "-0.0000010000000000000002");
  EXPECT_EQ(shortest(1e-7), "1e-07");
}

TEST(Significant, KeepsTheDigitsAskedFor) {
  EXPECT_EQ(significant(0.6, 3), "0.600");
  EXPECT_EQ(significant(0.04788, 3), "0.0479");
  EXPECT_EQ(significant(1234.5, 2), "1200");
  EXPECT_EQ(significant(9.996, 3), "10.0");
  EXPECT_EQ(significant(999.6, 3), "1000");
  EXPECT_EQ(significant(-0.0, 2), "0.0");
  EXPECT_EQ(significant(4.7e-10, 3), "4.70e-10");
  EXPECT_EQ(significant(1e15, 3), "1.00e+15");
  EXPECT_THROW(significant(1, 0), std::domain_error);
  EXPECT_THROW(significant(1, 18), std::domain_error);
}

TEST(PValue, HasFourDecimalsAndNamesItsEnds) {
  EXPECT_EQ(p_value(2517.0 / 65536), "0.0384");  // 12 or more of 16 at 1/2: exact fraction
  EXPECT_EQ(p_value(0.0001), "0.0001");
  EXPECT_EQ(p_value(0.00009999), "<0.0001");
  EXPECT_EQ(p_value(0), "<0.0001");
  EXPECT_EQ(p_value(0.99995), ">0.9999");
  EXPECT_EQ(p_value(1), "1.0000");
  EXPECT_THROW(p_value(-0.1), std::domain_error);
  EXPECT_THROW(p_value(1.1), std::domain_error);
  EXPECT_THROW(p_value(std::nan("")), std::domain_error);
}
