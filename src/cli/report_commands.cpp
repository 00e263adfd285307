#include <ostream>

#include "cli/options.h"
#include "desk/files.h"
#include "desk/reports/reports.h"
#include "text/error.h"

namespace cli {
namespace {

void add_report(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, plan, file;
    bool json = false, html = false, dictionary = false, replace = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(program, "report", "What the evidence supports, beside what was measured",
                                  "report spring --html -o report.html");
  add_campaign(command, options->campaign);
  command->add_option("plan", options->plan, "The plan; may be left out when there is only one");
  CLI::Option* json = command->add_flag("--json", options->json, "As JSON, every number in full");
  command->add_flag("--html", options->html, "As one HTML file that needs nothing else")->excludes(json);
  command->add_option("-o,--output", options->file, "Write to this file instead of the terminal");
  command->add_flag("--replace", options->replace, "Replace the file if there is one");
  command->add_flag("--dictionary", options->dictionary, "Instead: what every key of the JSON report means");
  command->callback([options, &console] {
    const auto form = options->html   ? desk::ReportForm::html
                      : options->json ? desk::ReportForm::json
                                      : desk::ReportForm::text;
    const std::string content = options->dictionary ? desk::report_dictionary()
                                                    : desk::report_on(options->campaign, options->plan, form);
    if (options->file.empty()) {
      console.out << content;
    } else {
      desk::write_file(options->file, content, options->replace);
      console.out << "report written to " << options->file << "\n";
    }
  });
}

void add_check(CLI::App& program, Console& console) {
  const auto campaign = std::make_shared<std::string>();
  CLI::App* command = add_command(
      program, "check", "Check commitments, hash chains and recorded tags of every plan anew", "check");
  add_campaign(command, *campaign);
  command->callback([campaign, &console] {
    bool whole = true;
    const int sources = desk::check_sources(*campaign);
    console.out << sources
                << (sources == 1 ? " imported file fits its checksum\n"
                                 : " imported files fit their checksums\n");
    const std::vector<desk::Checked> plans = desk::check_campaign(*campaign);
    if (plans.empty()) console.out << "no plan is sealed in this campaign\n";
    for (const desk::Checked& checked : plans) {
      console.out << "plan \"" << checked.plan << "\": commitment " << checked.commitment_hex << ", "
                  << checked.sittings << (checked.sittings == 1 ? " sitting, " : " sittings, ")
                  << checked.events << " events, "
                  << (checked.unsealed ? "tags checked against the order" : "sealed: tags not checked")
                  << ", " << (checked.faults.empty() ? "everything fits" : "NOT whole") << "\n";
      for (std::size_t i = 0; i < checked.heads_hex.size(); ++i)
        console.out << "  chain head of sitting " << i + 1 << ": " << checked.heads_hex[i] << "\n";
      for (const std::string& fault : checked.faults) console.err << fault << "\n";
      whole = whole && checked.faults.empty();
    }
    if (!whole) throw text::BadInput("the campaign was changed by something other than blindswap");
  });
}

}  // namespace

void add_report_commands(CLI::App& program, Console& console) {
  add_report(program, console);
  add_check(program, console);
}

}  // namespace cli
