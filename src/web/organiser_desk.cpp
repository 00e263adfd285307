#include "web/organiser_desk.h"

#include <algorithm>

namespace web {

using nlohmann::json;

std::string organiser_view(const sitting::HelperDoor& door, const OrganiserDesk& desk,
                           const Connected& connected) {
  const sitting::HelperView view = door.look();
  json people = json::array(), spoiled = json::array();
  for (const auto& person : view.people)
    people.push_back({{"name", person.name},
                      {"connected", connected(person.name)},
                      {"contributed", person.contributed},
                      {"declared_start", person.declared_start},
                      {"declared_end", person.declared_end},
                      {"told_cues", person.told_cues}});
  for (const auto& one : view.spoiled)
    spoiled.push_back({{"trial", one.trial}, {"by", one.by}, {"reason", one.reason}, {"late", one.late}});
  const int left = std::max(0, view.planned - view.played);
  return json{{"title", desk.title()},
              {"commitment", desk.commitment_hex()},
              {"phase", view.phase},
              {"began", view.began},
              {"played", view.played},
              {"planned", view.planned},
              {"waiting_for", view.waiting_for},
              {"seconds_left", left * view.presentations * (view.swap_seconds + view.presentation_seconds)},
              {"people", people},
              {"spoiled", spoiled},
              {"head", desk.head_hex()},
              {"unsealed", desk.is_unsealed()}}
      .dump();
}

Actions organiser_actions(OrganiserDesk& desk) {
  return {
      {"end", [&](const auto&, const Fields&) { desk.end(); }},
      {"end-early",
       [&](const auto&, const Fields& f) {
         desk.end_early(f.text("who"), f.text("why"), f.flag("had_seen"));
       }},
      {"handover",
       [&](const auto&, const Fields& f) { desk.hand_over_head(f.text("to"), f.text_or_none("how")); }},
      {"unseal", [&](const auto&, const Fields&) { desk.unseal(); }},
  };
}

}  // namespace web
