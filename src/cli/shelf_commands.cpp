#include <unistd.h>

#include <chrono>
#include <functional>
#include <ostream>

#include "cli/options.h"
#include "desk/bench/bench.h"
#include "desk/shelf/prediction_text.h"
#include "desk/shelf/shelf_prediction.h"
#include "desk/shelf/shelf_text.h"
#include "text/error.h"
#include "text/quantity.h"

namespace cli {
namespace {

void add_new(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, title;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      add_command(program, "new", "Start a campaign in a new file", "new --title \"Hall, spring\"");
  add_campaign(command, options->campaign);
  command->add_option("--title", options->title, "What is investigated, on one line")->required();
  command->callback([options, &console] {
    desk::start_campaign(options->campaign, options->title);
    console.out << "campaign \"" << options->title << "\" starts in " << options->campaign << "\n";
  });
}

void add_cable(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, name, note;
    std::vector<std::string> construction;
    bool baseline = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(program, "cable", "Add a cable, or name the baseline",
                                  "cable heavy-pair --built \"cross-section=4mm2\" --baseline");
  add_campaign(command, options->campaign);
  command->add_option("name", options->name, "The cable's name")->required();
  command->add_option("--built", options->construction,
                      "Construction, as attribute=value; may be repeated. Predictions use geometry (pair,\n"
                      "parallel pair, twisted pair, solid pair, coaxial), cross-section=2.5mm2 or awg=12,\n"
                      "material, strands, spacing=4mm, shield-diameter=3.5mm, permittivity=2.5, length=3m");
  command->add_option("--note", options->note, "Free words");
  command->add_flag("--baseline", options->baseline, "The others are compared with this one");
  command->callback([options, &console] {
    store::Cable cable{options->name, {}, options->note};
    for (const std::string& typed : options->construction) {
      const std::size_t at = typed.find('=');
      if (at == std::string::npos || at == 0)
        throw text::BadInput("--built \"" + typed + "\" cannot be read; write it like cross-section=4mm2");
      cable.construction.emplace_back(typed.substr(0, at), typed.substr(at + 1));
    }
    desk::add_cable(options->campaign, cable, options->baseline);
    console.out << "cable \"" << options->name << "\" added" << (options->baseline ? ", the baseline" : "")
                << "\n";
  });
}

void add_baseline(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, name;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(program, "baseline", "Name the cable that the others are compared with",
                                  "baseline heavy-pair");
  add_campaign(command, options->campaign);
  command->add_option("name", options->name, "The cable's name")->required();
  command->callback([options, &console] {
    desk::set_baseline(options->campaign, options->name);
    console.out << "\"" << options->name << "\" is the baseline\n";
  });
}

void add_rig(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign;
    desk::RigTyped rig;
    bool line_level = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(program, "rig", "Add a rig: source, load, level and programme",
                                  "rig hall --source 0.1ohm --load 8ohm --rated 8ohm --volume-step 0.5dB");
  add_campaign(command, options->campaign);
  command->add_option("name", options->rig.name, "The rig's name")->required();
  command->add_flag("--line-level", options->line_level,
                    "For interconnects; otherwise it is a loudspeaker rig");
  command->add_option("--source", options->rig.source,
                      "Output resistance of the amplifier, with unit: 0.1ohm");
  command->add_option("--source-inductance", options->rig.source_inductance, "With unit: 2uH");
  command->add_option("--load", options->rig.load,
                      "8ohm, 47kohm||100pF, or 3.0ohm + 0.1mH + [27ohm||475uF||21.3mH];\n"
                      "leave it out to import the loudspeaker's impedance for this rig");
  command->add_option("--rated", options->rig.rated_impedance, "Rated impedance of the loudspeaker: 8ohm");
  command->add_option("--volume-step", options->rig.volume_step,
                      "Step of the volume control, for trims: 0.5dB");
  command->add_option("--level-note", options->rig.level_note, "How loud, and where measured");
  command->add_option("--programme-note", options->rig.programme_note, "What is played");
  command->callback([options, &console] {
    if (options->line_level) options->rig.kind = "line level";
    desk::add_rig(options->campaign, options->rig);
    console.out << "rig \"" << options->rig.name << "\" added\n";
  });
}

/// Tells a person at a terminal how far a long import has come, from its first second on.
class ImportProgress {
 public:
  explicit ImportProgress(Console& console) : console_(console), tells_(isatty(STDERR_FILENO) != 0) {}
  ~ImportProgress() {
    if (told_) console_.err << "\r\x1b[K" << std::flush;
  }
  void operator()(std::size_t done, std::size_t all) {
    using namespace std::chrono;
    if (!tells_ || steady_clock::now() - begun_ < seconds(1)) return;
    console_.err << "\rreading file " << done + 1 << " of " << all << std::flush;
    told_ = true;
  }

