#pragma once

#include <string>

#include "desk/shelf/shelf.h"

namespace desk {

/// What an import kept, in words.
std::string import_text(const Imported& imported);

/// Everything the campaign holds, in columns.
std::string inventory_text(const Path& campaign);

/// Every reading in columns: its number, what it is of, its file, and whether it counts.
std::string readings_text(const Path& campaign);

}  // namespace desk
