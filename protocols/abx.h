#pragma once

#include "protocols/protocol.h"

namespace protocols {

/// ABX: both references and X once in each trial; X is one of the two references.
///
/// Rule "abx-1": tags for the specimens in their order, each 100 + below(900), drawn again while taken; the
/// order of the comparisons by one shuffle; then for each comparison one coin for which cable is A (heads:
/// the second), and for each of its trials and then its spares one coin for X (heads: X is B). No run limits
/// and no balancing. Trials with odd numbers play A B X, those with even numbers B A X.
class Abx : public Protocol {
 public:
  std::string_view name() const override { return "abx"; }
  std::string_view title() const override { return "ABX"; }
  std::string_view order_rule() const override { return "abx-1"; }
  std::string_view question() const override { return "Which one is X?"; }
  std::array<std::string_view, 2> answers() const override { return {"A", "B"}; }
  std::string_view score_word() const override { return "right"; }
  bool has_right_answer() const override { return true; }
  std::vector<std::string_view> labels(int trial_number) const override;

 private:
  void draw_block(Draw& draw, const Shape& shape, int comparison, Order& order) const override;
};

}  // namespace protocols
