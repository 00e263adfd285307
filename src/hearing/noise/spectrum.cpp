#include "hearing/noise/spectrum.h"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <iterator>
#include <stdexcept>
#include <string>

#include "electrical/argument.h"

namespace hearing {
namespace {

constexpr double kBoltzmann = 1.380649e-23;  // J/K, exact (SI 2019)

const double kThirdOctaveHalf = std::pow(10, 0.05);

constexpr int kOf20Hz = -17, kOf20kHz = 13;

/// A little more than between third-octaves as they are named: 31.5 and 40 Hz.
constexpr double kSideBySide = 1.3;

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

NoiseSpectrum::NoiseSpectrum(const std::vector<double>& frequency_hz,
                             const std::vector<double>& density_volt_per_sqrt_hz) {
  if (frequency_hz.size() < 2 || frequency_hz.size() != density_volt_per_sqrt_hz.size())
    throw std::domain_error("a noise spectrum must have at least 2 frequencies and a density for each, got " +
                            std::to_string(frequency_hz.size()) + " and " +
                            std::to_string(density_volt_per_sqrt_hz.size()));
  for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
    electrical::require_positive("frequency_hz", frequency_hz[i]);
    electrical::require_positive("density_volt_per_sqrt_hz", density_volt_per_sqrt_hz[i]);
    if (i == 0) continue;
    const double low_hz = frequency_hz[i - 1], high_hz = frequency_hz[i];
    if (high_hz <= low_hz)
      throw std::domain_error("frequency_hz must rise, got " + electrical::number_text(high_hz) + " after " +
                              electrical::number_text(low_hz));
    const double low = density_volt_per_sqrt_hz[i - 1] * density_volt_per_sqrt_hz[i - 1];
    const double high = density_volt_per_sqrt_hz[i] * density_volt_per_sqrt_hz[i];
    if (high_hz < kSideBySide * low_hz) {
      const double middle_hz = std::sqrt(low_hz * high_hz);
      pieces_.push_back({low_hz, middle_hz, low, low});
      pieces_.push_back({middle_hz, high_hz, high, high});
    } else {
      pieces_.push_back({low_hz, high_hz, low, high});
    }
  }
}

double NoiseSpectrum::Piece::slope() const {
  return std::log(high_power_density / low_power_density) / std::log(high_hz / low_hz);
}

double NoiseSpectrum::Piece::power_density(double frequency_hz) const {
  return low_power_density * std::pow(frequency_hz / low_hz, slope());
}

/// The integral of S (f/f0)^b, b the slope: stable where b is near -1.
double NoiseSpectrum::Piece::power_between(double from_hz, double to_hz) const {
  const double turns = std::log(to_hz / from_hz), power = slope() + 1;
  const double integral = std::abs(power * turns) < 1e-12 ? turns : std::expm1(power * turns) / power;
  return low_power_density * low_hz * std::pow(from_hz / low_hz, power) * integral;
}

double NoiseSpectrum::density_volt_per_sqrt_hz(double frequency_hz) const {
  electrical::require_within("frequency_hz of a noise spectrum", frequency_hz, band().low_hz, band().high_hz);
  const auto piece = std::find_if(pieces_.begin(), pieces_.end() - 1,
                                  [&](const Piece& each) { return frequency_hz <= each.high_hz; });
  return std::sqrt(piece->power_density(frequency_hz));
}

double NoiseSpectrum::mean_square_volt2(const electrical::Band& within) const {
  double sum = 0;
  for (const Piece& piece : pieces_) {
    const double low_hz = std::max(within.low_hz, piece.low_hz);
    const double high_hz = std::min(within.high_hz, piece.high_hz);
    if (low_hz < high_hz) sum += piece.power_between(low_hz, high_hz);
  }
  return sum;
}

double NoiseSpectrum::mean_square_volt2(const electrical::Band& within,
                                        double (*weighting_db)(double)) const {
  constexpr double kStep = 0.05;  // of ln f: over it a weighting is nearly a straight line
  double sum = 0;
  for (const Piece& piece : pieces_) {
    const double low = std::log(std::max(within.low_hz, piece.low_hz));
    const double high = std::log(std::min(within.high_hz, piece.high_hz));
    if (low >= high) continue;
    const double steps = std::ceil((high - low) / kStep), width = (high - low) / steps;
    for (int i = 0; i < static_cast<int>(steps); ++i)
      sum += boost::math::quadrature::gauss<double, 7>::integrate(
          [&](double log_hz) {
            const double f = std::clamp(std::exp(log_hz), within.low_hz, within.high_hz);
            return f * piece.power_density(f) * std::pow(10, weighting_db(f) / 10);
          },
          low + i * width, low + (i + 1) * width);
  }
  return sum;
}

NoiseSpectrum spectrum_of_levels(const std::vector<double>& frequency_hz,
                                 const std::vector<double>& level_dbv,
                                 const std::vector<double>& bandwidth_hz) {
  if (level_dbv.size() != bandwidth_hz.size())
    throw std::domain_error("each level must have its bandwidth, got " + std::to_string(level_dbv.size()) +
                            " and " + std::to_string(bandwidth_hz.size()));
  std::vector<double> density;
  for (std::size_t i = 0; i < level_dbv.size(); ++i) {
    electrical::require_positive("bandwidth_hz", bandwidth_hz[i]);
    density.push_back(std::pow(10, level_dbv[i] / 20) / std::sqrt(bandwidth_hz[i]));
  }
  return {frequency_hz, density};
}

std::optional<NoiseSpectrum> spectrum_of_columns(const std::vector<double>& frequency_hz,
                                                 const std::vector<double>* density_volt_per_sqrt_hz,
                                                 const std::vector<double>* level_dbv,
                                                 const std::vector<double>* bandwidth_hz) {
  if (density_volt_per_sqrt_hz != nullptr) return NoiseSpectrum(frequency_hz, *density_volt_per_sqrt_hz);
  if (level_dbv == nullptr || bandwidth_hz == nullptr) return std::nullopt;
  return spectrum_of_levels(frequency_hz, *level_dbv, *bandwidth_hz);
}

electrical::Band third_octave_band(int n) {
  const double centre_hz = electrical::third_octave_centre_hz(n);
  return {centre_hz / kThirdOctaveHalf, centre_hz * kThirdOctaveHalf};
}

std::vector<BandLevel> third_octave_levels(const NoiseSpectrum& noise) {
  std::vector<BandLevel> levels;
  const electrical::Band known{noise.band().low_hz * (1 - 1e-9), noise.band().high_hz * (1 + 1e-9)};
  for (int n = kOf20Hz; n <= kOf20kHz; ++n) {
    const electrical::Band band = third_octave_band(n);
    if (band.low_hz < known.low_hz || band.high_hz > known.high_hz) continue;
    levels.push_back(
        {n, electrical::third_octave_centre_hz(n), 10 * std::log10(noise.mean_square_volt2(band))});
  }
  return levels;
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
  return std::sqrt(noise.mean_square_volt2(electrical::overlap(noise.band(), band), weighting_db));
}

double thermal_noise_volt(double resistance_ohm, double bandwidth_hz, double temperature_kelvin) {
  electrical::require_not_negative("resistance_ohm", resistance_ohm);
  electrical::require_not_negative("bandwidth_hz", bandwidth_hz);
  electrical::require_positive("temperature_kelvin", temperature_kelvin);
  return std::sqrt(4 * kBoltzmann * temperature_kelvin * resistance_ohm * bandwidth_hz);
}

}  // namespace hearing
