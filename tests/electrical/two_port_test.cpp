#include "electrical/two_port.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "electrical/golden_cases.h"
#include "electrical/refusal.h"
#include "electrical/response.h"

using Complex = std::complex<double>;

TEST(TwoPort, OfNothingIsTheIdentity) {
  const auto port = electrical::two_port(0.0, 0.0);
  EXPECT_EQ(port.a_minus_1, Complex(0));
  EXPECT_EQ(port.b_ohm, Complex(0));
  EXPECT_EQ(port.c_siemens, Complex(0));
  EXPECT_EQ(port.d_minus_1, Complex(0));
}

TEST(TwoPort, WithoutAdmittanceIsItsSeriesImpedanceAndConversely) {
  const Complex z(0.6, 0.2);
  EXPECT_EQ(electrical::two_port(z, 0.0).b_ohm, z);
  EXPECT_EQ(electrical::two_port(z, 0.0).a_minus_1, Complex(0));
  EXPECT_EQ(electrical::two_port(0.0, z).c_siemens, z);
  EXPECT_EQ(electrical::two_port(0.0, z).b_ohm, Complex(0));
}

// Identity of every reciprocal two-port: A D - B C = 1.
TEST(TwoPort, IsReciprocalForShortAndLongLines) {
  for (const double f : {20.0, 1e3, 2e4, 5e5, 5e6, 3e7}) {
    auto cable = line(0.2, 0.6e-6, 60e-12, 3, 1e-6);
    cable.load_end_resistance_ohm = 0.3;
    const auto port = electrical::two_port(cable, f);
    const Complex determinant = (1.0 + port.a_minus_1) * (1.0 + port.d_minus_1) - port.b_ohm * port.c_siemens;
    EXPECT_LT(std::abs(determinant - 1.0), 1e-14) << f;
  }
}

// cosh and sinh/g either side of the switch at |z y| = 0.1 (series below, formula above), on the real axis,
// the imaginary axis and between, against the standard library on the same argument.
TEST(TwoPort, SeriesAndFormulaMeetAtTheSwitch) {
  for (const double angle : {0.0, 0.7, 1.5707963267948966, 2.5, 3.141592653589793}) {
    for (const double size : {0.01, 0.0999999999, 0.1000000001, 0.2}) {
      const Complex q = std::polar(size, angle);
      const auto port = electrical::two_port(q, 1.0);
      const Complex g = std::sqrt(q);
      EXPECT_LT(std::abs(port.a_minus_1 - (std::cosh(g) - 1.0)), 4e-16) << q;
      EXPECT_LT(std::abs(port.c_siemens - std::sinh(g) / g), 4e-16) << q;
    }
    // The functions change by 1e-13 across this gap; a jump would stand above it.
    const auto below = electrical::two_port(std::polar(0.1 - 1e-13, angle), 1.0);
    const auto above = electrical::two_port(std::polar(0.1 + 1e-13, angle), 1.0);
    EXPECT_LT(std::abs(above.a_minus_1 - below.a_minus_1), 1.1e-13);
    EXPECT_LT(std::abs(above.c_siemens - below.c_siemens), 1.1e-13);
  }
}

TEST(TwoPort, GoesToTheDividerAsAllOfTheCableGoesToNothing) {
  const electrical::Source source{0.1};
  const electrical::Resistor load{8};
  const Complex divider = 8.0 / (8.0 + 0.1);
  EXPECT_EQ(electrical::response(source, electrical::Cable{}, load, 1000), divider);
  EXPECT_EQ(electrical::response(source, line(0, 0, 0, 3), load, 1000), divider);
  for (double scale = 1e-3; scale > 1e-300; scale *= 1e-3) {
    const auto cable = line(0.2 * scale, 0.6e-6 * scale, 60e-12 * scale, 3, 1e-6 * scale);
    const Complex h = electrical::response(source, cable, load, 1000);
    EXPECT_LT(std::abs(h - divider), 0.08 * scale + 3e-16) << scale;
  }
}

TEST(TwoPort, ALoadEndResistorAddsToTheLoadsSide) {
  electrical::Cable cable{.load_end_resistance_ohm = 0.5};
  const Complex h = electrical::response({0.1}, cable, electrical::Resistor{8}, 1000);
  EXPECT_NEAR(h.real(), 8.0 / 8.6, 1e-16);
  // Behind a real line it divides what reaches the line's end.
  cable = line(0.2, 0.6e-6, 60e-12, 3, 1e-6);
  const Complex together = electrical::response({0.1}, cable, electrical::Resistor{8.5}, 2e4);
  cable.load_end_resistance_ohm = 0.5;
  EXPECT_LT(std::abs(electrical::response({0.1}, cable, electrical::Resistor{8}, 2e4) - together * 8.0 / 8.5),
            1e-15);
}

TEST(TwoPort, ALineOfTwoLengthsIsTheTwoInChain) {
  const auto half = electrical::two_port(line(0.2, 0.6e-6, 60e-12, 1.5, 1e-6), 2e7);
  const auto whole = electrical::two_port(line(0.2, 0.6e-6, 60e-12, 3, 1e-6), 2e7);
  const Complex a = 1.0 + half.a_minus_1;
  EXPECT_LT(std::abs(1.0 + whole.a_minus_1 - (a * a + half.b_ohm * half.c_siemens)), 1e-14);
  EXPECT_LT(std::abs(whole.b_ohm - 2.0 * a * half.b_ohm), 1e-12);
}

TEST(TwoPort, RefusesWhatItCannotCompute) {
  EXPECT_EQ(refusal([] { electrical::two_port(line(0.2, 0, 0, 3), -1); }),
            "frequency_hz must be a finite number, 0 or more, got -1");
  EXPECT_EQ(refusal([] { electrical::two_port(1e6, 1.0); }),
            "the attenuation of the cable must be at most 350 neper, got 1000");
  EXPECT_EQ(refusal([] { electrical::two_port(std::numeric_limits<double>::infinity(), 1.0); }),
            "the attenuation of the cable must be at most 350 neper, got inf");
}
