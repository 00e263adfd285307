#include <ostream>

#include "cli/options.h"
#include "desk/bench/bench.h"
#include "desk/files.h"

namespace cli {
namespace {

using BenchReport = std::string (*)(const desk::Path&, desk::BenchForm);

void add_bench_report(CLI::App& program, Console& console, const std::string& name, const std::string& does,
                      BenchReport report) {
  struct Options {
    std::string campaign, file;
    bool json = false, html = false, replace = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(program, name, does, name + " --html -o " + name + ".html");
  add_campaign(command, options->campaign);
  CLI::Option* json = command->add_flag("--json", options->json, "As JSON, every number in full");
  command->add_flag("--html", options->html, "As one HTML file that needs nothing else")->excludes(json);
  command->add_option("-o,--output", options->file, "Write to this file instead of the terminal");
  command->add_flag("--replace", options->replace, "Replace the file if there is one");
  command->callback([options, report, name, &console] {
    const auto form = options->html   ? desk::BenchForm::html
                      : options->json ? desk::BenchForm::json
                                      : desk::BenchForm::text;
    const std::string content = report(options->campaign, form);
    if (options->file.empty()) {
      console.out << content;
    } else {
      desk::write_file(options->file, content, options->replace);
      console.out << name << " written to " << options->file << "\n";
    }
  });
}

}  // namespace

void add_bench_commands(CLI::App& program, Console& console) {
  add_bench_report(program, console, "coverage",
                   "Cables by kinds of reading: how many, what is missing, what is stale",
                   desk::coverage_report);
  add_bench_report(
      program, console, "examine",
      "What readings are worth: what can hardly be, differences beside repeatability, features tested",
      desk::examination_report);
}

}  // namespace cli
