#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/shelf/shelf.h"
#include "electrical/extreme.h"
#include "findings/evidence.h"
#include "hearing/residual.h"

namespace desk {

/// A level difference as one number under one weighting.
struct WeightedDifference {
  std::string weighting, title;
  double difference_db = 0;
};

struct CablePrediction {
  std::string name;
  double loop_resistance_ohm = 0;
  double inductance_henry = 0;
  double capacitance_farad = 0;
  std::optional<double> damping_factor;  ///< when the rig's rated impedance is known
  std::vector<std::string> cautions;
};

/// What the circuit says of swapping one cable for another on a rig; levels are second less first.
struct Prediction {
  std::string rig, rig_description;
  CablePrediction first, second;
  std::vector<WeightedDifference> level_differences;  ///< one a weighting, in the order of the list
  std::string trim_weighting;
  hearing::Residual residual;  ///< after the difference under `trim_weighting` is taken away
  std::vector<double> frequency_hz, difference_db;
  electrical::Extreme least_impedance_ohm{};
};

/// @param weighting  of the trim whose residual is shown; "" for pink-k.
/// @throws text::BadInput naming what is not known yet: a cable's readings, the rig's source or load.
Prediction predict(const Path& campaign, const std::string& rig, const std::string& first,
                   const std::string& second, const std::string& weighting);

/// Second less first, trims not counted, under one weighting; nothing where the circuit is not known.
std::optional<double> predicted_difference_db(const findings::RigEvidence& rig,
                                              const std::optional<electrical::Cable>& first,
                                              const std::optional<electrical::Cable>& second,
                                              const std::string& weighting);

}  // namespace desk
