#include "sitting/sitting.h"

#include <algorithm>
#include <utility>

#include "seal/chain.h"
#include "sitting/chain/chain_reader.h"
#include "sitting/words.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/number.h"
#include "text/time.h"
#include "text/utf8.h"

namespace sitting {
namespace {

void check_moment(const std::string& moment) {
  if (moment != "start" && moment != "end")
    throw text::BadInput("the moment must be \"start\" or \"end\", got \"" + moment + "\"");
}

}  // namespace

Sitting::Sitting(plan::Plan plan, const plan::SealedPlan& sealed, int number, EventLog& log, Clock clock)
    : plan_(std::move(plan)),
      protocol_(plan::protocol_of(plan_)),
      sealed_(sealed),
      number_(number),
      log_(log),
      clock_(std::move(clock)),
      shape_(plan::shape_of(plan_, number)),
      looks_(plan::looks_of(plan_)),
      state_(plan_, number) {
  catch_up();
}

void Sitting::catch_up() {
  const Chain chain = read_chain(log_, sealed_.commitment, number_);
  for (; events_ < static_cast<int>(chain.events.size()); ++events_)
    state_.apply(chain.events[static_cast<std::size_t>(events_)]);
  head_ = chain.head;
}

std::string Sitting::head() const { return seal::to_hex(head_); }

void Sitting::record(Event event) {
  event.time = text::rfc3339(clock_(), text::Precision::milliseconds);
  const std::string canonical = text_of(event);
  const seal::Digest head = seal::chain_next(head_, canonical);
  try {
    log_.append(number_, events_ + 1, {canonical, seal::to_hex(head)});
  } catch (const text::NotNow&) {
    catch_up();  // another writer may have been first
    throw;
  }
  head_ = head;
  ++events_;
  state_.apply(event);
}

void Sitting::require_open() const {
  if (state_.way.empty())
    throw text::NotNow("sitting " + std::to_string(number_) + " is not open yet; open it first");
  if (state_.ended)
    throw text::NotNow("sitting " + std::to_string(number_) + " has ended; nothing can be added to it");
}

void Sitting::require_running() const {
  require_open();
  if (!state_.began)
    throw text::NotNow("sitting " + std::to_string(number_) +
                       " has not begun; take the listeners' characters, then begin it");
}

void Sitting::require_trial(int trial) const {
  if (!state_.layout.is_trial(trial) && !(state_.way == "live" && state_.is_practice(trial)))
    throw text::BadInput("trial must be 1 to " + std::to_string(state_.layout.trials()) + ", got " +
                         std::to_string(trial));
}

void Sitting::require_listener(const std::string& listener) const {
  if (std::find(state_.listeners.begin(), state_.listeners.end(), listener) != state_.listeners.end()) return;
  throw text::BadInput("no listener \"" + listener + "\" attends sitting " + std::to_string(number_) +
                       text::did_you_mean(listener, state_.listeners));
}

void Sitting::open(const std::string& way) {
  if (!state_.way.empty()) throw text::NotNow("sitting " + std::to_string(number_) + " is open already");
  if (way != "paper" && way != "live")
    throw text::BadInput("a sitting is \"paper\" or \"live\", got \"" + way + "\"");
  if (way == "paper" && looks_)
    throw text::NotNow("plan \"" + plan_.name +
                       "\" looks at the answers as they come: hold its sittings live (sitting host), on "
                       "paper nobody may look");
  for (const Event& event : read_chain(log_, sealed_.commitment, 0).events)
    if (event.type == kind::unsealed || event.type == kind::ended_plan)
      throw text::NotNow("plan \"" + plan_.name + "\" is over; no further sitting can be opened");
  record({.type = std::string(kind::opened), .word = way});
}

void Sitting::contribute(const std::string& listener, const std::string& characters) {
  require_open();
  require_listener(listener);
  if (state_.began) throw text::NotNow("the order is drawn; characters can no longer be added");
  if (state_.contributions.contains(listener))
    throw text::NotNow("listener \"" + listener + "\" has added characters already");
  require_words("the characters", characters, 1);
  if (text::length_in_characters(characters) > 64) throw text::BadInput("the characters must be 64 at most");
  record({.type = std::string(kind::contributed), .who = listener, .text = characters});
}

void Sitting::note_replaced(const std::string& what, const std::string& before, const std::string& now,
                            const std::string& why) {
  if (why.empty())
    throw text::BadInput(what + ": " + text::quoted(before) + " is recorded already, " + text::quoted(now) +
                         " differs; say why it is replaced");
  note("keyer", what + ": " + before + " replaced by " + now + ", " + why);
}

void Sitting::name_tagger(const std::string& who, const std::string& why) {
  require_open();
  require_words("the name of who tagged", who, 1);
  if (state_.tagged_by == who) return;
  if (!state_.tagged_by.empty()) note_replaced("who tagged the cables", state_.tagged_by, who, why);
  record({.type = std::string(kind::tagged), .who = who});
}

void Sitting::begin() {
  require_open();
  if (state_.began) throw text::NotNow("sitting " + std::to_string(number_) + " has begun already");
  record({.type = std::string(kind::began)});
}

void Sitting::declare(const std::string& who, const std::string& moment, bool kept,
                      const std::string& words) {
  require_open();
  check_moment(moment);
  if (who != "helper") require_listener(who);
  require_words("the words", words, 0);
  record({.type = std::string(kind::declared), .who = who, .word = moment, .text = words, .flag = kept});
}

void Sitting::record_fact(const std::string& name, const std::string& value, const std::string& why) {
  require_open();
  std::vector<std::string> names;
  for (const FactKind& fact : fact_kinds()) names.emplace_back(fact.name);
  const auto known = std::find(names.begin(), names.end(), name);
  if (known == names.end())
    throw text::BadInput("no fact of a sitting is called " + text::quoted(name) +
                         text::did_you_mean(name, names));
  require_words("the value", value, 1);
  for (const auto& [before, told] : state_.facts) {
    if (before != name) continue;
    if (told == value) return;
    if (!fact_kinds()[static_cast<std::size_t>(known - names.begin())].repeats)
      note_replaced(name, told, value, why);
  }
  record({.type = std::string(kind::fact), .word = name, .text = value});
}

void Sitting::record_level(const TerminalLevel& level, const std::string& why) {
  require_running();
  check_moment(level.moment);
  if (level.channel != "left" && level.channel != "right" && level.channel != "mono")
    throw text::BadInput("the channel must be \"left\", \"right\" or \"mono\", got " +
                         text::quoted(level.channel));
  if (!text::number(level.level))
    throw text::BadInput("the level must be a number, got " + text::quoted(level.level));
  if (level.unit != "dB" && level.unit != "dBV")
    throw text::BadInput("the unit of a level must be dB or dBV, got " + text::quoted(level.unit));
  if (std::find(order().tags.begin(), order().tags.end(), level.tag) == order().tags.end())
    throw text::BadInput("no cable of sitting " + std::to_string(number_) + " carries tag " +
                         std::to_string(level.tag) + "; see its tagging list");
  for (const TerminalLevel& known : state_.levels) {
    if (known.unit != level.unit)
      throw text::BadInput("the levels of sitting " + std::to_string(number_) + " are kept in " + known.unit +
                           ", these are in " + level.unit + "\nkey all of a sitting in one unit");
    if (known.tag != level.tag || known.channel != level.channel || known.moment != level.moment) continue;
    if (known.level == level.level) return;
    note_replaced("level of tag " + std::to_string(level.tag) + ", " + level.channel + ", " + level.moment,
                  known.level, level.level, why);
    break;
  }
  record({.type = std::string(kind::level),
          .tag = level.tag,
          .who = level.channel,
          .word = level.moment,
          .text = level.level + " " + level.unit});
}

void Sitting::note(const std::string& who, const std::string& words) {
  require_open();
  require_words("the name", who, 1);
  require_words("a note", words, 1);
  record({.type = std::string(kind::noted), .who = who, .text = words});
}

void Sitting::rest(const std::string& who) {
  require_running();
  require_words("the name", who, 1);
  record({.type = std::string(kind::rest), .who = who});
  ready_ = {};
}

void Sitting::tell_cue(const std::string& listener, const std::string& words) {
  require_running();
  require_listener(listener);
  require_words("the words", words, 1);
  record({.type = std::string(kind::cue), .who = listener, .text = words});
}

void Sitting::end() {
  require_running();
  take_look();
  const std::vector<int> open = state_.open_trials();
  if (!open.empty()) {
    const int trial = open.front();
    throw text::NotNow("sitting " + std::to_string(number_) + " cannot end: " + std::to_string(open.size()) +
                       (open.size() == 1 ? " trial waits" : " trials wait") + " for answers, first trial " +
                       std::to_string(trial) + " for " + state_.waits_for(trial).front() +
                       "\nkey them, mark them as missing, or end the sitting early with a reason");
  }
  record({.type = std::string(kind::ended)});
}

void Sitting::end_early(const std::string& who, const std::string& reason, bool had_seen) {
  require_open();
  require_words("who decided", who, 1);
  require_words("the reason", reason, 1);
  record({.type = std::string(kind::ended),
          .who = who,
          .word = had_seen ? std::string(had_seen_both) : "",
          .text = reason,
          .flag = true});
}

}  // namespace sitting
