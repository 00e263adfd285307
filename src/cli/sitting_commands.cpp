#include <filesystem>
#include <istream>
#include <ostream>

#include "cli/sitting_options.h"
#include "desk/files.h"
#include "desk/sittings/sitting_text.h"
#include "desk/sittings/sittings.h"
#include "text/error.h"

namespace cli {
namespace {

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
  command->add_option("--why", options->text, "Why it replaces the name recorded before");
  on_change<Words>(
      command, options, console, [](const Words& o, sitting::Sitting& s) { s.name_tagger(o.who, o.text); },
      [](const Words& o) { return "tagged by " + o.who; });
}

void add_fact(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(sitting, "fact", "Record a fact of the sitting",
                                          "1 --name seat --is \"row 3, 3.2 m\"", *options);
  command->add_option("--name", options->word, "One of:\n" + desk::fact_names())->required();
  command->add_option("--is", options->text, "Its value")->required();
  command->add_option("--why", options->who, "Why it replaces what was recorded before");
  on_change<Words>(
      command, options, console,
      [](const Words& o, sitting::Sitting& s) { s.record_fact(o.word, o.text, o.who); },
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

void add_status(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Plain>();
  CLI::App* command = add_sitting_command(
      sitting, "status", "Where a sitting stands, what is missing, the chain's head", "1", *options);
  command->callback(
      [options, &console] { console.out << desk::status_text(desk::status_of(options->which.get())); });
}

void add_end(CLI::App& sitting, Console& console) {
  struct Options : Words {
    bool incomplete = false, had_seen = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      add_sitting_command(sitting, "end", "End a sitting; its chain head is shown", "1", *options);
  command->add_flag("--early", options->flag, "Before every trial is settled; needs --by and --why");
  command->add_option("--by", options->who, "Who decided");
  command->add_option("--why", options->text, "The reason");
  command->add_flag(
      "--had-seen", options->had_seen,
      "Who decided had seen both answers and order; no finding of its comparisons can then be supported");
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
      desk::change_sitting(options->which.get(), now, [&](sitting::Sitting& s) {
        s.end_early(options->who, options->text, options->had_seen);
      });
    else
      desk::end_sitting(options->which.get(), now);
    const desk::SittingStatus after = desk::status_of(options->which.get());
    console.out << "sitting " << options->which.name.number << " has ended\n"
                << desk::gaps_text(desk::gaps_of(after)) << "chain head  " << after.head_hex
                << "\ngive the head to somebody outside before unsealing, and record it: blindswap sitting "
                   "handover\n";
  });
}

void add_head_handover(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(sitting, "handover",
                                          "Record who was given the chain head of an ended sitting, and how",
                                          "1 --to \"the club's secretary\" --how \"by letter\"", *options);
  command->add_option("--to", options->who, "Who received it")->required();
  command->add_option("--how", options->text, "How, in free words");
  command->callback([options, &console] {
    desk::record_head_handover(options->which.get(), options->who, options->text, now);
    console.out << "recorded: the chain head was given to " << options->who << "\n";
  });
}

}  // namespace

void add_sitting_commands(CLI::App& program, Console& console) {
  CLI::App* sitting = add_command(program, "sitting", "Hold a sitting, on paper or live", "sitting open 1");
  sitting->require_subcommand(1);
  add_open(*sitting, console);
  add_host(*sitting, console);
  add_characters(*sitting, console);
  add_begin(*sitting, console);
  add_sheets(*sitting, console);
  add_declare(*sitting, console);
  add_tagged(*sitting, console);
  add_fact(*sitting, console);
  add_rest(*sitting, console);
  add_note(*sitting, console);
  add_cue(*sitting, console);
  add_keying_commands(*sitting, console);
  add_status(*sitting, console);
  add_end(*sitting, console);
  add_head_handover(*sitting, console);
}

}  // namespace cli
