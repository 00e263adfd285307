#pragma once

namespace stats {

/// Mean and variance so far of observations in [0, 1], as the betting methods use them: shrunk towards 1/2
/// and 1/4 by one imagined observation. After x_1 ... x_t the mean is (1/2 + sum x)/(t + 1) and the variance
/// (1/4 + sum (x_i - mean_i)^2)/(t + 1), with the mean as it was after x_i.
class RunningMoments {
 public:
  void add(double x) {
    ++count_;
    sum_ += x;
    const double deviation = x - mean();
    squares_ += deviation * deviation;
  }
  double mean() const { return sum_ / count_; }
  double variance() const { return squares_ / count_; }

 private:
  double count_ = 1;
  double sum_ = 0.5;
  double squares_ = 0.25;
};

}  // namespace stats
