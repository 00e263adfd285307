#include "desk/shelf/prediction_parts.h"
#include "desk/shelf/shelf_prediction.h"
#include "text/columns.h"
#include "text/number.h"
#include "text/quantity.h"

namespace desk {
namespace {

using nlohmann::json;

std::string span(const Span& of_db) {
  return text::fixed(of_db.least, 3) + " to " + text::fixed(of_db.greatest, 3);
}

std::string swaps_text(const RigOfShelf& rig) {
  bool has_steps = false;
  for (const ShelfSwap& swap : rig.swaps) has_steps |= swap.left_by_steps_db.has_value();
  const auto at = [](double frequency_hz) { return text::with_unit(frequency_hz, text::Unit::hertz); };
  using enum text::Align;
  text::Columns table({"cable", "level", has_steps ? "left by steps" : "", "response", "at", "r.m.s.",
                       "auditory bands", "at"},
                      {left, right, right, right, right, right, right, right});
  for (const ShelfSwap& swap : rig.swaps) {
    if (swap.open) {
      table.add({swap.cable + " *", span(swap.open->level_difference_db), "",
                 span(swap.open->largest_residual_db), "", span(swap.open->rms_residual_db), "", ""});
      continue;
    }
    table.add({swap.cable, text::fixed(swap.difference_db, 3),
               swap.left_by_steps_db ? text::fixed(*swap.left_by_steps_db, 3) : "",
               text::fixed(swap.after.residual.largest_db, 3),
               at(swap.after.residual.frequency_of_largest_hz), text::fixed(swap.after.residual.rms_db, 3),
               text::fixed(swap.after.smoothed.largest_db, 3),
               at(swap.after.smoothed.frequency_of_largest_hz)});
  }
  return paragraph("rig " + rig.name + " (" + rig.description + ")") + table.text(2);
}

std::string joined_names(const std::vector<std::string>& names) {
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "" : ", ") + name;
  return all;
}

json swap_json(const ShelfSwap& swap) {
  return {{"cable", swap.cable},
          {"level_difference_dB", swap.difference_db},
          {"residual", residual_json(swap.after.residual)},
          {"smoothed", smoothed_json(swap.after.smoothed)},
          {"left_by_steps_dB", swap.left_by_steps_db ? json(*swap.left_by_steps_db) : json()},
          {"left_open", swap.open ? open_json(*swap.open) : json()}};
}

}  // namespace

std::string shelf_prediction_text(const ShelfPrediction& prediction) {
  std::string words =
      paragraph("each cable in place of " + prediction.baseline +
                ", in dB: its level less that of the baseline under " + prediction.weighting +
                "; what whole steps of the volume leave of that, where the rig's step is known; and, "
                "after a trim by the exact difference, the largest difference of the response, its r.m.s., "
                "and the largest as "
                "auditory bands smooth it");
  for (const RigOfShelf& rig : prediction.rigs) words += "\n" + swaps_text(rig);
  words += "\n";
  if (!prediction.unknown.empty())
    words += paragraph(
        "* left open: inductance or capacitance of " + joined_names(prediction.unknown) +
        "; level, response and r.m.s. lie between these values if they are those of most pairs: blindswap "
        "predict " +
        prediction.baseline + " CABLE --rig RIG says what is counted");
  words += thresholds_text();
  for (const std::string& each : prediction.left_out) words += paragraph("left out: " + each);
  for (const std::string& each : prediction.cautions) words += paragraph("caution: " + each);
  return words;
}

std::string shelf_prediction_json(const ShelfPrediction& prediction) {
  json rigs = json::array();
  for (const RigOfShelf& rig : prediction.rigs) {
    json swaps = json::array();
    for (const ShelfSwap& swap : rig.swaps) swaps.push_back(swap_json(swap));
    rigs.push_back({{"rig", rig.name}, {"swaps", swaps}});
  }
  return json{{"schema", 1},
              {"baseline", prediction.baseline},
              {"weighting", prediction.weighting},
              {"rigs", rigs},
              {"unknown", prediction.unknown},
              {"left_out", prediction.left_out},
              {"cautions", prediction.cautions},
              {"published_thresholds", thresholds_json()}}
             .dump(2) +
         "\n";
}

}  // namespace desk
