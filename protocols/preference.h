#pragma once

#include "protocols/protocol.h"

namespace protocols {

/// Paired preference: both cables once in each trial, in either order; which one is preferred. No answer is
/// right; an answer scores when it is for the comparison's first cable.
///
/// Rule "preference-1": tags and the order of the comparisons as in "abx-1"; then for each of a comparison's
/// trials and then its spares one coin for which cable plays first (heads: the second). No balancing.
class Preference : public Protocol {
 public:
  std::string_view name() const override { return "preference"; }
  std::string_view title() const override { return "paired preference"; }
  std::string_view order_rule() const override { return "preference-1"; }
  std::string_view question() const override { return "Which one do you prefer?"; }
  std::array<std::string_view, 2> answers() const override { return {"first", "second"}; }
  std::string_view score_word() const override { return "for the first-named cable"; }
  bool has_right_answer() const override { return false; }
  std::vector<std::string_view> labels(int trial_number) const override;

 private:
  void draw_block(Draw& draw, const Shape& shape, int comparison, Order& order) const override;
};

}  // namespace protocols
