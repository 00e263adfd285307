#include "report/content/words.h"

#include <stdexcept>

#include "findings/words/numbers.h"
#include "text/number.h"
#include "text/quantity.h"
#include "text/utf8.h"

namespace report {

std::string verdict_words(const plan::Plan& plan, findings::Verdict verdict) {
  switch (verdict) {
    case findings::Verdict::supported:
      return plan::protocol_of(plan).has_right_answer() ? "difference supported" : "preference supported";
    case findings::Verdict::not_shown:
      return "not shown";
    case findings::Verdict::cannot_be_judged:
      return "cannot be judged";
  }
  throw std::logic_error("a verdict without words");
}

std::string marked_verdict(const plan::Plan& plan, findings::Verdict verdict) {
  const char* mark = verdict == findings::Verdict::supported   ? "\u25CF\u00A0"
                     : verdict == findings::Verdict::not_shown ? "\u25CB\u00A0"
                                                               : "\u2013\u00A0";
  return mark + verdict_words(plan, verdict);
}

std::string score_of(const findings::Tally& tally) {
  return std::to_string(tally.score) + " of " + std::to_string(tally.answers);
}

std::string score_and_p(const findings::Tested& tested) {
  return score_of(tested.tally) + ", p " + text::p_value(tested.p);
}

std::string percent(double share) { return text::fixed(100 * share, 1) + " %"; }

std::string lower_percent(const findings::Limits& limits) {
  return percent(findings::rounded_down(limits.lower));
}

std::string upper_percent(const findings::Limits& limits) {
  return percent(findings::rounded_up(limits.upper));
}

std::string number_words(double value, int decimals) {
  std::string number = text::fixed(value, decimals);
  return number.starts_with('-') ? "\u2212" + number.substr(1) : number;
}

std::string p_words(double p, const std::optional<double>& standard_error) {
  const std::string words = text::p_value(p);
  if (!standard_error) return words;
  return words + " (simulated, standard error " + text::significant(*standard_error, 2) + ")";
}

std::string signed_db(double value_db) {
  const std::string number = number_words(value_db, 2);
  return (value_db > 0 && number != "0.00" ? "+" : "") + number + " dB";
}

std::string hertz(double frequency_hz) { return text::with_unit(frequency_hz, text::Unit::hertz, 2); }

std::string ohm_or_unknown(const std::optional<double>& resistance_ohm) {
  return resistance_ohm ? text::with_unit(*resistance_ohm, text::Unit::ohm) : "not known";
}

std::string confidence_of(double level) {
  std::string number = text::fixed(100 * (1 - level), 2);
  number.erase(number.find_last_not_of('0') + 1);
  if (number.ends_with('.')) number.pop_back();
  return number + " %";
}

std::string limit_words(const plan::Plan& plan, const findings::ComparisonFinding& finding) {
  if (finding.primary.tally.answers == 0) return "\u2013";
  const std::string upper = upper_percent(finding.limits);
  if (!plan::protocol_of(plan).has_right_answer())
    return text::fixed(100 * findings::rounded_down(finding.limits.lower), 1) + " to " + upper;
  return finding.verdict == findings::Verdict::supported ? "at least " + lower_percent(finding.limits)
                                                         : "at most " + upper;
}

std::string listed(const std::vector<std::string>& items) {
  std::string list;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) list += i + 1 == items.size() ? " and " : ", ";
    list += items[i];
  }
  return list;
}

std::string counted(int count, std::string_view singular) {
  return std::to_string(count) + " " + std::string(singular) + (count == 1 ? "" : "s");
}

std::string capitalised(std::string_view words) {
  std::string capital(words);
  if (!capital.empty() && capital[0] >= 'a' && capital[0] <= 'z')
    capital[0] = static_cast<char>(capital[0] - 'a' + 'A');
  return capital;
}

std::string yes_or_no(bool value) { return value ? "yes" : "no"; }

const std::string& listener_of(const plan::Plan& plan, int listener) {
  if (listener < 0 || listener >= static_cast<int>(plan.listeners.size()))
    throw std::domain_error("listener must be an index of the plan's " +
                            std::to_string(plan.listeners.size()) + " listeners, got " +
                            std::to_string(listener));
  return plan.listeners[static_cast<std::size_t>(listener)];
}

std::string one_line(std::string_view text) {
  std::string line(text::trimmed(text));
  for (char& c : line)
    if (c == '\n' || c == '\r' || c == '\t') c = ' ';
  return text::printable(line);
}

}  // namespace report
