#include "desk/sittings/sitting_text.h"

#include "sitting/words.h"

namespace desk {
namespace {

std::string joined(const std::vector<std::string>& words) {
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
  return list;
}

}  // namespace

std::string fact_names() {
  std::vector<std::string> names;
  for (const sitting::FactKind& fact : sitting::fact_kinds()) names.emplace_back(fact.name);
  return joined(names);
}

std::string status_text(const SittingStatus& status) {
  std::string words = "sitting " + std::to_string(status.number) + " of plan \"" + status.plan +
                      "\": " + status.phase + (status.way.empty() ? "" : ", " + status.way) + "\n";
  for (const auto& [listener, characters] : status.characters)
    words += "  " + listener +
             (characters.empty() ? ": no characters for the order yet\n" : ": characters added\n");
  words += "  " + std::to_string(status.settled) + " of " + std::to_string(status.planned) +
           " trials are settled\n";
  for (const auto& [trial, why] : status.spoiled)
    words += "  trial " + std::to_string(trial) + " is spoiled: " + why + "\n";
  for (const auto& [trial, listeners] : status.waiting)
    words += "  trial " + std::to_string(trial) + " waits for " + joined(listeners) + "\n";
  return words + gaps_text(gaps_of(status)) + "chain head  " + status.head_hex + "\n";
}

std::vector<std::string> unsaid_of(const SittingStatus& status) {
  std::vector<std::string> gaps;
  for (const std::string& difference : status.differences)
    gaps.push_back("corrected or confirmed after the second entry: " + difference);
  gaps.insert(gaps.end(), status.not_said.begin(), status.not_said.end());
  return gaps;
}

std::vector<std::string> gaps_of(const SittingStatus& status) {
  std::vector<std::string> gaps = unsaid_of(status);
  gaps.insert(gaps.end(), status.not_measured.begin(), status.not_measured.end());
  return gaps;
}

std::string gaps_text(const std::vector<std::string>& gaps) {
  std::string words = gaps.empty() ? "" : "not recorded:\n";
  for (const std::string& gap : gaps) words += "  " + gap + "\n";
  return words;
}

std::string second_entry_text(const SecondEntry& entry) {
  std::string words = std::to_string(entry.compared) + " answers compared, " +
                      std::to_string(entry.differences.size()) +
                      (entry.differences.size() == 1 ? " differs\n" : " differ\n");
  for (const std::string& difference : entry.differences) words += "  " + difference + "\n";
  if (!entry.differences.empty())
    words +=
        "look at the sheets again, then correct what was misread, or confirm it by correcting to the same "
        "answer\n";
  for (const std::string& missing : entry.not_keyed) words += "  not keyed the first time: " + missing + "\n";
  return words;
}

}  // namespace desk
