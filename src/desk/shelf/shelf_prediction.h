#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/shelf/prediction.h"

namespace desk {

/// One cable in place of the baseline on one rig; levels are cable less baseline.
struct ShelfSwap {
  std::string cable;
  double difference_db = 0;                ///< under the weighting; what is not known left out
  AfterTrim after;                         ///< after that difference is taken away
  std::optional<double> left_by_steps_db;  ///< where the rig's volume step is known
  std::optional<LeftOpen> open;  ///< where inductance or capacitance of cable or baseline is not known
};

struct RigOfShelf {
  std::string name, description;
  std::vector<ShelfSwap> swaps;  ///< the largest difference first, be it only a possible one
};

/// Every cable of a campaign in place of its baseline.
struct ShelfPrediction {
  std::string baseline, weighting;
  std::vector<RigOfShelf> rigs;
  std::vector<std::string> unknown;   ///< cables of whose line something is not known
  std::vector<std::string> left_out;  ///< cables and rigs, and why
  std::vector<std::string> cautions;  ///< "flat-strip: more than 1 nF in all; ..."
};

/// The same numbers as `predict` finds for each pair.
/// @param rig        "" for every rig whose source and load are known.
/// @param weighting  "" for pink-k.
/// @throws text::BadInput when there is no baseline, its resistance is not known, there is no other cable whose resistance is
///         known, or no rig (or not the one named) has source and load.
ShelfPrediction predict_shelf(const Path& campaign, const std::string& rig, const std::string& weighting);

std::string shelf_prediction_text(const ShelfPrediction& prediction);

/// {"schema": 1, "baseline", "weighting", "rigs": [{"rig", "swaps": [{"cable", "level_difference_dB",
/// "residual", "smoothed", "left_by_steps_dB", "left_open"}]}], "unknown", "left_out", "cautions", "published_thresholds"}; the parts as in
/// `prediction_json`.
std::string shelf_prediction_json(const ShelfPrediction& prediction);

/// Every cable's level on those rigs at 2,000 frequencies from 10 Hz to 100 kHz, or to where the load is known, as a table
/// rig,cable,frequency_Hz,level_dB,difference_dB. Written whole or not at all.
/// @throws as `predict_shelf` and `write_file`.
void write_curves(const Path& campaign, const std::string& rig, const Path& table, bool replace);

}  // namespace desk
