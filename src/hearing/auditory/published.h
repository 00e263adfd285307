#pragma once

#include <span>
#include <string_view>

namespace hearing {

enum class Concerns { level, response };

/// What an experiment found to be just noticed, and how far that can be trusted here.
struct PublishedThreshold {
  Concerns concerns;
  double size_db;
  std::string_view what;    ///< "level of a 1 kHz tone at 80 dB SPL"
  std::string_view source;  ///< with how it is known: read, quoted by others, from memory
};

/// Thresholds of level and of resonances. They disagree, since methods and criteria differ; none was measured with music
/// through cables; none says that a smaller difference cannot be heard or that a larger one is. No published figure
/// supports 0.1 or 0.2 dB as a threshold: that is a margin of safety.
std::span<const PublishedThreshold> published_thresholds();

/// Just noticeable level difference of a tone at a sensation level: 10 log10(1 + 0.463 (I/I0)^-0.072).
/// @param sensation_level_db  0 to 100, above the listener's own threshold.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 0.93 dB at 40 dB, 0.50 dB at 80 dB.
/// Source: Jesteadt, Wier & Green, J. Acoust. Soc. Am. 61, 1977 (its fit, read in a secondary copy; volume from memory).
double just_noticeable_tone_level_db(double sensation_level_db);

/// Why nothing is said of the share right that a level difference alone would earn.
constexpr std::string_view kNoSlope =
    "no published psychometric slope for level differences of music at this size is known to us, so no "
    "share right is predicted from the level";

}  // namespace hearing
