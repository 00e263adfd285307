#include "hearing/deviation.h"

#include "hearing/level_difference.h"
#include "hearing/residual.h"

namespace hearing {

Deviation deviation(const LevelCurve& response, const LevelCurve& baseline, const Weighting& weighting) {
  const auto level = level_difference(weighting, response, baseline);
  const Residual untrimmed = residual(response, baseline, 0);
  return {.largest_db = untrimmed.largest_db,
          .frequency_of_largest_hz = untrimmed.frequency_of_largest_hz,
          .rms_db = untrimmed.rms_db,
          .weighted_level_db = level.difference_db,
          .band = level.band};
}

}  // namespace hearing
