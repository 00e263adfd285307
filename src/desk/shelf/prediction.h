#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/shelf/known_line.h"
#include "desk/shelf/line_level.h"
#include "desk/shelf/shelf.h"
#include "electrical/extreme.h"
#include "findings/evidence.h"
#include "hearing/auditory/smoothed.h"
#include "hearing/residual.h"
#include "hearing/weighting.h"

namespace desk {

/// A level difference as one number under one weighting.
struct WeightedDifference {
  std::string weighting, title;
  double difference_db = 0;
};

struct CablePrediction {
  std::string name;
  KnownLine line;
  std::optional<double> damping_factor;  ///< on a loudspeaker whose rated impedance is known
  std::optional<LineLevel> line_level;   ///< on a line-level rig
  std::vector<std::string> cautions;
};

/// What remains of a difference after a trim: as it is, and as the auditory filters pass it.
struct AfterTrim {
  hearing::Residual residual;
  hearing::AuditoryDifference smoothed;
};

AfterTrim after_trim(const hearing::LevelCurve& to, const hearing::LevelCurve& from, double trim_db);

/// The trim as far as whole steps of the rig's volume control allow it.
struct SteppedTrim {
  double step_db = 0;
  int first_steps = 0, second_steps = 0;  ///< downwards; one of them is 0
  double level_left_db = 0;               ///< second less first, under the trim's weighting
  AfterTrim after;
};

/// What inductances and capacitances that are not known leave open, if they are those of most pairs (`possible_lines`).
struct LeftOpen {
  std::vector<std::string> unknown;  ///< "inductance and capacitance of bell-wire"
  Span level_difference_db;          ///< under the trim's weighting
  Span largest_residual_db;          ///< its size, after the trim by that difference
  Span rms_residual_db;
};

/// What the circuit says of swapping one cable for another on a rig; levels are second less first. Unknown constants count
/// as `KnownLine::cable` says, except in `left_open`.
struct Prediction {
  std::string rig, rig_description;
  CablePrediction first, second;
  std::vector<WeightedDifference> level_differences;  ///< one a weighting, in the order of the list
  std::string trim_weighting;
  AfterTrim after;                     ///< after the difference under `trim_weighting` is taken away
  std::optional<SteppedTrim> stepped;  ///< where the rig's volume step is known
  std::optional<LeftOpen> left_open;   ///< where something is not known
  std::vector<double> frequency_hz, difference_db;
  electrical::Extreme least_impedance_ohm{};
};

struct NamedLine {
  std::string name;
  KnownLine line;
};

/// Nothing where both lines are known.
std::optional<LeftOpen> left_open(const NamedLine& first, const NamedLine& second,
                                  const electrical::Source& source, const electrical::Load& load,
                                  const hearing::Weighting& weighting);

/// What its user has to know of a line, without the cable's name.
std::vector<std::string> cautions_of(const KnownLine& line);

/// @param weighting  of the trim whose residual is shown; "" for pink-k.
/// @throws text::BadInput naming what is not known yet: a cable's resistance, the rig's source or load.
Prediction predict(const Path& campaign, const std::string& rig, const std::string& first,
                   const std::string& second, const std::string& weighting);

/// Second less first, trims not counted, under one weighting; nothing where the circuit is not known.
std::optional<double> predicted_difference_db(const findings::RigEvidence& rig,
                                              const std::optional<electrical::Cable>& first,
                                              const std::optional<electrical::Cable>& second,
                                              const std::string& weighting);

}  // namespace desk
