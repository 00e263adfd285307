#include <ostream>

#include "cli/options.h"
#include "desk/plans/plan_text.h"
#include "desk/plans/planning.h"

namespace cli {
namespace {

void add_what_is_compared(CLI::App* command, desk::PlanTyped& plan) {
  command->add_option("name", plan.name, "The plan's name")->required();
  command->add_option("--protocol", plan.protocol, "abx or preference")->capture_default_str();
  command->add_option("--rig", plan.rig, "The rig it is held on")->required();
  command->add_option("--listener", plan.listeners, "A listener's name; repeat for each")->required();
  command->add_flag("--one-at-a-time", plan.one_at_a_time, "Each listener has sittings of their own");
  command->add_option("--compare", plan.comparisons, "Two cables, as heavy-pair/thin-pair; may be repeated");
  command->add_flag("--all-against-baseline", plan.all_against_baseline,
                    "Every other cable against the baseline");
  command->add_option("--identical", plan.identical_pairs,
                      "Control: this cable against itself, under two tags");
  command->add_option("--known", plan.known_differences,
                      "Control: a cable with and without a resistor in series, as heavy-pair:0.22ohm");
}

void add_how_many(CLI::App* command, desk::PlanTyped& plan) {
  command->add_option("--trials", plan.trials, "Trials of each comparison, in all")->capture_default_str();
  command->add_option("--sittings", plan.sittings, "Sittings that share the comparisons out")
      ->capture_default_str();
  command->add_flag("--split-trials", plan.split_trials,
                    "Every comparison in every sitting, its trials shared out");
  command->add_option("--spares", plan.spares, "Spare trials of each comparison in a sitting")
      ->capture_default_str();
}

void add_looks(CLI::App* command, desk::PlanTyped& plan) {
  command
      ->add_option("--looks", plan.looks,
                   "Look at the answers after so many trials of a claim, as 8,16,24, and stop it when it is "
                   "supported; "
                   "the last is all its trials; such a plan is held live (sitting host)")
      ->delimiter(',')
      ->default_str("");
  command->add_option("--spending", plan.spending, "Of the level over the looks: obrien-fleming or pocock")
      ->capture_default_str();
}

void add_judgement(CLI::App* command, desk::PlanTyped& plan) {
  command->add_option("--primary", plan.primary, "The primary test: pooled, or one listener's name")
      ->default_str("pooled");
  command->add_option("--level", plan.level, "Level of the family of comparisons")->capture_default_str();
  command->add_option("--effect", plan.effect, "The share right worth finding")->capture_default_str();
  command->add_option("--do-not-judge-by", plan.do_not_judge_by,
                      "Leave out a condition: tags-or-trims-wrong, separation-not-kept,\n"
                      "identical-pair-heard, known-difference-not-heard");
  command
      ->add_option("--tolerance", plan.level_tolerance_db,
                   "Level tolerance in dB (common practice, no threshold)")
      ->capture_default_str();
}

void add_levels_and_pace(CLI::App* command, desk::PlanTyped& plan) {
  command->add_flag("--as-connected", plan.as_connected,
                    "Trim nothing; otherwise all come down to the quietest cable");
  command->add_option("--weighting", plan.weighting, "Of the trims: 1khz, pink, pink-a, pink-k or programme")
      ->capture_default_str();
  command->add_option("--trim", plan.trims,
                      "Steps down for one cable, as thin-pair=2, instead of the predicted ones");
  command->add_option("--excerpt", plan.excerpts,
                      "Programme, as \"Choir,0:42,0:57\"; used in turn, two trials each");
  command->add_option("--practice", plan.practice_trials, "Practice trials, never counted")
      ->capture_default_str();
  command->add_option("--block", plan.block_trials, "Trials before a break")->capture_default_str();
  command->add_option("--break", plan.break_minutes, "Minutes of a break")->capture_default_str();
  command->add_option("--swap", plan.swap_seconds, "Seconds for each swap: above the longest rehearsed one")
      ->capture_default_str();
  command->add_option("--listen", plan.presentation_seconds, "Seconds of each presentation")
      ->capture_default_str();
}

void add_plan(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign;
    desk::PlanTyped plan;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(program, "plan", "Seal a plan: everything settled before the first trial",
                                  "plan spring --rig hall --compare heavy-pair/thin-pair --listener Ada");
  add_campaign(command, options->campaign);
  add_what_is_compared(command, options->plan);
  add_how_many(command, options->plan);
  add_looks(command, options->plan);
  add_judgement(command, options->plan);
  add_levels_and_pace(command, options->plan);
  command->add_flag("--dry-run", options->plan.dry_run, "Check and show everything, seal nothing");
  command->add_option("--supplied-seed", options->plan.supplied_seed_hex,
                      "Demonstrations only: 64 hex digits instead of a random seed; the report says so");
  command->callback([options, &console] {
    console.out << desk::sealing_text(desk::seal_plan(options->campaign, options->plan, now));
  });
}

void add_show(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, plan;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      add_command(program, "show", "The sealed plan as committed to, and its commitment", "show spring");
  add_campaign(command, options->campaign);
  command->add_option("plan", options->plan, "The plan; may be left out when there is only one");
  command->callback(
      [options, &console] { console.out << desk::plan_text(options->campaign, options->plan); });
}

void add_handover(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, plan, who, how;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(program, "handover", "Record who was given the commitment, and how",
                                  "handover spring --to \"the club's secretary\" --how \"by letter\"");
  add_campaign(command, options->campaign);
  command->add_option("plan", options->plan, "The plan; may be left out when there is only one");
  command->add_option("--to", options->who, "Who received it")->required();
  command->add_option("--how", options->how, "How, in free words");
  command->callback([options, &console] {
    desk::record_handover(options->campaign, options->plan, options->who, options->how, now);
    console.out << "recorded: the commitment was given to " << options->who << "\n";
  });
}

void add_finish(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, plan, who, why;
    bool had_seen = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      add_command(program, "abandon", "End a plan before its last sitting; what was planned stays known",
                  "abandon spring --by Ada --why \"the hall is closed\"");
  add_campaign(command, options->campaign);
  command->add_option("plan", options->plan, "The plan; may be left out when there is only one");
  command->add_option("--by", options->who, "Who decided")->required();
  command->add_option("--why", options->why, "The reason")->required();
  command->add_flag("--had-seen", options->had_seen,
                    "That person had seen both answers and order: no finding can then be supported");
  command->callback([options, &console] {
    desk::end_plan_early(options->campaign, options->plan, options->who, options->why, options->had_seen,
                         now);
    console.out << "the plan is ended early; it can be unsealed now\n";
  });
}

void add_unseal(CLI::App& program, Console& console) {
  struct Options {
    std::string campaign, plan;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command =
      add_command(program, "unseal", "Disclose the order after the plan's last sitting", "unseal spring");
  add_campaign(command, options->campaign);
  command->add_option("plan", options->plan, "The plan; may be left out when there is only one");
  command->callback([options, &console] {
    desk::unseal_plan(options->campaign, options->plan, now);
    console.out << "the plan is unsealed; no answer is accepted any more\n";
  });
}

}  // namespace

void add_plan_commands(CLI::App& program, Console& console) {
  add_plan(program, console);
  add_show(program, console);
  add_handover(program, console);
  add_finish(program, console);
  add_unseal(program, console);
}

}  // namespace cli
