#include "plan/plan.h"

#include <algorithm>
#include <optional>
#include <set>
#include <stdexcept>

#include "plan/looks.h"
#include "protocols/catalogue.h"
#include "text/error.h"
#include "text/number.h"
#include "text/utf8.h"

namespace plan {
namespace {

[[noreturn]] void refuse(const std::string& field, const std::string& found, const std::string& expected) {
  throw text::BadInput("plan: " + field + " is " + found + "; expected " + expected);
}

std::string title_of(const Plan& plan, int specimen) {
  return plan::title_of(plan.specimens.at(static_cast<std::size_t>(specimen)));
}

void check_name(const std::string& field, const std::string& name) {
  if (name.empty() || !text::is_valid_utf8(name) || text::length_in_characters(name) > 80 ||
      name.front() == ' ' || name.back() == ' ' ||
      std::any_of(name.begin(), name.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; }))
    refuse(field, text::quoted(name), "1 to 80 characters on one line, with no space at either end");
}

void check_share(const std::string& field, const std::string& typed, double above, double below,
                 const std::string& example) {
  const auto value = text::number(typed);
  if (!value || !(*value > above) || !(*value < below))
    refuse(field, text::quoted(typed),
           "a number above " + text::shortest(above) + " and below " + text::shortest(below) + ", such as " +
               example);
}

void check_positive(const std::string& field, const std::string& typed, const std::string& unit) {
  const auto value = text::number(typed);
  if (!value || !(*value > 0)) refuse(field, text::quoted(typed), "a number above 0, in " + unit);
}

void check_index(const std::string& field, int index, std::size_t count) {
  if (index < 0 || index >= static_cast<int>(count))
    refuse(field, std::to_string(index), "an index from 0 to " + std::to_string(count - 1));
}

void check_range(const std::string& field, int value, int least, int most) {
  if (value < least || value > most)
    refuse(field, std::to_string(value), std::to_string(least) + " to " + std::to_string(most));
}

void check_word(const std::string& field, const std::string& word, const std::vector<std::string>& allowed) {
  if (std::find(allowed.begin(), allowed.end(), word) != allowed.end()) return;
  std::string list;
  for (const std::string& one : allowed) list += (list.empty() ? "" : " or ") + text::quoted(one);
  refuse(field, text::quoted(word), list);
}

void check_listeners(const Plan& plan) {
  if (plan.listeners.empty()) refuse("the list of listeners", "empty", "at least one name");
  std::set<std::string> seen;
  for (const std::string& listener : plan.listeners) {
    check_name("a listener's name", listener);
    const std::string lower = text::lower_case(listener);
    if (lower == "helper" || lower == "pooled")
      refuse("a listener's name", text::quoted(listener), "a name that does not mean something else here");
    if (!seen.insert(lower).second)
      refuse("listener " + text::quoted(listener), "named twice", "each name once");
    for (const char* reserved : {"trial", "listener", "answer", "sureness", "note", "planned"})
      if (lower == reserved)
        refuse("listener " + text::quoted(listener), "a word of the forms", "another name");
  }
  std::vector<std::string> primary = plan.listeners;
  primary.push_back("pooled");
  check_word("the primary test", plan.primary_test, primary);
  check_word("the attendance", plan.attendance, {"together", "one at a time"});
}

void check_comparisons(const Plan& plan) {
  if (plan.comparisons.empty()) refuse("the list of comparisons", "empty", "at least one");
  for (const Specimen& specimen : plan.specimens) {
    check_name("a cable's name", specimen.cable);
    check_range("a trim, in steps,", specimen.trim_steps, 0, 1000);
    if (!specimen.series_resistance_ohm.empty())
      check_positive("a resistor in series", specimen.series_resistance_ohm, "ohm");
  }
  for (const Comparison& comparison : plan.comparisons) {
    check_index("a comparison's first specimen", comparison.first, plan.specimens.size());
    check_index("a comparison's second specimen", comparison.second, plan.specimens.size());
    if (comparison.first == comparison.second)
      refuse("comparison " + title_of(plan, comparison), "one specimen twice",
             "two specimens, each with its tag");
    if (comparison.kind == Kind::identical_pair &&
        title_of(plan, comparison.first) != title_of(plan, comparison.second))
      refuse("identical pair " + title_of(plan, comparison), "of two different cables",
             "one cable under two tags");
    if (!comparison.predicted_difference_db.empty() && !text::number(comparison.predicted_difference_db))
      refuse("a predicted difference", text::quoted(comparison.predicted_difference_db),
             "a number in dB, or nothing");
  }
}

void check_without_repeats(const std::string& field, const std::vector<int>& list, const std::string& each) {
  if (std::set<int>(list.begin(), list.end()).size() != list.size())
    refuse(field, "not without repeats", "each " + each + " once");
}

void check_sittings(const Plan& plan) {
  if (plan.sittings.empty()) refuse("the list of sittings", "empty", "at least one");
  std::set<int> planned;
  for (const Part& part : plan.sittings) {
    if (part.comparisons.empty()) refuse("a sitting's list of comparisons", "empty", "at least one");
    if (part.listeners.empty()) refuse("a sitting's list of listeners", "empty", "at least one");
    for (const int comparison : part.comparisons)
      check_index("a sitting's comparison", comparison, plan.comparisons.size());
    for (const int listener : part.listeners)
      check_index("a sitting's listener", listener, plan.listeners.size());
    check_without_repeats("a sitting's list of comparisons", part.comparisons, "comparison");
    check_without_repeats("a sitting's list of listeners", part.listeners, "listener");
    check_range("trials of each comparison in a sitting", part.trials_each, 1, 1000);
    planned.insert(part.comparisons.begin(), part.comparisons.end());
  }
  if (planned.size() != plan.comparisons.size())
    refuse("the list of sittings", "without some comparison", "every comparison in at least one sitting");
}

void check_pace(const Plan& plan) {
  check_range("the number of spare trials", plan.spares_each, 0, 50);
  check_range("the number of practice trials", plan.practice_trials, 0, 50);
  check_range("the number of trials between breaks", plan.block_trials, 1, 1000);
  check_range("the length of a break, in minutes,", plan.break_minutes, 0, 24 * 60);
  check_range("the time for a swap, in seconds,", plan.swap_seconds, 1, 3600);
  check_range("the length of a presentation, in seconds,", plan.presentation_seconds, 1, 3600);
}

void check_rule(const Plan& plan) {
  if (!protocols::find(plan.protocol))
    refuse("the protocol", text::quoted(plan.protocol), "one of the protocols that the program lists");
  const protocols::Protocol* rule = protocols::find_rule(plan.order_rule);
  if (!rule) refuse("the order rule", text::quoted(plan.order_rule), "a rule that this program knows");
  if (rule->name() != plan.protocol)
    refuse("the order rule", text::quoted(plan.order_rule),
           "a rule of the protocol " + text::quoted(plan.protocol));
}

/// Seconds of "57", "0:57" or "1:02:57", fractions too; nothing for anything else.
std::optional<double> seconds_in(const std::string& typed) {
  double seconds = 0;
  for (std::size_t at = 0; at <= typed.size();) {
    const std::size_t end = std::min(typed.find(':', at), typed.size());
    const auto part = text::number(typed.substr(at, end - at));
    if (!part || *part < 0) return std::nullopt;
    seconds = seconds * 60 + *part;
    at = end + 1;
  }
  return seconds;
}

void check_excerpt(const Excerpt& excerpt) {
  check_name("an excerpt's title", excerpt.title);
  const std::string field = "excerpt " + text::quoted(excerpt.title);
  for (const std::string& time : {excerpt.start, excerpt.end})
    if (!time.empty() && !seconds_in(time))
      refuse(field + ", time", text::quoted(time), "minutes:seconds, such as 0:42");
  if (!excerpt.start.empty() && !excerpt.end.empty() &&
      *seconds_in(excerpt.end) <= *seconds_in(excerpt.start))
    refuse(field, "over at " + excerpt.end + " and begins at " + excerpt.start, "an end after its start");
}

void check_levels(const Plan& plan) {
  check_word("how levels are set", plan.levels, {"trimmed", "as connected"});
  check_positive("the tolerance of levels", plan.level_tolerance_db, "dB");
  const bool trims = std::any_of(plan.specimens.begin(), plan.specimens.end(),
                                 [](const Specimen& specimen) { return specimen.trim_steps > 0; });
  if (plan.levels == "trimmed" && trims) check_positive("the volume step", plan.volume_step_db, "dB");
}

}  // namespace

