#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <numbers>

#include "electrical/argument.h"
#include "hearing/weighting.h"

namespace hearing {
namespace {

/// IEC 61672-1 Annex E pole frequencies (from memory); f1 and f4 are double.
constexpr double kPole1Hz = 20.598997;
constexpr double kPole2Hz = 107.65265;
constexpr double kPole3Hz = 737.86223;
constexpr double kPole4Hz = 12194.217;

double a_response_db(double frequency_hz) {
  const double f2 = frequency_hz * frequency_hz;
  const auto above = [&](double pole_hz) { return f2 + pole_hz * pole_hz; };
  const double ratio =
      f2 * f2 / (above(kPole1Hz) * above(kPole4Hz) * std::sqrt(above(kPole2Hz) * above(kPole3Hz)));
  return 20 * std::log10(ratio);
}

struct Biquad {
  std::array<double, 3> b;
  std::array<double, 3> a;
};

/// ITU-R BS.1770-4, Annex 1, Table 1 (stage 1) and Table 2 (stage 2), 48 kHz.
constexpr double kSamplingHz = 48000;
constexpr Biquad kStage1{{1.53512485958697, -2.69169618940638, 1.19839281085285},
                         {1, -1.69065929318241, 0.73248077421585}};
constexpr Biquad kStage2{{1, -2, 1}, {1, -1.99004745483398, 0.99007225036621}};

double gain_db(const Biquad& biquad, double frequency_hz) {
  const std::complex<double> delay = std::polar(1.0, -2 * std::numbers::pi * frequency_hz / kSamplingHz);
  const auto value = [&](const std::array<double, 3>& c) { return c[0] + delay * (c[1] + delay * c[2]); };
  return 20 * std::log10(std::abs(value(biquad.b)) / std::abs(value(biquad.a)));
}

/// IEC 60268-1:1985, clause 7, Table II: third-octave levels in dB, 20 Hz to 20 kHz.
constexpr std::array<double, 31> kProgrammeDb{
    -13.5, -10.2, -7.4, -5.2, -3.5, -2.3, -1.4, -0.9, -0.5, -0.2, -0.1, 0,     0,     0,     0,    0,
    0,     -0.1,  -0.3, -0.6, -1.0, -1.6, -2.5, -3.7, -5.1, -7.0, -9.4, -11.9, -14.8, -18.2, -21.6};
constexpr int kFirstThirdOctave = -17;

}  // namespace

double a_weighting_db(double frequency_hz) {
  electrical::require_positive("frequency_hz", frequency_hz);
  return a_response_db(frequency_hz) - a_response_db(1000);
}

double k_weighting_db(double frequency_hz) {
  electrical::require_positive("frequency_hz", frequency_hz);
  electrical::require_within("frequency_hz of the K-weighting", frequency_hz, 0, kSamplingHz / 2);
  return gain_db(kStage1, frequency_hz) + gain_db(kStage2, frequency_hz);
}

double programme_spectrum_db(double frequency_hz) {
  electrical::require_positive("frequency_hz", frequency_hz);
  const double third_octave = 10 * std::log10(frequency_hz / 1000);
  const double place = std::clamp(third_octave - kFirstThirdOctave, 0.0, kProgrammeDb.size() - 1.0);
  const auto below = std::min(static_cast<std::size_t>(place), kProgrammeDb.size() - 2);
  const double share = place - static_cast<double>(below);
  return kProgrammeDb[below] + share * (kProgrammeDb[below + 1] - kProgrammeDb[below]);
}

}  // namespace hearing
