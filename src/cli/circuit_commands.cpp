#include <ostream>

#include "cli/options.h"
#include "desk/circuits/noise.h"
#include "desk/circuits/phase.h"
#include "desk/circuits/tradeoff.h"
#include "text/quantity.h"

namespace cli {
namespace {

void add_tradeoff(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, page, svg;
    bool json = false, replace = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(
      program, "tradeoff", "Resistance, inductance, capacitance, impedance and speed of all cables together",
      "tradeoff -o cables.html --svg cables.svg");
  add_campaign(command, options->campaign);
  command->add_option("-o,--output", options->page, "The same in a picture, on a page of its own: FILE.html");
  command->add_option("--svg", options->svg, "The picture alone: FILE.svg");
  command->add_flag("--replace", options->replace, "Replace the files if they are there");
  command->add_flag("--json", options->json, "The table as JSON, every number in full");
  command->callback([options, &console] {
    const desk::Tradeoff tradeoff = desk::tradeoff(options->campaign);
    desk::write_tradeoff(options->campaign, options->page, options->svg, options->replace);
    console.out << (options->json ? tradeoff.json : tradeoff.text);
    if (options->json) return;
    if (!options->page.empty()) console.out << "page written to " << options->page << "\n";
    if (!options->svg.empty()) console.out << "picture written to " << options->svg << "\n";
  });
}

void add_noise(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, cable, rig, sensitivity, distance, room_gain = "0dB";
    int loudspeakers = 2;
    bool json = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      add_command(program, "noise", "Noise readings of a cable at the seat, beside the threshold of hearing",
                  "noise thin-pair --sensitivity 88dB --distance 2.5m");
  add_campaign(command, options->campaign);
  command->add_option("cable", options->cable, "The cable")->required();
  command->add_option("--rig", options->rig, "Readings on this rig alone");
  command
      ->add_option("--sensitivity", options->sensitivity,
                   "Of the loudspeakers, sound level at 1 m for 2.83 V: 88dB")
      ->required();
  command->add_option("--distance", options->distance, "From loudspeaker to seat, with unit: 2.5m")
      ->required();
  command->add_option("--loudspeakers", options->loudspeakers, "With noise of their own each");
  command->add_option("--room-gain", options->room_gain, "How much more than 1/r the room leaves: 4dB");
  command->add_flag("--json", options->json, "As JSON, every number in full");
  command->callback([options, &console] {
    const hearing::Seat seat{text::quantity(options->sensitivity, text::Unit::decibel),
                             text::quantity(options->distance, text::Unit::metre), options->loudspeakers,
                             text::quantity(options->room_gain, text::Unit::decibel)};
    const desk::NoiseOfCable noise = desk::noise_of(options->campaign, options->cable, options->rig, seat);
    console.out << (options->json ? desk::noise_json(noise) : desk::noise_text(noise));
  });
}

void add_phase(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, cable;
    bool json = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      add_command(program, "phase",
                  "Phase readings of a cable: what delay and terminations explain, and what is left over",
                  "phase thin-pair");
  add_campaign(command, options->campaign);
  command->add_option("cable", options->cable, "The cable")->required();
  command->add_flag("--json", options->json, "As JSON, every number in full");
  command->callback([options, &console] {
    const desk::PhasesOfCable phases = desk::phases_of(options->campaign, options->cable);
    console.out << (options->json ? desk::phases_json(phases) : desk::phases_text(phases));
  });
}

}  // namespace

void add_circuit_commands(CLI::App& program, Console& console) {
  add_tradeoff(program, console);
  add_noise(program, console);
  add_phase(program, console);
}

}  // namespace cli
