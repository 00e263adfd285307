#include <CLI/CLI.hpp>
#include <algorithm>
#include <stdexcept>

#include "cli/console.h"
#include "text/error.h"
#include "text/nearest.h"

namespace cli {
namespace {

constexpr int status_done = 0, status_not_now = 1, status_bad_input = 2, status_fault = 3;

void collect_names(const CLI::App& app, std::vector<std::string>& names) {
  for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; }))
    names.push_back(command->get_name());
}

/// The command that was meant, down to the last one that was recognised.
const CLI::App& deepest(const CLI::App& program) {
  const CLI::App* command = &program;
  while (!command->get_subcommands().empty()) command = command->get_subcommands().back();
  return *command;
}

std::string full_name(const CLI::App& program, const CLI::App& command) {
  std::string name = command.get_name();
  for (const CLI::App* parent = command.get_parent(); parent && parent != &program;
       parent = parent->get_parent())
    name = parent->get_name() + " " + name;
  return &command == &program ? name : program.get_name() + " " + name;
}

/// "blindswap sitting" for "blindswap sitting open".
std::string parents_of(const CLI::App& program, const CLI::App& command) {
  const std::string name = full_name(program, command);
  const std::size_t last = name.rfind(' ');
  return last == std::string::npos ? "" : name.substr(0, last);
}

/// Nearest names of commands and options for the words that were not understood.
std::string suggestion(const CLI::App& program, const std::vector<std::string>& remaining) {
  if (remaining.empty()) return "";
  const CLI::App& command = deepest(program);
  std::vector<std::string> names;
  collect_names(command, names);
  for (const CLI::Option* option : command.get_options())
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  return text::did_you_mean(remaining.front(), names);
}

int report_parse_error(const CLI::App& program, const CLI::ParseError& error, Console& console) {
  const CLI::App& command = deepest(program);
  if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
    if (dynamic_cast<const CLI::CallForVersion*>(&error))
      console.out << error.what() << "\n";
    else
      console.out << command.help(parents_of(program, command));
    return status_done;
  }
  std::vector<std::string> remaining = command.remaining();
  std::string words = error.what();
  if (!remaining.empty() && (words.find("not expected") != std::string::npos ||
                             words.find("subcommand is required") != std::string::npos))
    words = "\"" + remaining.front() + "\" is not known to " + full_name(program, command);
  console.err << words << suggestion(program, remaining) << "\n"
              << "see " << full_name(program, command) << " --help\n";
  return status_bad_input;
}

}  // namespace

int run(int count, const char* const* words, std::istream& in, std::ostream& out, std::ostream& err) {
  Console console{in, out, err};
  const auto finished = [&](int status) {
    out.flush();
    if (out || status != status_done) return status;
    err << "the output could not be written; is the disk full?\n";
    return status_not_now;
  };
  CLI::App program(
      "Compare audio cables blind, with exact statistics, beside what was measured.\n"
      "A campaign is one file; commands read and write campaign.blindswap here, or -c FILE.",
      "blindswap");
  program.set_version_flag("--version", "blindswap " BLINDSWAP_VERSION);
  program.require_subcommand(1);
  program.set_help_flag("-h,--help", "Print this help");
  program.footer(
      "Exit status: 0 done, 1 not now (sealed, locked, disk full), 2 wrong use or bad input, 3 a fault in "
      "blindswap.\n"
      "Example: blindswap new --title \"Hall, spring\"");
  try {
    add_shelf_commands(program, console);
    add_bench_commands(program, console);
    add_circuit_commands(program, console);
    add_plan_commands(program, console);
    add_sitting_commands(program, console);
    add_report_commands(program, console);
    add_calculator_commands(program, console);
    program.parse(count, words);
    return finished(status_done);
  } catch (const CLI::ParseError& error) {
    return finished(report_parse_error(program, error, console));
  } catch (const text::NotNow& error) {
    err << error.what() << "\n";
    return status_not_now;
  } catch (const text::BadInput& error) {
    err << error.what() << "\n";
    return status_bad_input;
  } catch (const std::domain_error& error) {
    err << error.what() << "\n";
    return status_bad_input;
  } catch (const std::exception& error) {
    err << "fault in blindswap: " << error.what()
        << "\nnothing that was acknowledged is lost; please report it\n";
    return status_fault;
  }
}

}  // namespace cli
