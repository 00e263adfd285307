#pragma once

#include <string>

#include "sitting/helper_door.h"
#include "web/actions.h"

namespace web {

/// What the helper's page shows, as JSON.
std::string helper_view(const sitting::HelperDoor& door);

/// The list for whoever sleeves the cables, as JSON: the one place where a cable has a name.
std::string tagging_list(const sitting::HelperDoor& door);

/// What the helper's page can do. `door` must outlive them.
Actions helper_actions(sitting::HelperDoor& door);

}  // namespace web
