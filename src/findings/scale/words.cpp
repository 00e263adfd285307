#include "findings/scale/words.h"

#include <cmath>

#include "findings/words/numbers.h"
#include "plan/requirement.h"
#include "stats/level.h"
#include "text/number.h"

namespace findings {
namespace {

std::string apart_words(const PreferenceScale& scale) {
  std::vector<std::string> groups;
  for (const auto& group : scale.groups) groups.push_back("(" + listed(group) + ")");
  return "There is no one scale: these groups were never compared with each other: " + listed(groups) + ".";
}

std::string pairs_words(const PreferenceScale& scale, double level) {
  std::vector<std::string> apart;
  for (const auto& pair : scale.pairs)
    if (stats::reaches(pair.p_adjusted, level)) {
      const auto& better = scale.cables[std::size_t(pair.difference > 0 ? pair.first : pair.second)];
      const auto& other = scale.cables[std::size_t(pair.difference > 0 ? pair.second : pair.first)];
      apart.push_back(better.title + " above " + other.title + " (adjusted " + p_words(pair.p_adjusted) +
                      ")");
    }
  if (apart.empty()) return " No two cables are told apart by it.";
  return " It tells apart: " + listed(apart) + ".";
}

std::string order_words(const PreferenceScale& scale) {
  const double p = std::erfc(std::abs(scale.order_effect) / scale.order_error / std::sqrt(2.0));
  const double share = 1 / (1 + std::exp(-scale.order_effect));
  return " Of two cables alike the one played first would be preferred in " +
         percent(std::round(share * 100) / 100) + " of trials (against one half: " + p_words(p) +
         ", by the standard error).";
}

}  // namespace

std::string sentence_of(const PreferenceScale& scale, const plan::Plan& plan) {
  using State = PreferenceScale::State;
  if (scale.state == State::apart) return apart_words(scale);
  std::string words = "Explored: worths of " + std::to_string(scale.cables.size()) + " cables from " +
                      counted(scale.answers, "answer") + ".";
  if (scale.state == State::corrected)
    words +=
        " Preferences did not go round among all of them, so that plain estimates would be infinite: these "
        "are corrected for "
        "bias, and no two cables are tested.";
  else
    words += pairs_words(scale, plan::level_of(plan));
  words += order_words(scale);
  if (scale.fit_p)
    words += stats::reaches(*scale.fit_p, plan::level_of(plan))
                 ? " One scale and one effect of the order do not explain the answers (simulated " +
                       p_words(*scale.fit_p) + ")."
                 : " Nothing speaks against one scale (simulated " + p_words(*scale.fit_p) + ").";
  if (plan.listeners.size() > 1)
    words += plan.attendance == "together" ? " All answers are treated as independent, which those of "
                                             "listeners who sit together are not: errors and p "
                                             "come out too small."
                                           : " All answers are treated as independent; listeners who prefer "
                                             "differently make errors and p come out too "
                                             "small.";
  return words;
}

}  // namespace findings
