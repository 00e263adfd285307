#pragma once

#include <string>

#include "desk/sittings/sittings.h"

namespace desk {

/// The names of the facts of a sitting, for the help of a command.
std::string fact_names();

/// Where a sitting stands, in words.
std::string status_text(const SittingStatus& status);

/// What a sitting lacks that nobody can add once it has ended: second entries not settled, declarations, cues.
std::vector<std::string> unsaid_of(const SittingStatus& status);

/// The same with what was not measured.
std::vector<std::string> gaps_of(const SittingStatus& status);

/// One gap a line; "" for nothing.
std::string gaps_text(const std::vector<std::string>& gaps);

std::string second_entry_text(const SecondEntry& entry);

}  // namespace desk
