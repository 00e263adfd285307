#pragma once

#include <functional>
#include <memory>
#include <string>

#include "cli/console.h"
#include "cli/options.h"
#include "desk/sittings/sittings.h"

namespace cli {

/// The options of every sitting command: which sitting.
struct Which {
  desk::SittingName name;
  std::string campaign;

  desk::SittingName get() const { return {campaign, name.plan, name.number}; }
};

template <typename Options>
CLI::App* add_sitting_command(CLI::App& sitting, const std::string& name, const std::string& does,
                              const std::string& example, Options& options) {
  CLI::App* command = add_command(sitting, name, does, "sitting " + name + " " + example);
  add_campaign(command, options.which.campaign);
  command->add_option("number", options.which.name.number, "The sitting's number in its plan")->required();
  command->add_option("--plan", options.which.name.plan, "The plan; may be left out when there is only one");
  return command;
}

/// A command that makes one change to a sitting and says so.
template <typename Options>
void on_change(CLI::App* command, std::shared_ptr<Options> options, Console& console,
               std::function<void(const Options&, sitting::Sitting&)> change,
               std::function<std::string(const Options&)> done) {
  command->callback([=, &console] {
    desk::change_sitting(options->which.get(), now,
                         [&](sitting::Sitting& sitting) { change(*options, sitting); });
    console.out << done(*options) << "\n";
  });
}

struct Plain {
  Which which;
};

struct Words {
  Which which;
  std::string who, word, text;
  int trial = 0;
  bool flag = false;
};

/// The command that holds a sitting live.
void add_host(CLI::App& sitting, Console& console);

/// The commands that key what was written on paper.
void add_keying_commands(CLI::App& sitting, Console& console);

}  // namespace cli
