#pragma once

#include <string>

#include "findings/bench/bench.h"
#include "report/content/document.h"

namespace report {

/// Cables by kinds of reading, what is stale and what has no load: for text and HTML.
Document coverage_document(const findings::BenchFindings& bench);

/// What can hardly be, how far repeats lie apart with each difference from the baseline beside them, and features tested.
Document examination_document(const findings::BenchFindings& bench);

/// {"schema": 1, "cables": [names], "columns": [{kind, rig}], "cells": [per cable [per column {readings, superseded,
/// stale: [numbers]}]], "stale": [{reading, cable, why}], "rigs_without_load": [names]}.
std::string coverage_json(const findings::BenchFindings& bench);

/// {"schema": 1, "baseline", "doubts": [{readings, cable, what, explanation}],
/// "comparisons": [{kind, rig, "repeatability": [{quantity, relative, standard_deviation, degrees_of_freedom}],
/// "rows": [{cable, piece, condition, feature, state, readings, "differences": [{quantity, difference, repeatability_limit}]}]}],
/// "features": [{cable, feature, kind, rig, first_state, second_state, first_readings, second_readings, relative,
/// "differences": [{quantity, difference, adjusted_p}], p, smallest_p}]}. Relative values are natural logarithms, others dB
/// or degrees; what is not known is left out.
std::string examination_json(const findings::BenchFindings& bench);

}  // namespace report
