#include "desk/plans/plan_text.h"

#include <cmath>

#include "plan/looks.h"
#include "seal/digest.h"
#include "text/columns.h"
#include "text/number.h"

namespace desk {
namespace {

using text::Align;

std::string need_of(const plan::Plan& plan, const plan::Requirement& requirement) {
  const bool shared = requirement.trials != requirement.answers;
  if (!requirement.at_looks.empty()) {
    std::string looks;
    for (const auto& [after, needed] : requirement.at_looks)
      looks += (looks.empty() ? "" : ", ") + (needed ? std::to_string(*needed) : "none") + " of " +
               std::to_string(after);
    return looks + (shared ? " trials where all answer alike" : "");
  }
  const std::string trials =
      std::to_string(requirement.needed_trials) + " of " + std::to_string(requirement.trials);
  if (!shared) return trials;
  const int listeners = static_cast<int>(plan.listeners.size());
  return trials + " trials where all answer alike (" + std::to_string(requirement.needed_trials * listeners) +
         " of " + std::to_string(requirement.answers) + " answers)";
}

std::string hours(double minutes) {
  const long whole = std::lround(minutes);
  return std::to_string(whole / 60) + " h " + std::to_string(whole % 60) + " min";
}

std::string requirements_text(const SealedNow& now) {
  text::Columns list({"comparison", "what it is", "second less first, predicted dB", "needed", "at level"},
                     {Align::left, Align::left, Align::right});
  for (const plan::Requirement& requirement : now.requirements) {
    const plan::Comparison& comparison =
        now.plan.comparisons[static_cast<std::size_t>(requirement.comparison)];
    list.add({plan::title_of(now.plan, comparison), std::string(plan::name_of(comparison.kind)),
              comparison.predicted_difference_db.empty() ? "not known" : comparison.predicted_difference_db,
              need_of(now.plan, requirement), text::significant(requirement.level, 3)});
  }
  return list.text(2);
}

std::string trims_text(const plan::Plan& plan) {
  if (plan.levels != "trimmed") return "levels as connected: nothing is trimmed\n";
  std::string words = "trims, by " + plan.trim_weighting + ", in steps of " + plan.volume_step_db + " dB:\n";
  text::Columns list({"cable", "steps down"}, {Align::left, Align::right});
  for (const plan::Specimen& specimen : plan.specimens)
    list.add({plan::title_of(specimen), std::to_string(specimen.trim_steps)});
  return words + list.text(2);
}

std::string comparisons_of(const plan::Plan& plan, std::size_t sitting) {
  std::string words;
  for (const int index : plan.sittings[sitting].comparisons)
    words +=
        (words.empty() ? "" : ", ") + plan::title_of(plan, plan.comparisons[static_cast<std::size_t>(index)]);
  return words;
}

}  // namespace

std::string sealing_text(const SealedNow& now) {
  std::string words;
  if (now.sealed.text.empty()) {
    words = "a dry run: nothing is sealed\n";
  } else {
    words = "plan \"" + now.plan.name + "\" is sealed\n\ncommitment  " + seal::to_hex(now.sealed.commitment) +
            "\n\nGive the commitment to somebody outside before the first trial: only from then on does it "
            "bind.\n";
    if (now.plan.seed_origin == "supplied")
      words +=
          "The order's seed was supplied, not drawn: this is a demonstration, and the report will say so.\n";
  }
  words += "\nneeded (family of " + std::to_string(plan::family_size(now.plan)) + ", first step of Holm):\n" +
           requirements_text(now) + "\n" + trims_text(now.plan) + "\n";
  if (plan::looks_of(now.plan))
    words += "A look may stop a claim: the sittings are held live (sitting host).\n";
  for (std::size_t i = 0; i < now.minutes.size(); ++i)
    words += "sitting " + std::to_string(i + 1) + " (" + comparisons_of(now.plan, i) + "): about " +
             hours(now.minutes[i]) + " at " + std::to_string(now.plan.swap_seconds) + " s a swap and " +
             std::to_string(now.plan.presentation_seconds) + " s a presentation, breaks included\n";
  return words;
}

std::string plan_text(const Path& file, const std::string& name) {
  const store::Campaign campaign = store::Campaign::open(file);
  const OpenedPlan opened = open_plan(campaign, name);
  return opened.sealed.text + "\ncommitment " + seal::to_hex(opened.sealed.commitment) + "\n";
}

}  // namespace desk
