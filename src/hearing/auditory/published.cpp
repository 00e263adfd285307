#include "hearing/auditory/published.h"

#include <cmath>

#include "electrical/argument.h"

namespace hearing {
namespace {

constexpr PublishedThreshold kThresholds[] = {
    {Concerns::level, 0.3, "level of a 1 kHz tone at 80 dB SPL (1.5 dB at 20 dB SPL)",
     "a university course text (read)"},
    {Concerns::level, 0.41, "level of wideband noise at 30 dB SPL and above",
     "Miller 1947 (read in a secondary copy)"},
    {Concerns::level, 0.50, "level of a tone 80 dB above threshold (0.93 dB at 40 dB)",
     "Jesteadt, Wier & Green 1977, their fit (read in a secondary copy)"},
    {Concerns::response, 1.5, "height of a resonance of Q = 1, popular music",
     "Toole & Olive, JAES 36(3), 1988 (read in notes that quote it)"},
    {Concerns::response, 3, "height of a resonance of Q = 10, popular music",
     "Toole & Olive, JAES 36(3), 1988 (read in notes that quote it)"},
    {Concerns::response, 5, "height of a resonance of Q = 50, popular music",
     "Toole & Olive, JAES 36(3), 1988 (read in notes that quote it)"},
};

}  // namespace

std::span<const PublishedThreshold> published_thresholds() { return kThresholds; }

double just_noticeable_tone_level_db(double sensation_level_db) {
  electrical::require_within("sensation_level_db", sensation_level_db, 0, 100);
  return 10 * std::log10(1 + 0.463 * std::pow(10, -0.072 * sensation_level_db / 10));
}

}  // namespace hearing
