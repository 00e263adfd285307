#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/shelf/shelf.h"
#include "electrical/facts/delay.h"

namespace desk {

/// One phase reading and what the circuit says of it.
struct PhaseReading {
  int number = 0;
  std::string words;  ///< "reading 9 (phases.csv), rig bench"
  std::string ends;   ///< "source 50 ohm, load 1Mohm||15pF", as far as known
  double frequency_hz = 0;
  double measured_deg = 0;  ///< as read
  std::optional<electrical::PhaseShares> shares;
  std::string missing;                                ///< without shares: what is not known, and what to do
  std::optional<double> left_over_of_other_sign_deg;  ///< where the other sign would fit much better
};

/// The phase readings of a cable, of the voltage at the load against the source's without load.
struct PhasesOfCable {
  std::string cable;
  std::vector<PhaseReading> readings;
};

/// @throws text::BadInput for a cable that is not there or without such readings.
PhasesOfCable phases_of(const Path& campaign, const std::string& cable);

std::string phases_text(const PhasesOfCable& phases);

/// {"schema": 1, ...}
std::string phases_json(const PhasesOfCable& phases);

}  // namespace desk
