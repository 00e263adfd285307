#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/plan.h"

namespace report {

/// Title, plan and sitting: the first lines of every sheet.
std::string sheet_head(const plan::Plan& plan, int sitting, std::string_view title);

/// A heading with a rule under it.
std::string sheet_heading(std::string_view title);

/// Numbered steps, wrapped.
std::string sheet_steps(const std::vector<std::string>& steps);

/// Points with a dash, wrapped.
std::string sheet_points(const std::vector<std::string>& points);

/// Lines on which somebody declares at the start and the end whether separation was kept.
std::string declaration_lines(std::string_view from_whom);

/// How and why a trial is withdrawn: the closed list.
std::string spoiling_words();

/// "A rest of 10 minutes."
std::string rest_line(const plan::Plan& plan);

/// Says after which planned trials a rest is due: every `block_trials`, but not after the last.
class Rests {
 public:
  explicit Rests(const plan::Plan& plan);

  /// Whether a rest stands before this trial. Call once a trial, in order.
  bool is_before(bool spare);

 private:
  int block_;
  int planned_before_ = 0;
};

}  // namespace report
