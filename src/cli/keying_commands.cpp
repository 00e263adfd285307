#include <istream>
#include <ostream>

#include "cli/sitting_options.h"
#include "desk/sittings/sitting_text.h"
#include "text/error.h"

namespace cli {
namespace {

std::string spoiled_words(const desk::SpoiledNow& spoiled) {
  return "trial " + std::to_string(spoiled.trial) + " is spoiled" +
         (spoiled.late ? " late: it counts as answered, and is shown" : "");
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
      for (const desk::SpoiledNow& spoiled : desk::key_spoilings(options->which.get(), file->file, now))
        console.out << spoiled_words(spoiled) << "\n";
      return;
    }
    if (options->trial == 0 || options->who.empty() || options->word.empty())
      throw text::BadInput(
          "say which trial is spoiled (--trial), by whom (--by) and why (--reason), or give --file");
    desk::change_sitting(options->which.get(), now, [&](sitting::Sitting& s) {
      s.spoil(options->who, options->trial, options->word, options->text);
      console.out << spoiled_words({options->trial, s.state().at(options->trial).late_spoiled}) << "\n";
    });
  });
}

void add_times(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(sitting, "times", "Key the times from the helper's sheet",
                                          "1 --file times.csv", *options);
  command->add_option("--file", options->text, "The filled-in form")->required();
  command->callback([=, &console] {
    console.out << desk::key_times(options->which.get(), options->text, now) << " times kept\n";
  });
}

void add_levels(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<Words>();
  CLI::App* command = add_sitting_command(
      sitting, "levels", "Key levels measured at the loudspeaker terminals", "1 --file levels.csv", *options);
  command->add_option("--file", options->text, "The filled-in form")->required();
  command->add_option("--why", options->word, "Why levels keyed before are replaced");
  command->callback([=, &console] {
    console.out << desk::key_levels(options->which.get(), options->text, options->word, now)
                << " levels kept\n";
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
                << prompt.answers[1]
                << ", then guess, fairly sure or certain where told; - missing, Enter later, . stop): "
                << std::flush;
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

}  // namespace

void add_keying_commands(CLI::App& sitting, Console& console) {
  add_spoil(sitting, console);
  add_times(sitting, console);
  add_levels(sitting, console);
  add_key(sitting, console);
  add_correct(sitting, console);
}

}  // namespace cli
