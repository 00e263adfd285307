#pragma once

#include <string>
#include <string_view>

#include "plan/plan.h"
#include "protocols/catalogue.h"

/// A small plan that hangs together: `comparisons` claims between a baseline and other cables, all in one sitting with
/// `trials` each, and the listeners ann, bob, cid, ... up to 8.
inline plan::Plan sample_plan(std::string_view protocol = "abx", int comparisons = 1, int trials = 16,
                              int listeners = 3) {
  plan::Plan plan;
  plan.name = "pilot";
  plan.sealed_at = "2031-05-01T19:30:00Z";
  plan.seed_origin = "supplied";
  plan.protocol = protocol;
  plan.order_rule = protocols::find(protocol)->order_rule();
  plan.rig = "main";
  plan.baseline = "heavy-pair";
  const char* names[] = {"ann", "bob", "cid", "dot", "eve", "fay", "gus", "hal"};
  plan::Part part;
  for (int i = 0; i < listeners; ++i) {
    plan.listeners.emplace_back(names[i]);
    part.listeners.push_back(i);
  }
  plan.attendance = "together";
  plan.specimens.push_back({"heavy-pair", "", 0});
  for (int i = 0; i < comparisons; ++i) {
    plan.specimens.push_back({"cable-" + std::to_string(i + 1), "", 0});
    plan.comparisons.push_back({0, i + 1, plan::Kind::claim, ""});
    part.comparisons.push_back(i);
  }
  part.trials_each = trials;
  plan.sittings.push_back(part);
  plan.primary_test = "pooled";
  plan.levels = "as connected";
  return plan;
}
