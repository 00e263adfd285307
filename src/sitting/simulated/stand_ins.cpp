#include "sitting/simulated/stand_ins.h"

#include <algorithm>
#include <utility>

namespace sitting {
namespace {

constexpr const char* stand_in_words = "a stand-in played by the program";

bool everybody_is_there(const HelperView& view) {
  return std::all_of(view.people.begin(), view.people.end(),
                     [](const PersonView& person) { return person.contributed && person.declared_start; });
}

}  // namespace

StandIns::StandIns(ListenerDoor& listeners, HelperDoor& helper, std::vector<std::string> who,
                   std::uint64_t seed)
    : listener_door_(listeners), helper_door_(helper), who_(std::move(who)), random_(seed) {}

void StandIns::act() {
  if (helper_door_.look().phase == "over") return;
  for (const std::string& name : who_) name == "helper" ? act_as_helper() : act_as_listener(name);
}

void StandIns::act_as_listener(const std::string& name) {
  const ListenerView view = listener_door_.look(name);
  if (view.trial == 0 && !view.contributed && !helper_door_.look().began)
    listener_door_.contribute(name, std::to_string(random_.below(10000)));
  if (!view.declared_start) listener_door_.declare(name, "start", true, stand_in_words);
  if (view.phase == "answer")
    listener_door_.answer(name, view.trial, view.answers[random_.below(2)], "guess", "");
  if (!view.finished) return;
  if (!view.declared_end) listener_door_.declare(name, "end", true, stand_in_words);
  if (!view.told_cues)
    listener_door_.tell_cue(name, std::string(stand_in_words) + ": every answer was a coin's");
}

void StandIns::act_as_helper() {
  HelperView view = helper_door_.look();
  const auto self = std::find_if(view.people.begin(), view.people.end(),
                                 [](const PersonView& person) { return person.name == "helper"; });
  if (!self->declared_start) helper_door_.declare("helper", "start", true, stand_in_words);
  if (!view.began) {
    if (everybody_is_there(helper_door_.look())) {
      helper_door_.name_tagger(stand_in_words, "");
      helper_door_.begin();
    }
    return;
  }
  if (view.phase == "done" && !self->declared_end)
    helper_door_.declare("helper", "end", true, stand_in_words);
  const HelperStep& step = view.next_practice.trial != 0 ? view.next_practice : view.next;
  if (step.trial != 0 && view.phase != "play" && view.phase != "ready")
    helper_door_.ready(step.trial, step.presentation);
}

}  // namespace sitting
