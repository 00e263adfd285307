#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "protocols/draw.h"
#include "protocols/order.h"

namespace protocols {

/// One way to present and to ask. Members of `catalogue()`; nothing else in the program knows them by name.
///
/// Every protocol here puts one fair coin into each trial, independent of all others, and one answer of two
/// scores: the answer whose index equals the trial's coin. The exact tests need just that.
class Protocol {
 public:
  virtual ~Protocol() = default;

  virtual std::string_view name() const = 0;
  virtual std::string_view title() const = 0;
  /// The name under which the rule that draws the order is sealed. A released rule never changes.
  virtual std::string_view order_rule() const = 0;
  /// The one question of every trial.
  virtual std::string_view question() const = 0;
  /// The allowed answers; an answer is kept as its index here.
  virtual std::array<std::string_view, 2> answers() const = 0;
  /// What an answer that scores means, e.g. "right" or "for the first cable".
  virtual std::string_view score_word() const = 0;
  /// Whether an answer can be right: then the test is one-sided against guessing, else two-sided.
  virtual bool has_right_answer() const = 0;
  /// What a listener is told is playing, presentation by presentation. Depends on the trial's number alone.
  virtual std::vector<std::string_view> labels(int trial_number) const = 0;

  /// The order of one sitting: a pure function of rule, shape and seed.
  /// @throws std::domain_error when the shape has no comparison, no trial, a specimen out of range, or more
  ///         specimens than three-digit tags.
  Order draw(const Shape& shape, const Seed& seed) const;

 private:
  /// Draws one comparison's trials; `order` already holds those before.
  virtual void draw_block(Draw& draw, const Shape& shape, int comparison, Order& order) const = 0;
};

}  // namespace protocols
