#pragma once

namespace hearing {

/// Equivalent rectangular bandwidth of the auditory filter centred here: 24.7 (4.37 f/1000 + 1) Hz.
/// @param frequency_hz  above 0.
/// @throws std::domain_error  naming the argument, its value and its range.
/// Example: 132.6 Hz at 1 kHz.  Source: Glasberg & Moore, Hearing Research 47, 1990 (read as printed in a later paper).
double erb_hz(double frequency_hz);

/// Number of such bandwidths below a frequency, in Cams: 21.4 log10(4.37 f/1000 + 1). Another standard writes 21.366.
/// @param frequency_hz  0 or more.
double erb_rate_cam(double frequency_hz);

/// The frequency at so many Cams: the inverse. @param cam  0 or more.
double frequency_at_cam_hz(double cam);

/// The auditory filter's weight, as power, at a frequency: (1 + p g) exp(-p g), g = |f - centre|/centre,
/// p = 4 centre/ERB: symmetric, as at moderate levels.
/// Source: the rounded-exponential filter of Patterson and of Glasberg & Moore (from memory).
double auditory_weight(double centre_hz, double frequency_hz);

}  // namespace hearing
