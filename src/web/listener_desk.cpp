#include "web/listener_desk.h"

namespace web {

using nlohmann::json;

std::string listener_view(const sitting::ListenerDoor& door, const std::string& listener) {
  const sitting::ListenerView view = door.look(listener);
  return json{{"name", view.listener},
              {"phase", view.phase},
              {"trial", view.trial},
              {"playing", view.playing},
              {"heard", view.heard},
              {"labels", view.labels},
              {"question", view.question},
              {"answers", view.answers},
              {"own_answer", view.own_answer},
              {"own_sureness", view.own_sureness},
              {"resting", view.resting},
              {"may_answer", view.may_answer},
              {"settled", view.settled},
              {"planned", view.planned},
              {"began", view.began},
              {"finished", view.finished},
              {"contributed", view.contributed},
              {"declared_start", view.declared_start},
              {"declared_end", view.declared_end},
              {"told_cues", view.told_cues}}
      .dump();
}

Actions listener_actions(sitting::ListenerDoor& door) {
  return {
      {"contribute", [&](const auto& who, const Fields& f) { door.contribute(who, f.text("characters")); }},
      {"declare",
       [&](const auto& who, const Fields& f) {
         door.declare(who, f.text("moment"), f.flag("kept"), f.text_or_none("words"));
       }},
      {"answer",
       [&](const auto& who, const Fields& f) {
         door.answer(who, f.whole("trial"), f.text("answer"), f.text_or_none("sureness"), "");
       }},
      {"note", [&](const auto& who, const Fields& f) { door.note(who, f.text("words")); }},
      {"spoil",
       [&](const auto& who, const Fields& f) {
         door.spoil(who, f.whole("trial"), f.text("reason"), f.text_or_none("words"));
       }},
      {"rest", [&](const auto& who, const Fields&) { door.rest(who); }},
      {"cue", [&](const auto& who, const Fields& f) { door.tell_cue(who, f.text("words")); }},
  };
}

}  // namespace web
