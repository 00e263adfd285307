#pragma once

#include <optional>
#include <vector>

#include "electrical/frequency_grid.h"

namespace hearing {

/// The power density of a noise voltage over frequency, V^2/Hz, known between its first and last frequency.
///
/// Points closer than a third-octave (ratio 1.3) count as bins or bands that stand side by side: each density holds up to
/// the geometric middle between it and its neighbour, so that a line of hum keeps its whole power, whatever bins it falls
/// into. Points further apart are joined by a straight line in log-log. White noise is exact either way, pink noise within
/// 0.03 dB in bins and exact between lone points.
class NoiseSpectrum {
 public:
  /// @param frequency_hz             at least 2, above 0, rising.
  /// @param density_volt_per_sqrt_hz as many, finite and above 0.
  /// @throws std::domain_error  naming the argument, its value and its range.
  NoiseSpectrum(const std::vector<double>& frequency_hz, const std::vector<double>& density_volt_per_sqrt_hz);

  electrical::Band band() const { return {pieces_.front().low_hz, pieces_.back().high_hz}; }

  /// Mean square voltage within the part of `band` where the spectrum is known; 0 if they share nothing.
  double mean_square_volt2(const electrical::Band& band) const;

  /// The same under a weighting, which must be defined there.
  double mean_square_volt2(const electrical::Band& band, double (*weighting_db)(double)) const;

  double density_volt_per_sqrt_hz(double frequency_hz) const;

 private:
  /// A straight line in log-log.
  struct Piece {
    double low_hz, high_hz;
    double low_power_density, high_power_density;

    double slope() const;
    double power_density(double frequency_hz) const;
    double power_between(double from_hz, double to_hz) const;
  };

  std::vector<Piece> pieces_;
};

/// From levels in dB re 1 V, each measured in a filter or bin of its own noise bandwidth (for a Hann window 1.5 times the
/// spacing of the bins; for a third-octave 0.2308 times its centre). A spectrum of levels means nothing without it.
/// @param bandwidth_hz  as many, above 0.
NoiseSpectrum spectrum_of_levels(const std::vector<double>& frequency_hz,
                                 const std::vector<double>& level_dbv,
                                 const std::vector<double>& bandwidth_hz);

/// From the columns of a reading, null where it has none: densities, or levels with their bandwidths.
/// @return  nothing for levels whose bandwidth is not known.
std::optional<NoiseSpectrum> spectrum_of_columns(const std::vector<double>& frequency_hz,
                                                 const std::vector<double>* density_volt_per_sqrt_hz,
                                                 const std::vector<double>* level_dbv,
                                                 const std::vector<double>* bandwidth_hz);

/// Third-octave band n: its exact centre times 10^(-1/20) to 10^(1/20). Source: IEC 61260-1, base 10 (from memory).
electrical::Band third_octave_band(int n);

struct BandLevel {
  int third_octave;  ///< 0 is 1 kHz
  double centre_hz;
  double level_dbv;
};

/// Every third-octave band from 20 Hz to 20 kHz that lies within the spectrum's frequencies.
std::vector<BandLevel> third_octave_levels(const NoiseSpectrum& noise);

/// Weighting of noise for disturbance at one frequency, dB re 1 kHz, linear in log f between the standard's points. The
/// standard's quasi-peak meter is not part of it: weighted r.m.s. values made with it are not those of its meter.
/// @param frequency_hz  31.5 to 31 500.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Source: ITU-R BS.468-4, Table 1 (read in a secondary copy).
double itu_468_weighting_db(double frequency_hz);

/// R.m.s. voltage of the noise under a weighting over the part of a band where the spectrum is known.
/// @throws std::domain_error  naming the bands, if there is no such part.
double weighted_volt(const NoiseSpectrum& noise, double (*weighting_db)(double),
                     const electrical::Band& band);

/// Thermal noise of a resistor: sqrt(4 k T R B). What a cable or a source cannot be quieter than.
/// @param resistance_ohm  0 or more.  @param bandwidth_hz  0 or more; 1 gives V/sqrt(Hz).  @param temperature_kelvin  above 0.
/// Example: 1 kohm over 20 kHz at 300 K: 0.5756 uV.  Source: Johnson 1928, Nyquist 1928 (from memory).
double thermal_noise_volt(double resistance_ohm, double bandwidth_hz, double temperature_kelvin);

}  // namespace hearing
