#include "desk/shelf/prediction_parts.h"

#include "hearing/auditory/published.h"
#include "report/wrapped_text.h"
#include "text/columns.h"
#include "text/number.h"

namespace desk {

std::string paragraph(const std::string& words, std::string_view indent) {
  constexpr std::size_t width = 100;
  return report::wrapped(words, width, indent, indent);
}

std::string thresholds_text() {
  text::Columns all({"dB", "published as just noticed", "source"}, {text::Align::right});
  for (const hearing::PublishedThreshold& each : hearing::published_thresholds())
    all.add({text::shortest(each.size_db), std::string(each.what), std::string(each.source)});
  return "beside these numbers:\n" + all.text(2) +
         paragraph(
             "these disagree, as methods and criteria differ; none was measured with music through "
             "cables; none says that less cannot be heard or that more is heard; " +
                 std::string(hearing::kNoSlope),
             "  ");
}

nlohmann::json residual_json(const hearing::Residual& residual) {
  return {{"minimum_dB", residual.minimum_db},
          {"maximum_dB", residual.maximum_db},
          {"rms_dB", residual.rms_db},
          {"frequency_of_largest_Hz", residual.frequency_of_largest_hz}};
}

nlohmann::json smoothed_json(const hearing::AuditoryDifference& smoothed) {
  return {{"largest_dB", smoothed.largest_db},
          {"frequency_of_largest_Hz", smoothed.frequency_of_largest_hz},
          {"rms_dB", smoothed.rms_db}};
}

nlohmann::json open_json(const LeftOpen& open) {
  return {{"unknown", open.unknown},
          {"inductance_H_per_m_least", kLeastInductanceHenryPerM},
          {"inductance_H_per_m_greatest", kMostInductanceHenryPerM},
          {"capacitance_F_per_m_least", kLeastCapacitanceFaradPerM},
          {"capacitance_F_per_m_greatest", kMostCapacitanceFaradPerM},
          {"level_difference_dB_least", open.level_difference_db.least},
          {"level_difference_dB_greatest", open.level_difference_db.greatest},
          {"largest_residual_dB_least", open.largest_residual_db.least},
          {"largest_residual_dB_greatest", open.largest_residual_db.greatest},
          {"rms_residual_dB_least", open.rms_residual_db.least},
          {"rms_residual_dB_greatest", open.rms_residual_db.greatest}};
}

nlohmann::json thresholds_json() {
  nlohmann::json all = nlohmann::json::array();
  for (const hearing::PublishedThreshold& each : hearing::published_thresholds())
    all.push_back({{"concerns", each.concerns == hearing::Concerns::level ? "level" : "response"},
                   {"size_dB", each.size_db},
                   {"what", each.what},
                   {"source", each.source}});
  return all;
}

}  // namespace desk
