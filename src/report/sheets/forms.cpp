#include "report/forms.h"

#include "plan/sitting_shape.h"
#include "report/content/words.h"
#include "sitting/layout.h"
#include "sitting/words.h"

namespace report {
namespace {

std::string csv_cell(const std::string& text) {
  if (text.find_first_of(",;\"#") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

std::string comment(const std::string& words) { return "# " + words + "\n"; }

std::string origin(const plan::Plan& plan, int sitting) {
  return comment("plan " + one_line(plan.name) + ", sitting " + std::to_string(sitting));
}

constexpr const char* kSpares = "a spare that was played: take away the # before it";

}  // namespace

std::string answers_form(const plan::Plan& plan, int sitting) {
  const sitting::Layout layout(plan, sitting);
  const auto answers = plan::protocol_of(plan).answers();
  std::string all = origin(plan, sitting);
  all += comment("answers: " + std::string(answers[0]) + " or " + std::string(answers[1]) +
                 "; - where none was given; empty: not keyed yet");
  all += comment(kSpares) + "trial";
  std::string empty;
  for (const int listener : plan::part_of(plan, sitting).listeners) {
    all += "," + csv_cell(listener_of(plan, listener));
    empty += ",";
  }
  all += "\n";
  for (int trial = 1; trial <= layout.trials(); ++trial)
    all += (layout.spare_of(trial) > 0 ? "#" : "") + std::to_string(trial) + empty + "\n";
  return all;
}

std::string times_form(const plan::Plan& plan, int sitting) {
  const sitting::Layout layout(plan, sitting);
  std::string all =
      origin(plan, sitting) + comment("started: as the helper wrote it, such as 20:14:30") + comment(kSpares);
  all += "trial,presentation,started\n";
  for (int trial = 1; trial <= layout.trials(); ++trial) {
    const auto presentations = plan::protocol_of(plan).labels(trial).size();
    for (std::size_t presentation = 1; presentation <= presentations; ++presentation)
      all += (layout.spare_of(trial) > 0 ? "#" : "") + std::to_string(trial) + "," +
             std::to_string(presentation) + ",\n";
  }
  return all;
}

std::string spoilings_form(const plan::Plan& plan, int sitting) {
  plan::part_of(plan, sitting);
  std::vector<std::string> reasons;
  for (const std::string_view reason : sitting::spoil_reasons()) reasons.emplace_back(reason);
  return origin(plan, sitting) + comment("by: helper, or the listener's name") +
         comment("reason: " + listed(reasons) + "; \"other\" needs words") + "trial,by,reason,words\n";
}

std::string levels_form(const std::vector<int>& tags) {
  std::string all = comment("levels at the loudspeaker terminals, trims set; channel: left, right or mono") +
                    comment("when: start or end of the sitting") + "tag,channel,when,level_dB\n";
  for (const char* moment : {"start", "end"})
    for (const int tag : tags)
      for (const char* channel : {"left", "right"})
        all += std::to_string(tag) + "," + channel + "," + moment + ",\n";
  return all;
}

}  // namespace report
