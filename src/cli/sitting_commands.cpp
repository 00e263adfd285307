#include <filesystem>
#include <istream>
#include <ostream>

#include "cli/options.h"
#include "desk/files.h"
#include "desk/sittings/sitting_text.h"
#include "desk/sittings/sittings.h"
#include "text/error.h"

namespace cli {
namespace {

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

void add_open(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Plain>();
  CLI::App* command = add_sitting_command(sitting, "open", "Open a sitting on paper", "1", *options);
  on_change<Plain>(
      command, options, console, [](const Plain&, sitting::Sitting& s) { s.open("paper"); },
      [](const Plain& o) {
        return "sitting " + std::to_string(o.which.name.number) +
               " is open; each listener adds a few characters of their own";
      });
}

void add_characters(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(sitting, "characters", "Add a listener's characters to the order",
                                          "1 --listener Ada --add x7k2", *options);
  command->add_option("--listener", options->who, "Whose they are")->required();
  command->add_option("--add", options->text, "The characters, chosen by that listener")->required();
  on_change<Words>(
      command, options, console, [](const Words& o, sitting::Sitting& s) { s.contribute(o.who, o.text); },
      [](const Words& o) { return "characters of " + o.who + " added"; });
}

void add_begin(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command =
      add_sitting_command(sitting, "begin", "Close the characters and draw the order", "1", *options);
  command->add_flag(
      "--without-characters", options->flag,
      "Also if a listener has added none: the order then hangs less on them, and the report says so");
  command->callback([options, &console] {
    desk::begin_sitting(options->which.get(), now, options->flag);
    console.out << "the order is drawn; print the sheets\n";
  });
}

void add_sheets(CLI::App& sitting, Console& console) {
  struct Options {
    Which which;
    std::string folder = ".";
    bool replace = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_sitting_command(
      sitting, "sheets",
      "Write the tagging list, the helper's sheet, the listeners' sheets and forms for keying",
      "1 --into sheets", *options);
  command->add_option("--into", options->folder, "Folder for the papers, made when missing")
      ->capture_default_str();
  command->add_flag("--replace", options->replace, "Replace papers that are there already, filled in or not");
  command->callback([options, &console] {
    const auto papers = desk::papers_of(options->which.get());
    std::error_code ignored;
    std::filesystem::create_directories(options->folder, ignored);
    for (const desk::Paper& paper : papers) {
      const auto file = std::filesystem::path(options->folder) / paper.name;
      desk::write_file(file, paper.text, options->replace);
      console.out << file.string() << "\n";
    }
  });
}

void add_declare(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command =
      add_sitting_command(sitting, "declare", "Declare whether helper and listeners were kept apart",
                          "1 --by helper --at start", *options);
  command->add_option("--by", options->who, "helper, or a listener's name")->required();
  command->add_option("--at", options->word, "start or end")->required();
  command->add_flag("--not-kept", options->flag, "There was sight, hearing or talk between them");
  command->add_option("--words", options->text, "Free words");
  on_change<Words>(
      command, options, console,
      [](const Words& o, sitting::Sitting& s) { s.declare(o.who, o.word, !o.flag, o.text); },
      [](const Words& o) { return "declared by " + o.who + " at the " + o.word; });
}

void add_tagged(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(sitting, "tagged", "Record who sleeved and tagged the cables",
                                          "1 --by Bela", *options);
  command->add_option("--by", options->who, "The name")->required();
  on_change<Words>(
      command, options, console, [](const Words& o, sitting::Sitting& s) { s.name_tagger(o.who); },
      [](const Words& o) { return "tagged by " + o.who; });
}

void add_fact(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(sitting, "fact", "Record a fact of the sitting",
                                          "1 --name seat --is \"row 3, 3.2 m\"", *options);
  command
      ->add_option("--name", options->word,
                   "channels, terminations, bi-wiring, contact-resistance, seat, level-at-seat-start,\n"
                   "level-at-seat-end, mute-policy, masking-noise, warm-up, temperature,\n"
                   "longest-rehearsed-swap, photograph or other")
      ->required();
  command->add_option("--is", options->text, "Its value")->required();
  on_change<Words>(
      command, options, console, [](const Words& o, sitting::Sitting& s) { s.record_fact(o.word, o.text); },
      [](const Words& o) { return o.word + " recorded"; });
}

void add_note(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(sitting, "note", "Keep a note",
                                          "1 --by helper --words \"a car passed in trial 5\"", *options);
  command->add_option("--by", options->who, "Whose note it is")->required();
  command->add_option("--words", options->text, "The note")->required();
  on_change<Words>(
      command, options, console, [](const Words& o, sitting::Sitting& s) { s.note(o.who, o.text); },
      [](const Words&) { return std::string("note kept"); });
}

void add_cue(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command =
      add_sitting_command(sitting, "cue", "Keep what a listener says gave it away, and other cues",
                          "1 --listener Ada --words \"nothing\"", *options);
  command->add_option("--listener", options->who, "Who was asked")->required();
  command->add_option("--words", options->text, "The answer")->required();
  on_change<Words>(
      command, options, console, [](const Words& o, sitting::Sitting& s) { s.tell_cue(o.who, o.text); },
      [](const Words& o) { return "kept for " + o.who; });
}

void add_rest(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(sitting, "rest", "Record a break", "1 --by planned", *options);
  command->add_option("--by", options->who, "planned, or who asked for it")->required();
  on_change<Words>(
      command, options, console, [](const Words& o, sitting::Sitting& s) { s.rest(o.who); },
      [](const Words&) { return std::string("break recorded"); });
}

void add_spoil(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  struct File {
    std::string file;
  };
  const auto file = std::make_shared<File>();
  CLI::App* command =
      add_sitting_command(sitting, "spoil", "Withdraw a trial, before its answers are keyed",
                          "1 --trial 5 --by helper --reason interruption --words \"a car passed\"", *options);
  command->add_option("--trial", options->trial, "Its number");
  command->add_option("--by", options->who, "helper, or a listener's name");
  command->add_option("--reason", options->word,
                      "wrong tag, audible fault, interruption, pace overrun, or other");
  command->add_option("--words", options->text, "Free words; needed for other");
  command->add_option("--file", file->file, "Instead: a table trial,by,reason,words from the helper's sheet");
  command->callback([=, &console] {
    if (!file->file.empty()) {
      console.out << desk::key_spoilings(options->which.get(), file->file, now) << " spoiled trials kept\n";
      return;
    }
    if (options->trial == 0 || options->who.empty() || options->word.empty())
      throw text::BadInput(
          "say which trial is spoiled (--trial), by whom (--by) and why (--reason), or give --file");
    desk::change_sitting(options->which.get(), now, [&](sitting::Sitting& s) {
      s.spoil(options->who, options->trial, options->word, options->text);
      console.out << "trial " << options->trial << " is spoiled"
                  << (s.state().at(options->trial).late_spoiled ? " late: it counts as answered, and is shown"
                                                                : "")
                  << "\n";
    });
  });
}

void add_file_command(
    CLI::App& sitting, Console& console, const std::string& name, const std::string& does,
    const std::string& what,
    const std::function<int(const desk::SittingName&, const desk::Path&, const sitting::Clock&)>& keep) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(sitting, name, does, "1 --file " + name + ".csv", *options);
  command->add_option("--file", options->text, "The filled-in form")->required();
  command->callback([=, &console] {
    console.out << keep(options->which.get(), options->text, now) << " " << what << " kept\n";
  });
}

struct Keying {
  Which which;
  desk::Keyer keyer;
  std::string file;
  bool second = false;
};

void key_from_prompts(const Keying& options, Console& console) {
  const auto ask = [&](const desk::Prompt& prompt,
                       const std::string& complaint) -> std::optional<std::string> {
    if (!complaint.empty()) console.err << complaint << "\n";
    console.err << "trial " << prompt.trial << ", " << prompt.listener << " (" << prompt.answers[0] << " or "
                << prompt.answers[1] << "; - missing, Enter later, . stop): " << std::flush;
    std::string line;
    if (!std::getline(console.in, line)) return std::nullopt;
    if (!line.empty() && line.back() == '\r') line.pop_back();
    return line;
  };
  const int kept =
      desk::key_by_prompts(options.which.get(), options.keyer, now, ask,
                           [&](const std::string& what) { console.out << "kept " << what << std::endl; });
  console.out << kept << " answers kept\n";
}

void add_key(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Keying>();
  CLI::App* command = add_sitting_command(
      sitting, "key", "Key answers from the listeners' sheets: by prompts, or from a table with --file",
      "1 --by Bela --file answers.csv", *options);
  command->add_option("--by", options->keyer.name, "Who keys")->required();
  command->add_flag("--holds-helpers-sheet", options->keyer.holds_helpers_sheet,
                    "That person holds the helper's sheet; the report says so");
  command->add_option("--file", options->file,
                      "A table trial,<listener>,... or trial,listener,answer,sureness,note;\n"
                      "- is a missing answer, an empty cell one not keyed yet");
  command->add_flag("--second", options->second, "Second entry: compare the table with what is kept");
  command->callback([options, &console] {
    if (options->second) {
      if (options->file.empty()) throw text::BadInput("a second entry needs --file");
      console.out << desk::second_entry_text(
          desk::compare_answers(options->which.get(), options->file, options->keyer, now));
    } else if (options->file.empty()) {
      key_from_prompts(*options, console);
    } else {
      const int kept =
          desk::key_answers(options->which.get(), options->file, options->keyer, now,
                            [&](const std::string& what) { console.out << "kept " << what << std::endl; });
      console.out << kept << " answers kept\n";
    }
  });
}

void add_correct(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  struct More {
    std::string why;
  };
  const auto more = std::make_shared<More>();
  CLI::App* command =
      add_sitting_command(sitting, "correct", "Correct a keyed answer; the first stays on record",
                          "1 --trial 3 --listener Ada --answer B --why misread", *options);
  command->add_option("--trial", options->trial, "Its number")->required();
  command->add_option("--listener", options->who, "Whose answer")->required();
  command->add_option("--answer", options->word, "The answer that counts, or - for none")->required();
  command->add_option("--why", more->why, "The reason")->required();
  on_change<Words>(
      command, options, console,
      [more](const Words& o, sitting::Sitting& s) { s.correct(o.who, o.trial, o.word, more->why); },
      [](const Words& o) { return "corrected: trial " + std::to_string(o.trial) + ", " + o.who; });
}

void add_status(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Plain>();
  CLI::App* command = add_sitting_command(
      sitting, "status", "Where a sitting stands, what is missing, the chain's head", "1", *options);
  command->callback(
      [options, &console] { console.out << desk::status_text(desk::status_of(options->which.get())); });
}

void add_end(CLI::App& sitting, Console& console) {
  struct Options : Words {
    bool incomplete = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      add_sitting_command(sitting, "end", "End a sitting; its chain head is shown", "1", *options);
  command->add_flag("--early", options->flag, "Before every trial is settled; needs --by and --why");
  command->add_option("--by", options->who, "Who decided");
  command->add_option("--why", options->text, "The reason");
  command->add_flag("--incomplete", options->incomplete,
                    "Although declarations, who tagged the cables or cues are not recorded");
  command->callback([options, &console] {
    const desk::SittingStatus before = desk::status_of(options->which.get());
    if (!options->flag && !options->incomplete && before.phase == "running" && before.waiting.empty() &&
        !desk::unsaid_of(before).empty())
      throw text::NotNow("sitting " + std::to_string(options->which.name.number) +
                         " lacks what nobody can add once it has ended\n" +
                         desk::gaps_text(desk::unsaid_of(before)) + "record it, or say --incomplete");
    if (options->flag)
      desk::change_sitting(options->which.get(), now,
                           [&](sitting::Sitting& s) { s.end_early(options->who, options->text); });
    else
      desk::end_sitting(options->which.get(), now);
    const desk::SittingStatus after = desk::status_of(options->which.get());
    console.out << "sitting " << options->which.name.number << " has ended\n"
                << desk::gaps_text(desk::gaps_of(after)) << "chain head  " << after.head_hex
                << "\ngive the head to somebody outside before unsealing\n";
  });
}

}  // namespace

void add_sitting_commands(CLI::App& program, Console& console) {
  CLI::App* sitting = add_command(program, "sitting", "Hold a sitting on paper", "sitting open 1");
  sitting->require_subcommand(1);
  add_open(*sitting, console);
  add_characters(*sitting, console);
  add_begin(*sitting, console);
  add_sheets(*sitting, console);
  add_declare(*sitting, console);
  add_tagged(*sitting, console);
  add_fact(*sitting, console);
  add_file_command(*sitting, console, "levels", "Key levels measured at the loudspeaker terminals", "levels",
                   desk::key_levels);
  add_file_command(*sitting, console, "times", "Key the times from the helper's sheet", "times",
                   desk::key_times);
  add_spoil(*sitting, console);
  add_rest(*sitting, console);
  add_note(*sitting, console);
  add_key(*sitting, console);
  add_correct(*sitting, console);
  add_cue(*sitting, console);
  add_status(*sitting, console);
  add_end(*sitting, console);
}

}  // namespace cli
