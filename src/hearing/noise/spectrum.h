#pragma once

#include <vector>

#include "electrical/frequency_grid.h"

namespace hearing {

/// The power density of a noise voltage over frequency, V^2/Hz, known between its first and last frequency: a straight
/// line in log-log between them, so that white and pink noise are exact.
class NoiseSpectrum {
 public:
  /// @param frequency_hz             at least 2, above 0, rising.
  /// @param density_volt_per_sqrt_hz as many, finite and above 0.
  /// @throws std::domain_error  naming the argument, its value and its range.
  NoiseSpectrum(std::vector<double> frequency_hz, std::vector<double> density_volt_per_sqrt_hz);

  electrical::Band band() const { return {frequency_hz_.front(), frequency_hz_.back()}; }

  /// Mean square voltage within the part of `band` where the spectrum is known; 0 if they share nothing.
  double mean_square_volt2(const electrical::Band& band) const;

  double density_volt_per_sqrt_hz(double frequency_hz) const;

 private:
  double power_between(std::size_t segment, double low_hz, double high_hz) const;

  std::vector<double> frequency_hz_;
  std::vector<double> power_density_;
};

/// From levels in dB re 1 V, each measured in a filter or bin of this noise bandwidth (for a Hann window 1.5 times the
/// spacing of the bins). A spectrum of levels means nothing without it.
/// @param bandwidth_hz  above 0.
NoiseSpectrum spectrum_of_levels(std::vector<double> frequency_hz, const std::vector<double>& level_dbv,
                                 double bandwidth_hz);

/// From the levels of third-octave bands at their centres.
NoiseSpectrum spectrum_of_third_octaves(std::vector<double> frequency_hz,
                                        const std::vector<double>& level_dbv);

/// Third-octave band n: its exact centre times 10^(-1/20) to 10^(1/20). Source: IEC 61260-1, base 10 (from memory).
electrical::Band third_octave_band(int n);

/// Weighting of noise for disturbance at one frequency, dB re 1 kHz, linear in log f between the standard's points. The
/// standard's quasi-peak meter is not part of it: weighted r.m.s. values made with it are not those of its meter.
/// @param frequency_hz  31.5 to 31 500.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Source: ITU-R BS.468-4, Table 1 (read in a secondary copy).
double itu_468_weighting_db(double frequency_hz);

/// R.m.s. voltage of the noise under a weighting over a band.
double weighted_volt(const NoiseSpectrum& noise, double (*weighting_db)(double),
                     const electrical::Band& band);

/// Thermal noise of a resistor: sqrt(4 k T R B). What a cable or a source cannot be quieter than.
/// @param resistance_ohm  0 or more.  @param bandwidth_hz  0 or more; 1 gives V/sqrt(Hz).  @param temperature_kelvin  above 0.
/// Example: 1 kohm over 20 kHz at 300 K: 0.5756 uV.  Source: Johnson 1928, Nyquist 1928 (from memory).
double thermal_noise_volt(double resistance_ohm, double bandwidth_hz, double temperature_kelvin);

}  // namespace hearing
