#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/plan.h"
#include "sitting/helper_door.h"

namespace report {

/// The paper of one sitting as plain text for A4: no line longer than `sheet_width` characters, each ended by a newline.
/// Sittings are numbered from 1; all functions throw std::domain_error for a sitting or listener that the plan has not.
inline constexpr int sheet_width = 80;

/// For whoever sleeves the cables, nobody else: each tag large, with its specimen, and lines for name and time.
/// @param tags  as `sitting::HelperDoor::tagging_list`.
std::string tagging_list(const plan::Plan& plan, int sitting, const std::vector<sitting::TagLine>& tags);

/// For the helper: cautions, the fixed sequence of actions, the pace, and every presentation of every trial with its
/// tag, attenuation and excerpt, spares included. No cable's name, no listener's answer.
/// @param trials  as `sitting::HelperDoor::sheet`.
std::string helper_sheet(const plan::Plan& plan, int sitting, const std::vector<sitting::SheetTrial>& trials);

/// For one listener: trial numbers, labels in the order heard, boxes for answers. It takes no order, so that it cannot
/// depend on one; it names no cable and no tag.
/// @param listener  a name of the plan that attends this sitting.
std::string listener_sheet(const plan::Plan& plan, int sitting, const std::string& listener);

/// Limits of level and duration for ears, in words.
std::string_view ears_caution();

/// What can harm an amplifier or a person when plugs are moved, one caution an entry.
const std::vector<std::string>& swap_cautions();

}  // namespace report
