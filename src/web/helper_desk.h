#pragma once

#include <string>

#include "sitting/helper_door.h"
#include "web/actions.h"

namespace web {

/// What the helper's page shows, as JSON.
/// @param trouble  why the pace could not be kept, "" for nothing.
std::string helper_view(const sitting::HelperDoor& door, const std::string& trouble);

/// Who is in the sitting and what it still wants of them; which trials were withdrawn, why and by whom.
nlohmann::json people_json(const sitting::HelperView& view);
nlohmann::json spoiled_json(const sitting::HelperView& view);

/// The list for whoever sleeves the cables, as JSON: the one place where a cable has a name.
/// @throws text::NotNow from the first presentation on.
std::string tagging_list(const sitting::HelperDoor& door);

/// What the helper's page can do. `door` must outlive them.
Actions helper_actions(sitting::HelperDoor& door);

}  // namespace web
