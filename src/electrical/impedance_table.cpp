#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include "electrical/argument.h"
#include "electrical/load.h"

namespace electrical {
namespace {

void check_rising(const std::vector<double>& frequency_hz) {
  for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
    require_positive("frequency_hz", frequency_hz[i]);
    if (i > 0 && frequency_hz[i] <= frequency_hz[i - 1]) {
      throw std::domain_error("frequency_hz must rise, got " + number_text(frequency_hz[i]) + " after " +
                              number_text(frequency_hz[i - 1]));
    }
  }
}

void check_passive(double frequency_hz, std::complex<double> impedance_ohm) {
  const std::string where = "impedance_ohm at " + number_text(frequency_hz) + " Hz: ";
  require_positive(where + "magnitude", std::abs(impedance_ohm));
  require_not_negative(where + "real part", impedance_ohm.real());
}

}  // namespace

ImpedanceTable::ImpedanceTable(std::vector<double> frequency_hz,
                               std::vector<std::complex<double>> impedance_ohm)
    : frequency_hz_(std::move(frequency_hz)), log_impedance_(std::move(impedance_ohm)) {
  if (frequency_hz_.size() < 2 || frequency_hz_.size() != log_impedance_.size()) {
    throw std::domain_error(
        "an impedance table must have at least 2 frequencies and an impedance for each, got " +
        std::to_string(frequency_hz_.size()) + " and " + std::to_string(log_impedance_.size()));
  }
  check_rising(frequency_hz_);
  for (std::size_t i = 0; i < frequency_hz_.size(); ++i) {
    check_passive(frequency_hz_[i], log_impedance_[i]);
    log_impedance_[i] = std::log(log_impedance_[i]);
  }
}

std::complex<double> ImpedanceTable::at(double frequency_hz) const {
  require_within("frequency_hz in an impedance table", frequency_hz, frequency_hz_.front(),
                 frequency_hz_.back());
  const auto above = std::upper_bound(frequency_hz_.begin() + 1, frequency_hz_.end() - 1, frequency_hz);
  const auto i = static_cast<std::size_t>(above - frequency_hz_.begin());
  const double share =
      std::log(frequency_hz / frequency_hz_[i - 1]) / std::log(frequency_hz_[i] / frequency_hz_[i - 1]);
  return std::exp(log_impedance_[i - 1] + share * (log_impedance_[i] - log_impedance_[i - 1]));
}

}  // namespace electrical