std::string_view name_of(Kind kind) {
  switch (kind) {
    case Kind::claim:
      return "claim";
    case Kind::identical_pair:
      return "identical pair";
    case Kind::known_difference:
      return "known difference";
  }
  throw std::logic_error("a kind of comparison without a name");
}

void check(const Plan& plan) {
  check_name("the plan's name", plan.name);
  check_rule(plan);
  check_listeners(plan);
  check_comparisons(plan);
  check_sittings(plan);
  check_share("the level", plan.level, 0, 0.5, "0.05");
  check_share("the share worth finding", plan.effect_share, 0.5, 1, "0.90");
  check_word("the family", plan.family, {"holm"});
  check_levels(plan);
  check_pace(plan);
  for (const Excerpt& excerpt : plan.excerpts) check_excerpt(excerpt);
  check_looks(plan);
}

const protocols::Protocol& protocol_of(const Plan& plan) {
  const protocols::Protocol* protocol = protocols::find_rule(plan.order_rule);
  if (!protocol)
    throw std::domain_error("order rule " + text::quoted(plan.order_rule) +
                            " is not known to this program; a newer blindswap sealed this plan");
  return *protocol;
}

std::string title_of(const Specimen& specimen) {
  if (specimen.series_resistance_ohm.empty()) return specimen.cable;
  return specimen.cable + " + " + specimen.series_resistance_ohm + " ohm";
}

std::string title_of(const Plan& plan, const Comparison& comparison) {
  return title_of(plan, comparison.first) + " / " + title_of(plan, comparison.second);
}

}  // namespace plan
