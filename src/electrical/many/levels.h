#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "electrical/cable.h"
#include "electrical/load.h"
#include "electrical/response.h"

namespace electrical {

/// What a cable is put between: an amplifier and a loudspeaker, or an output and an input.
struct Rig {
  Source source;
  Load load;
};

/// Levels in dB of every cable on every rig at every frequency.
struct Levels {
  std::size_t cables;
  std::size_t frequencies;
  std::vector<double> all_db;  ///< rig by rig, in it cable by cable, in it frequency by frequency

  /// One cable on one rig; both count from 0.
  std::span<const double> at(std::size_t rig, std::size_t cable) const {
    return std::span(all_db).subspan((rig * cables + cable) * frequencies, frequencies);
  }
};

/// The level of every cable on every rig at every frequency, each as
/// `level_db(response(source, cable, load, frequency_hz))`, in a twentieth of the time where there are many.
///
/// What depends on the cable or on the rig alone is computed once. Lines longer than 1 radian take the way through
/// `two_port`, and levels beyond 2900 dB, minus infinity among them, that through `response`.
/// @param frequency_hz  each 0 or more, in any order. Any of the three may be empty.
/// @param threads       1 to 256; the result is the same for every number of threads.
/// @throws std::domain_error  as `response`; naming the number of threads.
/// Accuracy: that of `response` and `level_db` to within 1e-9 dB, also in a resonance; 2e-13 dB for loudspeakers and
/// line inputs (tests/electrical).
Levels levels_db(std::span<const Rig> rigs, std::span<const Cable> cables,
                 std::span<const double> frequency_hz, int threads = 1);

}  // namespace electrical
