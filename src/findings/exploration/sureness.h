#pragma once

#include <vector>

#include "findings/evidence.h"
#include "findings/exploration/exploration.h"

namespace findings {

/// Adds what the listener's levels of sureness show. Answers without a level are left out.
///
/// `roc` tells A from B with all that the answers hold, and is above 1/2 for right answers all equally sure;
/// `surer_when_right` asks of sureness alone: whether right answers are surer than wrong ones.
/// Source: F. R. Clarke, T. G. Birdsall and W. P. Tanner, J. Acoust. Soc. Am. 31 (1959) 629, memory: the ROC of the
/// first and of the second type.
void add_sureness(ListenerExploration& found, const std::vector<const TrialEvidence*>& trials);

}  // namespace findings
