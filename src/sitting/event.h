#pragma once

#include <string>
#include <string_view>

namespace sitting {

/// One thing that happened. Which fields an event carries depends on its type (see `kind` below); the others stay
/// empty and are not written.
struct Event {
  std::string type{};
  std::string time{};  ///< when it was recorded, RFC 3339 UTC
  int trial = 0;
  int presentation = 0;  ///< 1 for a trial's first
  int tag = 0;
  std::string who{};       ///< a listener, "helper", or the name of a person
  std::string word{};      ///< an answer, a reason, the name of a fact
  std::string sureness{};  ///< "guess", "fairly sure" or "certain"
  std::string text{};      ///< a value or free words
  bool flag = false;       ///< late, kept, early: see the type
};

/// The types, each with what its fields hold. Trials -1, -2, ... are practice and never counted.
namespace kind {
inline constexpr std::string_view opened = "opened";            // word: "paper" or "live"
inline constexpr std::string_view contributed = "contributed";  // who, text: the characters
inline constexpr std::string_view declared =
    "declared";  // who, word: "start" or "end", flag: separation kept, text
inline constexpr std::string_view tagged = "tagged";  // who
inline constexpr std::string_view fact = "fact";      // word: its name, text: its value
inline constexpr std::string_view level =
    "terminal level";                               // tag, who: the channel, word: "start" or "end", text: dB
inline constexpr std::string_view began = "began";  // contributions are closed, the order is drawn
inline constexpr std::string_view presented =
    "presented";  // trial, presentation, tag, text: time as written, or ""
inline constexpr std::string_view answered = "answered";    // trial, who, word, sureness, text: a note
inline constexpr std::string_view corrected = "corrected";  // as answered; text: why
inline constexpr std::string_view missing = "missing";      // trial, who
inline constexpr std::string_view spoiled = "spoiled";      // trial, who, word: reason, text, flag: late
inline constexpr std::string_view looked =
    "looked";  // trial: after which the sitting looked, word: "continue" or "stop"
inline constexpr std::string_view rest = "rest";    // who asked, or "planned"
inline constexpr std::string_view noted = "noted";  // who, text
inline constexpr std::string_view cue = "cue";      // who, text: what gave it away, other cues
inline constexpr std::string_view keyed = "keyed";  // who keyed answers, flag: holds the helper's sheet
inline constexpr std::string_view differed =
    "differed";  // second entry: trial, who, word: the second entry's answer
inline constexpr std::string_view compared = "compared";  // who made the second entry, text: number compared
inline constexpr std::string_view ended =
    "ended";  // flag: early, who, text: reason, word: `had_seen_both` when who decided had
// of the plan's own chain, sitting 0
inline constexpr std::string_view sealed = "sealed";  // text: commitment
inline constexpr std::string_view shown = "shown";    // who received the commitment, text: how
inline constexpr std::string_view head_shown =
    "head shown";  // trial: the sitting's number, word: its head, who received it, text: how
inline constexpr std::string_view ended_plan =
    "plan ended early";  // who, text: reason, flag: had seen answers and order
inline constexpr std::string_view unsealed = "unsealed";  // text: seed in hex, then each sitting's head
}  // namespace kind

inline constexpr std::string_view had_seen_both = "had seen answers and order";

/// The event's canonical text as `seal::canonical_text` would give it (the tests hold one against the other): an object
/// of the fields that are not empty. @throws std::domain_error for text that is not UTF-8.
std::string text_of(const Event& event);

/// Reads it back. @throws std::domain_error for anything `text_of` does not write.
Event event_of(std::string_view text);

}  // namespace sitting
