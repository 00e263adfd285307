#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace report {

/// "difference supported", "preference supported", "not shown" or "cannot be judged".
std::string verdict_words(const plan::Plan& plan, findings::Verdict verdict);

/// The verdict with a sign before it that differs in shape: a filled disc, a ring, a dash.
std::string marked_verdict(const plan::Plan& plan, findings::Verdict verdict);

/// "12 of 16".
std::string score_of(const findings::Tally& tally);

/// "12 of 16, p 0.0384".
std::string score_and_p(const findings::Tested& tested);

/// "75.0 %".
std::string percent(double share);

/// The limits beside a share, rounded outwards so that they claim no more than they should.
std::string lower_percent(const findings::Limits& limits);
std::string upper_percent(const findings::Limits& limits);

/// A number with `decimals` digits and a true minus sign.
std::string number_words(double value, int decimals);

/// "0.0213", or "0.0213 (simulated, standard error 0.00045)".
std::string p_words(double p, const std::optional<double>& standard_error);

/// "+0.42 dB", with a true minus sign for negative ones.
std::string signed_db(double value_db);

/// "20 Hz", "12 kHz": two digits, for the ends of a band.
std::string hertz(double frequency_hz);

/// "48.0 mohm", or "not known".
std::string ohm_or_unknown(const std::optional<double>& resistance_ohm);

/// "95 %" for a level of 0.05.
std::string confidence_of(double level);

/// The limit that belongs to the verdict: "at least 51.5 %" when supported, else "at most 91.0 %"; where no
/// answer can be right, the interval: "47.6 to 92.8 %".
std::string limit_words(const plan::Plan& plan, const findings::ComparisonFinding& finding);

/// "one", "one and two", "one, two and three".
std::string listed(const std::vector<std::string>& items);

/// "1 trial", "16 trials".
std::string counted(int count, std::string_view singular);

/// First letter (ASCII) in upper case.
std::string capitalised(std::string_view words);

std::string yes_or_no(bool value);

/// The name of a listener, by the plan's index. @throws std::domain_error when the plan has not that many.
const std::string& listener_of(const plan::Plan& plan, int listener);

/// On one line and fit to be seen: line ends and tabs become spaces, other control characters "?".
std::string one_line(std::string_view text);

}  // namespace report
