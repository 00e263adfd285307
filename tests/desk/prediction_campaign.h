#pragma once

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

#include "desk/shelf/prediction_text.h"
#include "desk/shelf/shelf.h"
#include "whole/program.h"

/// The loudspeaker of the golden cases, as typed: see electrical/golden_cases.h.
inline const char* const ls1_typed = "3.0ohm + 0.1mH + [27ohm||475uF||21.3mH] + [11ohm||9.6uF||0.81mH]";

/// A campaign to predict from.
class PredictionCampaign {
 public:
  explicit PredictionCampaign(const desk::RigTyped& rig) {
    desk::start_campaign(file(), "predictions");
    desk::add_rig(file(), rig);
    rig_ = rig.name;
  }

  void cable(const std::string& name, const std::vector<std::pair<std::string, std::string>>& construction) {
    desk::add_cable(file(), {name, construction, ""}, false);
  }

  void table(const std::string& content) {
    const std::string name = "table-" + std::to_string(++tables_) + ".csv";
    desk::import_files(file(), {folder_.write(name, content)}, {});
  }

  desk::Prediction predicted(const std::string& first, const std::string& second,
                             const std::string& weighting = "pink-k") const {
    return desk::predict(file(), rig_, first, second, weighting);
  }

  /// The text with every run of spaces and line ends as one space.
  std::string words(const std::string& first, const std::string& second,
                    const std::string& weighting = "pink-k") const {
    std::string words;
    for (const char c : desk::prediction_text(predicted(first, second, weighting)))
      if (c != ' ' && c != '\n')
        words += c;
      else if (!words.ends_with(' '))
        words += ' ';
    return words;
  }

  nlohmann::json json(const std::string& first, const std::string& second) const {
    return nlohmann::json::parse(desk::prediction_json(predicted(first, second)));
  }

  std::filesystem::path file() const { return folder_ / "campaign.blindswap"; }

 private:
  Folder folder_;
  std::string rig_;
  int tables_ = 0;
};

inline desk::RigTyped golden_hall() {
  desk::RigTyped rig;
  rig.name = "hall";
  rig.source = "0.1ohm";
  rig.load = ls1_typed;
  rig.rated_impedance = "4ohm";
  rig.volume_step = "0.5dB";
  return rig;
}

inline desk::RigTyped other_rig(const std::string& source, const std::string& load,
                                const std::string& kind = "loudspeaker") {
  desk::RigTyped rig;
  rig.name = "other";
  rig.kind = kind;
  rig.source = source;
  rig.load = load;
  return rig;
}

/// Cables A1 to A3 of the golden cases, three metres of each.
inline const char* const golden_cables =
    "cable,length_m,resistance_ohm,inductance_uH,capacitance_pF\n"
    "A1,3,0.6,1.8,180\nA2,3,0.04788,1.65,240\nA3,3,0.04788,0.36,900\n";

#define EXPECT_SAYS(words, expected) EXPECT_NE((words).find(expected), std::string::npos) << (words)
#define EXPECT_SAYS_NOT(words, expected) EXPECT_EQ((words).find(expected), std::string::npos) << (words)
