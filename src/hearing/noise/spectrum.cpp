#include "hearing/noise/spectrum.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <stdexcept>
#include <string>

#include "electrical/argument.h"
#include "hearing/level_curve.h"

namespace hearing {
namespace {

constexpr double kBoltzmann = 1.380649e-23;  // J/K, exact (SI 2019)

const double kThirdOctaveHalf = std::pow(10, 0.05);

struct Point {
  double frequency_hz, level_db;
};

/// ITU-R BS.468-4, Table 1; the row of 9 kHz from memory.
constexpr Point kItu468[] = {
    {31.5, -29.9}, {63, -23.9},  {100, -19.8}, {200, -13.8},  {400, -7.8},    {800, -1.9},    {1000, 0},
    {2000, 5.6},   {3150, 9.0},  {4000, 10.5}, {5000, 11.7},  {6300, 12.2},   {7100, 12.0},   {8000, 11.4},
    {9000, 10.1},  {10000, 8.1}, {12500, 0},   {14000, -5.3}, {16000, -11.7}, {20000, -22.2}, {31500, -42.7},
};

}  // namespace

NoiseSpectrum::NoiseSpectrum(std::vector<double> frequency_hz, std::vector<double> density_volt_per_sqrt_hz)
    : frequency_hz_(std::move(frequency_hz)) {
  if (frequency_hz_.size() < 2 || frequency_hz_.size() != density_volt_per_sqrt_hz.size())
    throw std::domain_error("a noise spectrum must have at least 2 frequencies and a density for each, got " +
                            std::to_string(frequency_hz_.size()) + " and " +
                            std::to_string(density_volt_per_sqrt_hz.size()));
  for (std::size_t i = 0; i < frequency_hz_.size(); ++i) {
    electrical::require_positive("frequency_hz", frequency_hz_[i]);
    electrical::require_positive("density_volt_per_sqrt_hz", density_volt_per_sqrt_hz[i]);
    if (i > 0 && frequency_hz_[i] <= frequency_hz_[i - 1])
      throw std::domain_error("frequency_hz must rise, got " + electrical::number_text(frequency_hz_[i]) +
                              " after " + electrical::number_text(frequency_hz_[i - 1]));
    power_density_.push_back(density_volt_per_sqrt_hz[i] * density_volt_per_sqrt_hz[i]);
  }
}

double NoiseSpectrum::density_volt_per_sqrt_hz(double frequency_hz) const {
  electrical::require_within("frequency_hz of a noise spectrum", frequency_hz, band().low_hz, band().high_hz);
  const auto above = std::upper_bound(frequency_hz_.begin() + 1, frequency_hz_.end() - 1, frequency_hz);
  const auto i = static_cast<std::size_t>(above - frequency_hz_.begin());
  const double share =
      std::log(frequency_hz / frequency_hz_[i - 1]) / std::log(frequency_hz_[i] / frequency_hz_[i - 1]);
  return std::sqrt(power_density_[i - 1] * std::pow(power_density_[i] / power_density_[i - 1], share));
}

/// The integral of S (f/f0)^b, b the segment's slope: stable where b is near -1.
double NoiseSpectrum::power_between(std::size_t segment, double low_hz, double high_hz) const {
  const double from_hz = frequency_hz_[segment], from = power_density_[segment];
  const double slope =
      std::log(power_density_[segment + 1] / from) / std::log(frequency_hz_[segment + 1] / from_hz);
  const double turns = std::log(high_hz / low_hz), power = slope + 1;
  const double integral = std::abs(power * turns) < 1e-12 ? turns : std::expm1(power * turns) / power;
  return from * from_hz * std::pow(low_hz / from_hz, power) * integral;
}

double NoiseSpectrum::mean_square_volt2(const electrical::Band& within) const {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < frequency_hz_.size(); ++i) {
    const double low_hz = std::max(within.low_hz, frequency_hz_[i]);
    const double high_hz = std::min(within.high_hz, frequency_hz_[i + 1]);
    if (low_hz < high_hz) sum += power_between(i, low_hz, high_hz);
  }
  return sum;
}

NoiseSpectrum spectrum_of_levels(std::vector<double> frequency_hz, const std::vector<double>& level_dbv,
                                 double bandwidth_hz) {
  electrical::require_positive("bandwidth_hz", bandwidth_hz);
  std::vector<double> density;
  for (const double level : level_dbv) density.push_back(std::pow(10, level / 20) / std::sqrt(bandwidth_hz));
  return {std::move(frequency_hz), std::move(density)};
}

NoiseSpectrum spectrum_of_third_octaves(std::vector<double> frequency_hz,
                                        const std::vector<double>& level_dbv) {
  std::vector<double> density;
  for (std::size_t i = 0; i < std::min(frequency_hz.size(), level_dbv.size()); ++i)
    density.push_back(std::pow(10, level_dbv[i] / 20) /
                      std::sqrt(frequency_hz[i] * (kThirdOctaveHalf - 1 / kThirdOctaveHalf)));
  return {std::move(frequency_hz), std::move(density)};
}

electrical::Band third_octave_band(int n) {
  const double centre_hz = electrical::third_octave_centre_hz(n);
  return {centre_hz / kThirdOctaveHalf, centre_hz * kThirdOctaveHalf};
}

double itu_468_weighting_db(double frequency_hz) {
  electrical::require_within("frequency_hz of the weighting", frequency_hz, std::begin(kItu468)->frequency_hz,
                             std::rbegin(kItu468)->frequency_hz);
  const Point* above = std::upper_bound(std::begin(kItu468) + 1, std::end(kItu468) - 1, frequency_hz,
                                        [](double f, const Point& point) { return f < point.frequency_hz; });
  const Point &low = *(above - 1), &high = *above;
  const double share =
      std::log(frequency_hz / low.frequency_hz) / std::log(high.frequency_hz / low.frequency_hz);
  return low.level_db + share * (high.level_db - low.level_db);
}

double weighted_volt(const NoiseSpectrum& noise, double (*weighting_db)(double),
                     const electrical::Band& band) {
  const electrical::Band both = electrical::overlap(noise.band(), band);
  // The mean over ln f of f S(f) W(f), times the band's width in ln f.
  const double mean = log_mean(
      [&](double f) {
        const double density = noise.density_volt_per_sqrt_hz(f);
        return f * density * density * std::pow(10, weighting_db(f) / 10);
      },
      both);
  return std::sqrt(mean * std::log(both.high_hz / both.low_hz));
}

double thermal_noise_volt(double resistance_ohm, double bandwidth_hz, double temperature_kelvin) {
  electrical::require_not_negative("resistance_ohm", resistance_ohm);
  electrical::require_not_negative("bandwidth_hz", bandwidth_hz);
  electrical::require_positive("temperature_kelvin", temperature_kelvin);
  return std::sqrt(4 * kBoltzmann * temperature_kelvin * resistance_ohm * bandwidth_hz);
}

}  // namespace hearing
