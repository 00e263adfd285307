#include "web/organiser_desk.h"

#include <algorithm>

#include "web/helper_desk.h"

namespace web {

using nlohmann::json;

std::string organiser_view(const sitting::HelperDoor& door, const OrganiserDesk& desk,
                           const Connected& connected) {
  const sitting::HelperView view = door.look();
  json people = people_json(view);
  for (json& person : people) person["connected"] = connected(person["name"]);
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
              {"spoiled", spoiled_json(view)},
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
