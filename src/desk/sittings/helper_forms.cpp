#include "desk/files.h"
#include "desk/sittings/opened_sitting.h"
#include "import/levels.h"
#include "import/times.h"
#include "sitting/words.h"
#include "text/error.h"
#include "text/number.h"
#include "text/time.h"

namespace desk {
namespace {

bool has_date(const std::string& started) { return text::parse_rfc3339(started).has_value(); }

/// The times of a sitting are all with a date or all without; a table's own are, says the import.
void refuse_other_form(const sitting::State& state, imported::KeyedTimes& keyed) {
  for (const sitting::TrialState& trial : state.trials)
    for (const std::string& started : trial.started) {
      if (started.empty() || keyed.times.empty() || has_date(started) == has_date(keyed.times[0].as_typed))
        continue;
      keyed.problems.add(keyed.times[0].started_place,
                         "the times kept before are written like " + started + ", these are not",
                         "write all times of a sitting the same way");
      return;
    }
}

/// Whether the call adds an event: what is kept already is not kept again.
bool adds(sitting::Sitting& sitting, const std::function<void()>& call) {
  const std::string before = sitting.head();
  call();
  return sitting.head() != before;
}

}  // namespace

int key_times(const SittingName& name, const Path& csv, const sitting::Clock& clock) {
  OpenedSitting opened(name, clock);
  sitting::Sitting& sitting = opened.sitting;
  imported::KeyedTimes keyed = imported::parse_times(read_file(csv), csv.string());
  refuse_other_form(sitting.state(), keyed);
  keyed.problems.refuse_if_any();
  int kept = 0;
  opened.campaign.all_or_none([&] {
    for (const imported::KeyedTime& time : keyed.times) try {
        kept += adds(sitting, [&] { sitting.key_time(time.trial, time.presentation, time.as_typed); });
      } catch (const text::BadInput& error) {
        keyed.problems.add(time.trial_place, error.what());
      }
    keyed.problems.refuse_if_any();
  });
  return kept;
}

std::vector<SpoiledNow> key_spoilings(const SittingName& name, const Path& csv, const sitting::Clock& clock) {
  OpenedSitting opened(name, clock);
  sitting::Sitting& sitting = opened.sitting;
  std::vector<std::string> people = sitting.state().listeners, reasons;
  people.push_back("helper");
  for (const std::string_view reason : sitting::spoil_reasons()) reasons.emplace_back(reason);
  imported::KeyedSpoilings keyed = imported::parse_spoilings(read_file(csv), csv.string(), people, reasons);
  std::vector<SpoiledNow> spoiled;
  opened.campaign.all_or_none([&] {
    for (const imported::KeyedSpoiling& spoiling : keyed.spoilings) try {
        sitting.spoil(spoiling.by, spoiling.trial, spoiling.reason, spoiling.words);
        spoiled.push_back({spoiling.trial, sitting.state().at(spoiling.trial).late_spoiled});
      } catch (const text::BadInput& error) {
        keyed.problems.add(spoiling.trial_place, error.what());
      }
    keyed.problems.refuse_if_any();
  });
  return spoiled;
}

int key_levels(const SittingName& name, const Path& csv, const std::string& why,
               const sitting::Clock& clock) {
  OpenedSitting opened(name, clock);
  sitting::Sitting& sitting = opened.sitting;
  imported::TerminalLevels keyed = imported::parse_levels(read_file(csv), csv.string());
  const std::string unit = keyed.unit == text::Unit::decibel ? "dB" : "dBV";
  int kept = 0;
  opened.campaign.all_or_none([&] {
    for (const imported::TerminalLevel& level : keyed.levels) try {
        const int tag = static_cast<int>(text::whole_number(level.tag).value_or(0));
        kept += adds(sitting, [&] {
          sitting.record_level({tag, level.channel, level.moment, text::shortest(level.level_db), unit}, why);
        });
      } catch (const text::BadInput& error) {
        keyed.problems.add(level.tag_place, error.what());
      }
    keyed.problems.refuse_if_any();
  });
  return kept;
}

}  // namespace desk
