#pragma once

#include "findings/evidence.h"
#include "findings/finding.h"

namespace findings {

/// Fills in the measured responses of a comparison: second less first, the mean of each cable's repeats in
/// dB, and how far the repeats of one cable differ. Nothing for a specimen with a resistor in series, whose
/// cable was measured without it.
void describe_measured_response(const Evidence& evidence, ComparisonFinding& finding);

}  // namespace findings
