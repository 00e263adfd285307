#pragma once

#include <string>

#include "desk/shelf/prediction.h"
#include "desk/shelf/shelf.h"

namespace desk {

/// What an import kept, in words.
std::string import_text(const Imported& imported);

/// Everything the campaign holds, in columns.
std::string inventory_text(const Path& campaign);

std::string prediction_text(const Prediction& prediction);

/// {"schema": 1, ...}; levels are second less first, in dB.
std::string prediction_json(const Prediction& prediction);

}  // namespace desk
