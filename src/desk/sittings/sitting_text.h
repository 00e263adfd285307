#pragma once

#include <string>

#include "desk/sittings/sittings.h"

namespace desk {

/// Where a sitting stands, in words.
std::string status_text(const SittingStatus& status);

std::string second_entry_text(const SecondEntry& entry);

}  // namespace desk
