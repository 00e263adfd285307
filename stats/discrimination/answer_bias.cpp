#include "stats/discrimination/answer_bias.h"

#include "stats/arguments.h"
#include "stats/share/binomial.h"

namespace stats {

AnswerBias answer_bias(int answers_a, int answers, double confidence) {
  require_count("answers", answers, 1, kMostTrials);
  require_count("answers_a", answers_a, 0, answers);
  return {double(answers_a) / answers, two_sided(answers_a, answers, 0.5),
          clopper_pearson(answers_a, answers, confidence)};
}

}  // namespace stats
