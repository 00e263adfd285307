#include <ostream>

#include "cli/options.h"
#include "desk/calculator/calculator.h"

namespace cli {
namespace {

const std::string list_form =
    "separated by spaces or semicolons, \"0,5; 0,7\"; or by commas, with decimal points: 0.5,0.7";

/// A calculation: its command, what is typed for it, and how it runs.
template <typename Typed>
struct Calculation {
  CLI::App* command;
  std::shared_ptr<Typed> typed;
};

template <typename Typed>
Calculation<Typed> add_calculation(CLI::App& calculator, Console& console, const std::string& name,
                                   const std::string& does, const std::string& example) {
  struct Options {
    Typed typed;
    bool json = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(calculator, name, does, "calc " + example);
  command->add_flag("--json", options->json, "As JSON, in full precision");
  command->callback([options, &console] {
    const desk::Figures figures = desk::calculate(options->typed);
    console.out << (options->json ? desk::figures_json(figures) : desk::figures_text(figures));
  });
  return {command, {options, &options->typed}};
}

/// A list that must be given, and so has no default to show.
void add_list(CLI::App* command, const std::string& name, std::vector<std::string>& list,
              const std::string& description) {
  command->add_option(name, list, description)->default_str("")->required();
}

void add_level(CLI::App* command, std::string& level) {
  command->add_option("--level", level, "Level of significance");
}

void add_chance(CLI::App* command, std::string& chance) {
  command->add_option("--chance", chance, "Probability that a guess is right; 1/3 for the triangle");
}

void add_comparisons(CLI::App* command, std::string& comparisons) {
  command->add_option("--comparisons", comparisons,
                      "Comparisons of the family: the level is divided by them (Holm's first step)");
}

void add_draws(CLI::App* command, desk::DrawsTyped& monte_carlo) {
  command->add_option("--seed", monte_carlo.seed,
                      "Seed of the random arrangements, drawn where there are too many to count");
  command->add_option("--draws", monte_carlo.draws, "Number of random arrangements");
}

void add_two_samples(CLI::App* command, std::vector<std::string>& x, std::vector<std::string>& y,
                     std::string& alternative) {
  add_list(command, "--x", x, "First numbers, " + list_form);
  add_list(command, "--y", y, "Second numbers, likewise");
  command->add_option("--alternative", alternative, "two-sided, greater or less");
}

void add_right(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::RightTyped>(
      calculator, console, "right", "So many right: exact p, intervals, and what would have been caught",
      "right 12 16");
  command->add_option("correct", typed->correct, "Right answers")->required();
  command->add_option("trials", typed->trials, "Trials")->required();
  add_chance(command, typed->chance);
  add_level(command, typed->level);
}

void add_need(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::NeedTyped>(
      calculator, console, "need", "Right answers that so many trials need", "need 16 --comparisons 7");
  command->add_option("trials", typed->trials, "Trials")->required();
  add_chance(command, typed->chance);
  add_level(command, typed->level);
  add_comparisons(command, typed->comparisons);
  command->add_flag("--two-sided", typed->two_sided, "Agreeing answers, whichever way; at chance 1/2 only");
}

void add_size(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::SizeTyped>(
      calculator, console, "size", "Trials that find a share right", "size --share 0.7");
  command->add_option("--share", typed->share, "Long-run share right to be found")->required();
  command->add_option("--power", typed->power, "Probability of finding it");
  add_chance(command, typed->chance);
  add_level(command, typed->level);
  add_comparisons(command, typed->comparisons);
}

void add_power(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::PowerTyped>(
      calculator, console, "power", "How probably so many trials find a share right", "power 16 --share 0.7");
  command->add_option("trials", typed->trials, "Trials")->required();
  command->add_option("--share", typed->share, "Long-run share right to be found")->required();
  add_chance(command, typed->chance);
  add_level(command, typed->level);
  add_comparisons(command, typed->comparisons);
}

void add_redraw(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::RedrawTyped>(
      calculator, console, "redraw",
      "Exact p of trials that several listeners answer, by the re-draw of the coins",
      "redraw 3:0 2:1 0:3 3:0 --observed 11");
  add_list(command, "trials", typed->splits, "A trial each: answers \"A\", colon, answers \"B\"");
  command->add_option("--observed", typed->observed, "Right answers in all")->required();
  add_level(command, typed->level);
}

void add_adjust(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::AdjustTyped>(
      calculator, console, "adjust", "p-values of a family, adjusted", "adjust .01 .04 .03");
  add_list(command, "p", typed->p,
           "p-values, " + list_form + "; a planned test that was not carried out counts as 1");
  add_level(command, typed->level);
}

void add_kappa(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::KappaTyped>(
      calculator, console, "kappa", "Cohen's kappa of two raters", "kappa \"88,10,2; 14,40,6; 18,10,12\"");
  add_list(command, "counts", typed->rows,
           "Square table: a row for each category of the first rater, semicolon between rows");
}

void add_fleiss(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::FleissTyped>(
      calculator, console, "fleiss", "Fleiss' kappa of several raters", "fleiss \"0,3; 1,2; 3,0; 3,0\"");
  add_list(command, "counts", typed->rows,
           "A row for each subject, a count for each category, semicolon between rows");
}

void add_agree(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::AgreeTyped>(
      calculator, console, "agree", "Whether listeners are right on the same trials", "agree 1101 1011 1-01");
  add_list(command, "marks", typed->marks, "A listener each: 1 right, 0 wrong, - or . missing");
  add_draws(command, typed->monte_carlo);
}

void add_correlate(CLI::App& calculator, Console& console) {
  const auto [command, typed] = add_calculation<desk::CorrelateTyped>(
      calculator, console, "correlate", "Rank correlation of x with y", "correlate --x 1,2,3,4 --y 2,1,3,4");
  add_two_samples(command, typed->x, typed->y, typed->alternative);
  add_level(command, typed->level);
  add_draws(command, typed->monte_carlo);
}

void add_differ(CLI::App& calculator, Console& console) {
  const auto [command, typed] =
      add_calculation<desk::DifferTyped>(calculator, console, "differ", "Difference of the means of x and y",
                                         "differ --x 12,15,18,20 --y 21,25,28");
  add_two_samples(command, typed->x, typed->y, typed->alternative);
  add_level(command, typed->level);
  add_draws(command, typed->monte_carlo);
}

}  // namespace

void add_calculator_commands(CLI::App& program, Console& console) {
  CLI::App* calculator =
      program.add_subcommand("calc", "Statistics on bare numbers, to check a published claim");
  calculator->require_subcommand(1);
  calculator->footer("Example: blindswap calc right 12 16");
  add_right(*calculator, console);
  add_need(*calculator, console);
  add_size(*calculator, console);
  add_power(*calculator, console);
  add_redraw(*calculator, console);
  add_adjust(*calculator, console);
  add_kappa(*calculator, console);
  add_fleiss(*calculator, console);
  add_agree(*calculator, console);
  add_correlate(*calculator, console);
  add_differ(*calculator, console);
}

}  // namespace cli
