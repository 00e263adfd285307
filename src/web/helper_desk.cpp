#include "web/helper_desk.h"

#include "text/error.h"

namespace web {
namespace {

using nlohmann::json;

json step_json(const sitting::HelperStep& step) {
  return {{"trial", step.trial}, {"presentation", step.presentation},     {"label", step.label},
          {"tag", step.tag},     {"attenuation_db", step.attenuation_db}, {"excerpt", step.excerpt}};
}

void add_needs(const sitting::HelperView& view, json& all) {
  all["people"] = people_json(view);
  for (const auto& fact : view.facts)
    all["facts"].push_back({{"name", fact.name}, {"title", fact.title}, {"value", fact.value}});
  all["levels"] = json::array();
  for (const auto& level : view.levels)
    all["levels"].push_back({{"tag", level.tag},
                             {"channel", level.channel},
                             {"moment", level.moment},
                             {"level", level.level},
                             {"unit", level.unit}});
  all["spoiled"] = spoiled_json(view);
}

}  // namespace

json people_json(const sitting::HelperView& view) {
  json people = json::array();
  for (const auto& person : view.people)
    people.push_back({{"name", person.name},
                      {"contributed", person.contributed},
                      {"declared_start", person.declared_start},
                      {"declared_end", person.declared_end},
                      {"told_cues", person.told_cues}});
  return people;
}

json spoiled_json(const sitting::HelperView& view) {
  json spoiled = json::array();
  for (const auto& one : view.spoiled)
    spoiled.push_back({{"trial", one.trial}, {"by", one.by}, {"reason", one.reason}, {"late", one.late}});
  return spoiled;
}

std::string helper_view(const sitting::HelperDoor& door, const std::string& trouble) {
  const sitting::HelperView view = door.look();
  json all = {{"phase", view.phase},
              {"trouble", trouble},
              {"began", view.began},
              {"now", step_json(view.now)},
              {"next", step_json(view.next)},
              {"next_practice", step_json(view.next_practice)},
              {"waiting_for", view.waiting_for},
              {"swap_seconds", view.swap_seconds},
              {"milliseconds_left", view.milliseconds_left},
              {"played", view.played},
              {"planned", view.planned},
              {"longest_rehearsed_swap_seconds", view.longest_rehearsed_swap_seconds},
              {"resting", view.resting},
              {"tagged_by", view.tagged_by},
              {"tags", view.tags}};
  add_needs(view, all);
  return all.dump();
}

std::string tagging_list(const sitting::HelperDoor& door) {
  if (door.look().phase != "before")
    throw text::NotNow("the tagging list is closed: from the first presentation on no cable has a name here");
  json lines = json::array();
  for (const sitting::TagLine& line : door.tagging_list())
    lines.push_back({{"tag", line.tag}, {"specimen", line.specimen}});
  return lines.dump();
}

Actions helper_actions(sitting::HelperDoor& door) {
  return {
      {"declare",
       [&](const auto&, const Fields& f) {
         door.declare("helper", f.text("moment"), f.flag("kept"), f.text_or_none("words"));
       }},
      {"tagged",
       [&](const auto&, const Fields& f) { door.name_tagger(f.text("who"), f.text_or_none("why")); }},
      {"fact",
       [&](const auto&, const Fields& f) {
         door.record_fact(f.text("name"), f.text("value"), f.text_or_none("why"));
       }},
      {"level",
       [&](const auto&, const Fields& f) {
         door.record_level(
             {f.whole("tag"), f.text("channel"), f.text("moment"), f.text("level"), f.text("unit")},
             f.text_or_none("why"));
       }},
      {"rehearse", [&](const auto&, const Fields& f) { door.rehearse_swap(f.number("seconds")); }},
      {"begin", [&](const auto&, const Fields&) { door.begin(); }},
      {"ready", [&](const auto&, const Fields& f) { door.ready(f.whole("trial"), f.whole("presentation")); }},
      {"close", [&](const auto&, const Fields&) { door.close_trial(); }},
      {"spoil",
       [&](const auto&, const Fields& f) {
         door.spoil("helper", f.whole("trial"), f.text("reason"), f.text_or_none("words"));
       }},
      {"rest", [&](const auto&, const Fields&) { door.rest("helper"); }},
      {"note", [&](const auto&, const Fields& f) { door.note("helper", f.text("words")); }},
  };
}

}  // namespace web
