#pragma once

#include "plan/plan.h"

namespace sitting {

/// The trials of one sitting as everybody may know them: how many there are, which are spares, which belong together.
/// It depends on the plan and the sitting's number alone, never on the order.
class Layout {
 public:
  Layout(const plan::Plan& plan, int sitting);

  /// Trials, spares included; they are numbered from 1.
  int trials() const { return blocks_ * block_length(); }
  /// Trials planned, spares not included.
  int planned() const { return blocks_ * trials_each_; }
  /// Trials planned of each comparison.
  int trials_each() const { return trials_each_; }
  int block_length() const { return trials_each_ + spares_each_; }
  bool is_trial(int trial) const { return trial >= 1 && trial <= trials(); }
  /// Index of the block that a trial stands in.
  int block_of(int trial) const { return (trial - 1) / block_length(); }
  /// The first trial of a block.
  int first_of(int block) const { return block * block_length() + 1; }
  /// 0 for a planned trial, k for the k-th spare of its block.
  int spare_of(int trial) const;

 private:
  int blocks_;
  int trials_each_;
  int spares_each_;
};

}  // namespace sitting
