#pragma once

namespace stats {

/// Whether a probability `p` is small enough for a test at `level`: p <= level.
///
/// A p that equals the level to 12 digits counts as equal to it: tails are computed to better than that, and
/// the rule of every exact table is "level or less". So 12 of 16 reaches a level of exactly 2517/65536.
inline bool reaches(double p, double level) { return p <= level * (1 + 1e-12); }

}  // namespace stats
