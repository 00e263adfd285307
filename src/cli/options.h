#pragma once

#include <CLI/CLI.hpp>
#include <memory>
#include <string>

#include "cli/console.h"
#include "desk/shelf/shelf.h"

namespace cli {

/// A command that does something: a name, what it does, one example, and `-c FILE` for the campaign.
inline CLI::App* add_command(CLI::App& parent, const std::string& name, const std::string& does,
                             const std::string& example) {
  CLI::App* command = parent.add_subcommand(name, does);
  command->footer("Example: blindswap " + example);
  command->option_defaults()->always_capture_default();
  return command;
}

/// Adds `-c,--campaign FILE` to a command.
inline void add_campaign(CLI::App* command, std::string& file) {
  file = "campaign.blindswap";
  command->add_option("-c,--campaign", file, "The campaign file")->option_text("FILE [campaign.blindswap]");
}

/// The present moment: the one place where the program looks at the clock.
inline std::chrono::system_clock::time_point now() { return std::chrono::system_clock::now(); }

}  // namespace cli
