#include <ostream>

#include "cli/options.h"
#include "desk/calculator/calculation.h"

namespace cli {
namespace {

/// What was typed for one calculation. CLI11 writes into it, so it stays where it is.
struct Typed {
  std::map<std::string, std::string> words;
  std::map<std::string, std::vector<std::string>> lists;
  std::map<std::string, bool> flags;
  std::string table;
  bool json = false;

  std::map<std::string, std::vector<std::string>> given() const {
    std::map<std::string, std::vector<std::string>> all;
    for (const auto& [name, typed] : words)
      if (!typed.empty()) all[name] = {typed};
    for (const auto& [name, typed] : lists)
      if (!typed.empty()) all[name] = typed;
    for (const auto& [name, typed] : flags)
      if (typed) all[name] = {};
    return all;
  }
};

void add_argument(CLI::App* command, const desk::Argument& argument, Typed& typed) {
  const std::string name = argument.plain_name();
  if (argument.shape == desk::Shape::flag) {
    command->add_flag(argument.name, typed.flags[name], argument.description);
    return;
  }
  const bool is_word = argument.shape == desk::Shape::word;
  CLI::Option* option = is_word ? command->add_option(argument.name, typed.words[name], argument.description)
                                : command->add_option(argument.name, typed.lists[name], argument.description);
  option->default_str(argument.is_required() ? "" : argument.standard)
      ->required(is_word && argument.is_required());
}

void add_calculation(CLI::App& calculator, const desk::Calculation& calculation, Console& console) {
  const auto typed = std::make_shared<Typed>();
  CLI::App* command = add_command(calculator, calculation.name, calculation.does,
                                  "calc " + calculation.name + " " + calculation.example);
  for (const desk::Argument& argument : calculation.arguments) add_argument(command, argument, *typed);
  if (calculation.takes_table())
    command->add_option(
        "--csv", typed->table,
        "A text table to take the numbers from: name its columns where the numbers would stand");
  command->add_flag("--json", typed->json, "As JSON, in full precision");
  command->callback([typed, &calculation, &console] {
    const desk::Figures figures = desk::calculate(calculation, typed->given(), typed->table);
    console.out << (typed->json ? desk::figures_json(figures) : desk::figures_text(figures));
  });
}

}  // namespace

void add_calculator_commands(CLI::App& program, Console& console) {
  CLI::App* calculator = program.add_subcommand(
      "calc", "Statistics, cables and hearing on bare numbers, to check a published claim");
  calculator->require_subcommand(1);
  calculator->footer("Example: blindswap calc right 12 16");
  for (const desk::Topic& topic : desk::topics())
    for (const desk::Calculation& calculation : topic.calculations) {
      add_calculation(*calculator, calculation, console);
      calculator->get_subcommand(calculation.name)->group(topic.title);
    }
}

}  // namespace cli