 private:
  Console& console_;
  bool tells_, told_ = false;
  std::chrono::steady_clock::time_point begun_ = std::chrono::steady_clock::now();
};

void add_import(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, manifest;
    std::vector<std::string> files;
    std::string bandwidth;
    imported::Assignment assignment;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(program, "import", "Import readings from text files, all of them or none",
                                  "import shelf.csv; blindswap import speaker.csv --rig hall");
  add_campaign(command, options->campaign);
  command->add_option("files", options->files,
                      "Files; the header row says what each holds. A cable's resistance is that of\nthe "
                      "loop, both conductors in series");
  command->add_option("--manifest", options->manifest,
                      "A table file,cable,rig,piece,condition,instrument,feature,state,bandwidth,repeat\n"
                      "of many files; columns may be left out");
  command->add_option("--cable", options->assignment.cable,
                      "The cable that a response or noise spectrum is of");
  command->add_option("--rig", options->assignment.rig,
                      "The rig it was measured on, or whose impedance it is");
  command->add_option("--piece", options->assignment.piece, "left, right, or a specimen's name");
  command->add_option("--condition", options->assignment.condition, "Free words");
  command->add_option("--instrument", options->assignment.instrument, "What it was read from");
  CLI::Option* feature =
      command->add_option("--feature", options->assignment.feature,
                          "A feature of the cable that can be on and off: \"shield connected\"");
  CLI::Option* state =
      command->add_option("--state", options->assignment.state, "The feature's state: on, off");
  feature->needs(state);
  state->needs(feature);
  command->add_option("--bandwidth", options->bandwidth,
                      "In which each level of a noise spectrum was measured, with unit: 1.46Hz");
  command->add_option("--repeat", options->assignment.repeat, "Number of the repeat")
      ->check(CLI::PositiveNumber);
  command->callback([options, &console] {
    if (options->files.empty() == options->manifest.empty())
      throw text::BadInput("name files to import, or a manifest with --manifest, and not both");
    if (!options->bandwidth.empty()) {
      options->assignment.bandwidth_hz = text::quantity(options->bandwidth, text::Unit::hertz);
      if (!(options->assignment.bandwidth_hz > 0))
        throw text::BadInput("--bandwidth must be above 0, got " + options->bandwidth);
    }
    const auto read_and_keep = [&] {
      if (options->manifest.empty())
        return desk::import_files(options->campaign, {options->files.begin(), options->files.end()},
                                  options->assignment);
      ImportProgress progress(console);
      return desk::import_manifest(options->campaign, options->manifest, std::ref(progress));
    };
    const desk::Imported result = read_and_keep();
    for (const std::string& warning : result.warnings) console.err << warning << "\n";
    console.out << desk::import_text(result);
    if (const std::size_t doubts = desk::number_of_doubts(options->campaign); doubts > 0)
      console.err << doubts << (doubts == 1 ? " thing" : " things")
                  << " in the campaign's readings can hardly be: blindswap examine\n";
  });
}

void add_supersede(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, why;
    int number = 0, with = 0;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(program, "supersede",
                                  "Let a reading count no longer, and another one instead; both are kept",
                                  "supersede 12 --with 31 --why \"probe on the wrong range\"");
  add_campaign(command, options->campaign);
  command->add_option("number", options->number, "Of the reading, as list --readings names it")->required();
  command->add_option("--with", options->with,
                      "Number of the reading that counts instead; without it, none does");
  command->add_option("--why", options->why, "The reason, on one line")->required();
  command->callback([options, command, &console] {
    const bool replaced = command->count("--with") > 0;
    desk::supersede(options->campaign, options->number,
                    replaced ? std::optional(options->with) : std::nullopt, options->why);
    console.out << "reading " << options->number << " counts no longer"
                << (replaced ? ", reading " + std::to_string(options->with) + " instead" : "") << "\n";
  });
}

void add_list(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign;
    bool readings = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      add_command(program, "list", "What the campaign holds: cables, rigs, readings, plans", "list");
  add_campaign(command, options->campaign);
  command->add_flag("--readings", options->readings, "Each reading with its number, and whether it counts");
  command->callback([options, &console] {
    console.out << (options->readings ? desk::readings_text(options->campaign)
                                      : desk::inventory_text(options->campaign));
  });
}

struct PredictOptions {
  std::string campaign, rig, first, second, weighting = "pink-k", curves;
  bool json = false, replace = false;
};

void predict_all(const PredictOptions& options, Console& console) {
  const desk::ShelfPrediction all = desk::predict_shelf(options.campaign, options.rig, options.weighting);
  if (!options.curves.empty())
    desk::write_curves(options.campaign, options.rig, options.curves, options.replace);
  console.out << (options.json ? desk::shelf_prediction_json(all) : desk::shelf_prediction_text(all));
  if (!options.curves.empty() && !options.json) console.out << "curves written to " << options.curves << "\n";
}

void predict_swap(const PredictOptions& options, Console& console) {
  if (options.second.empty())
    throw text::BadInput(
        "one cable is no swap\n"
        "name the cable that is there and the one that takes its place, or none for all against the "
        "baseline");
  if (options.rig.empty()) throw text::BadInput("a swap is predicted on a rig\nname it with --rig");
  if (!options.curves.empty())
    throw text::BadInput("--curves writes those of all cables\nleave the two cables out");
  const desk::Prediction one =
      desk::predict(options.campaign, options.rig, options.first, options.second, options.weighting);
  console.out << (options.json ? desk::prediction_json(one) : desk::prediction_text(one));
}

void add_predict(CLI::App& program, Console& console) {
  const auto options = std::make_shared<PredictOptions>();
  CLI::App* command = add_command(
      program, "predict", "What the circuit says of swapping one cable for another, or all for the baseline",
      "predict heavy-pair thin-pair --rig hall; blindswap predict --curves curves.csv");
  add_campaign(command, options->campaign);
  command->add_option("first", options->first,
                      "Cable that is there; without cables, each in place of the baseline");
  command->add_option("second", options->second, "Cable that takes its place");
  command->add_option("--rig", options->rig, "On this rig; without cables, on all if not given");
  command->add_option("--weighting", options->weighting, "Of the trim whose residual is shown")
      ->capture_default_str();
  command->add_option("--curves", options->curves,
                      "Without cables: every level curve, as a table "
                      "rig,cable,frequency_Hz,level_dB,difference_dB in this FILE.csv");
  command->add_flag("--replace", options->replace, "Replace that file if it is there");
  command->add_flag("--json", options->json, "As JSON");
  command->callback([options, &console] {
    options->first.empty() ? predict_all(*options, console) : predict_swap(*options, console);
  });
}

}  // namespace

void add_shelf_commands(CLI::App& program, Console& console) {
  add_new(program, console);
  add_cable(program, console);
  add_baseline(program, console);
  add_rig(program, console);
  add_import(program, console);
  add_supersede(program, console);
  add_list(program, console);
  add_predict(program, console);
}

}  // namespace cli
