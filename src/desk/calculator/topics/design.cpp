#include <string>
#include <tuple>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/arguments.h"
#include "stats/share/binomial.h"
#include "stats/share/power.h"
#include "stats/share/similarity.h"
#include "text/error.h"

namespace desk {
namespace {

/// The level, alone and at the first step of Holm, where the smallest p of m is held against level / m.
struct Levels {
  double level;
  int comparisons;
  double first_step;
};

Levels typed_levels(const Given& given) {
  Levels levels{given.level("level"), given.count("comparisons", 1, stats::kMostTrials), 0};
  levels.first_step = levels.level / levels.comparisons;
  return levels;
}

void add_levels(Figures& figures, double chance, const Levels& levels) {
  figures.figures.push_back({"chance", "chance", chance, "of a guess to be right"});
  figures.figures.push_back({"level", "level", levels.level});
  figures.figures.push_back({"comparisons", "comparisons", levels.comparisons});
  figures.figures.push_back({"level_first_step", "level at the first step", levels.first_step,
                             "level / comparisons: Holm's first step"});
}

/// Right answers needed, with the p that they have.
void add_need(Figures& figures, const std::string& key, const std::string& label, std::optional<int> minimum,
              int trials, double chance, bool two_sided) {
  const std::string impossible =
      "impossible: not even " + std::to_string(trials) + " of " + std::to_string(trials);
  std::optional<double> p;
  if (minimum)
    p = two_sided ? stats::two_sided(*minimum, trials, chance)
                  : stats::chance_of_at_least(*minimum, trials, chance);
  figures.figures.push_back(
      {"minimum_correct" + key, "right needed" + label, known(minimum), minimum ? "" : impossible});
  figures.figures.push_back(
      {"p" + key, "p of so many" + label, known(p), two_sided ? "two-sided, exact" : "one-sided, exact"});
}

void add_size(Figures& figures, const std::string& key, const std::string& rule,
              const std::optional<stats::PowerOfTrials>& found) {
  const std::string none = "no number up to " + std::to_string(stats::kSearchLimit) + " has the power";
  std::optional<int> trials, minimum;
  std::optional<double> size, power;
  if (found)
    trials = found->trials, minimum = found->minimum_correct, size = found->size, power = found->power;
  figures.figures.push_back({"trials_" + key, "trials, " + key, known(trials), found ? rule : none});
  figures.figures.push_back({"minimum_correct_" + key, "  right needed", known(minimum)});
  figures.figures.push_back(
      {"size_" + key, "  false alarms", known(size), "probability when every answer is a guess"});
  figures.figures.push_back({"power_" + key, "  power", known(power), "probability at the share"});
}

std::optional<double> heard(double share, double chance) {
  return share >= chance ? std::optional(stats::share_heard(share, chance)) : std::nullopt;
}

Figures need_figures(const Given& given) {
  const int trials = given.count("trials", 1, stats::kMostTrials);
  const double chance = given.chance();
  const Levels levels = typed_levels(given);
  if (given.has("two-sided") && chance != 0.5)
    throw text::BadInput("two-sided needs chance 0.5, got \"" + given.word("chance") +
                         "\"; leave one of the two out");
  const auto minimum = [&](double level) {
    return given.has("two-sided") ? stats::minimum_correct_two_sided(trials, level)
                                  : stats::minimum_correct(trials, level, chance);
  };
  Figures figures{"right answers needed of " + given.word("trials"),
                  {{"trials", "trials", trials}, {"two_sided", "two-sided", given.has("two-sided")}}};
  add_levels(figures, chance, levels);
  add_need(figures, "", "", minimum(levels.level), trials, chance, given.has("two-sided"));
  add_need(figures, "_first_step", ", first step", minimum(levels.first_step), trials, chance,
           given.has("two-sided"));
  return figures;
}

Figures size_figures(const Given& given) {
  const double share = given.number("share");
  const double power = given.level("power");
  const double chance = given.chance();
  const Levels levels = typed_levels(given);
  const auto first = stats::smallest_trials_first(power, share, levels.first_step, chance);
  const auto stable = stats::smallest_trials_stable(power, share, levels.first_step, chance);
  Figures figures{"trials that find a share right of " + given.word("share"),
                  {{"share", "share right", share},
                   {"share_heard", "heard in this share of trials", known(heard(share, chance)),
                    "if the rest is guessed"},
                   {"power_wanted", "power wanted", power}}};
  add_levels(figures, chance, levels);
  add_size(figures, "first", "the fewest that have the power; a few more may have less", first);
  add_size(figures, "stable", "from here on every number of trials has the power", stable);
  return figures;
}

Figures power_figures(const Given& given) {
  const int trials = given.count("trials", 1, stats::kMostTrials);
  const double share = given.number("share");
  const double chance = given.chance();
  const Levels levels = typed_levels(given);
  const auto found = stats::power_of_trials(share, trials, levels.first_step, chance);
  Figures figures{"power of " + given.word("trials") + " trials at a share right of " + given.word("share"),
                  {{"trials", "trials", trials},
                   {"share", "share right", share},
                   {"share_heard", "heard in this share of trials", known(heard(share, chance)),
                    "if the rest is guessed"}}};
  add_levels(figures, chance, levels);
  figures.figures.push_back({"minimum_correct", "right needed", known(found.minimum_correct),
                             found.minimum_correct ? "one-sided, exact" : "impossible: not even all right"});
  figures.figures.push_back(
      {"size", "false alarms", found.size, "probability of support when every answer is a guess"});
  figures.figures.push_back({"power", "power", found.power, "probability of support at the share"});
  figures.figures.push_back({"missed", "missed", 1 - found.power, "probability of no support at the share"});
  return figures;
}

Figures similar_size_figures(const Given& given) {
  const double heard = given.number("heard"), chance = given.chance(), level = given.level("level"),
               power = given.level("power");
  Figures figures{
      "trials that show similarity when nobody can tell",
      {{"heard_tested", "heard in this share of trials", heard, "would be too much to call similar"},
       {"chance", "chance", chance, "of a guess to be right"},
       {"level", "level", level, "risk of calling that similar"},
       {"power_wanted", "power wanted", power}}};
  for (const auto& [key, rule, found] :
       {std::tuple("first", "the fewest that have the power; a few more may have less",
                   stats::smallest_similarity_trials_first(power, level, heard, chance)),
        std::tuple("stable", "from here on every number of trials has the power",
                   stats::smallest_similarity_trials_stable(power, level, heard, chance))}) {
    figures.add(std::string("trials_") + key, std::string("trials, ") + key,
                found ? Value(found->trials) : Value(), found ? rule : "none up to 3000");
    figures.add(std::string("most_correct_") + key, "  right at most",
                found ? known(found->most_correct) : Value());
    figures.add(std::string("power_") + key, "  power", found ? Value(found->power) : Value());
  }
  return figures;
}

}  // namespace

Topic design_topic() {
  const Argument trials{"trials", "Trials"}, share{"--share", "Long-run share right to be found"};
  const Argument comparisons{
      "--comparisons", "Comparisons of the family: the level is divided by them (Holm's first step)", "1"};
  return {"Design",
          {{"need",
            "Right answers that so many trials need",
            "16 --comparisons 7",
            {trials,
             chance_argument(),
             level_argument(),
             comparisons,
             {"--two-sided", "Agreeing answers, whichever way; at chance 1/2 only", "", Shape::flag}},
            need_figures},
           {"size",
            "Trials that find a share right",
            "--share 0.7",
            {share,
             {"--power", "Probability of finding it", "0.8"},
             chance_argument(),
             level_argument(),
             comparisons},
            size_figures},
           {"power",
            "How probably so many trials find a share right",
            "16 --share 0.7",
            {trials, share, chance_argument(), level_argument(), comparisons},
            power_figures},
           {"similar-size",
            "Trials that show that hardly anybody could tell",
            "--heard 0.3 --chance 1/3",
            {{"--heard", "Share of trials heard that would be too much"},
             {"--power", "Probability of showing it when nobody can tell", "0.8"},
             chance_argument(),
             level_argument()},
            similar_size_figures}}};
}

}  // namespace desk
