#pragma once

#include <iosfwd>

namespace CLI {
class App;
}

namespace cli {

/// What a command talks to: results go to `out`, everything else to `err`.
struct Console {
  std::istream& in;
  std::ostream& out;
  std::ostream& err;
};

void add_shelf_commands(CLI::App& program, Console& console);
void add_bench_commands(CLI::App& program, Console& console);
void add_circuit_commands(CLI::App& program, Console& console);
void add_plan_commands(CLI::App& program, Console& console);
void add_sitting_commands(CLI::App& program, Console& console);
void add_report_commands(CLI::App& program, Console& console);
void add_calculator_commands(CLI::App& program, Console& console);

/// The whole program: parses, runs, prints.
/// @return  the exit status: 0 done, 1 not now, 2 wrong use or bad input, 3 a fault in blindswap.
int run(int count, const char* const* words, std::istream& in, std::ostream& out, std::ostream& err);

}  // namespace cli
