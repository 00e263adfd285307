#pragma once

#include <string>

#include "desk/shelf/prediction.h"

namespace desk {

std::string prediction_text(const Prediction& prediction);

/// Levels are second less first, in dB. The keys:
///
///     schema                           1
///     rig                              its name
///     first, second                    name; loop_resistance_ohm; inductance_henry and capacitance_farad of the whole
///                                      length, as counted (of direct current where there is a skin effect);
///                                      damping_factor or null; cautions
///       resistance_from                "reading" or "construction"; inductance_from, capacitance_from also "unknown"
///       basis                          the same in words, with what of the skin effect is counted
///       round_conductors               whose skin effect is counted: 2 of a pair, 1 of a coaxial cable, 0 none
///       line_level                     null on a loudspeaker rig
///         corner_Hz                    exact, or null; one_pole_Hz: the estimate, or null
///         corner_least_Hz              and corner_greatest_Hz: over what is left open, or null
///         reference_Hz, top_Hz         20 Hz and 20 kHz, or what of it the load is known for
///         top_level_dB                 level at the second less that at the first
///         share_at_top_dB              what source_resistance, cable_resistance, cable_inductance and
///                                      cable_capacitance take there
///     level_difference_dB              by weighting
///     trim_weighting                   of all that follows
///     residual                         after the exact trim: minimum_dB, maximum_dB, rms_dB, frequency_of_largest_Hz
///     smoothed                         the same in auditory bands: largest_dB, frequency_of_largest_Hz, rms_dB
///     stepped_trim                     null without a volume step
///       step_dB, first_steps, second_steps
///       level_left_dB                  under the trim's weighting
///       residual, smoothed             as above, with these steps
///     left_open                        null where all is known
///       unknown                        what is not known, in words
///       *_least, *_greatest            of inductance_H_per_m and capacitance_F_per_m as assumed; of
///                                      level_difference_dB, largest_residual_dB (its size) and rms_residual_dB
///     published_thresholds             concerns ("level" or "response"), size_dB, what, source
///     least_impedance_ohm              of the load, with frequency_of_least_impedance_Hz
///     curve                            frequency_Hz, difference_dB: before any trim
std::string prediction_json(const Prediction& prediction);

}  // namespace desk
