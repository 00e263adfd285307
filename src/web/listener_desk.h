#pragma once

#include <string>

#include "sitting/listener_door.h"
#include "web/actions.h"

namespace web {

/// What a listener's page shows, as JSON.
std::string listener_view(const sitting::ListenerDoor& door, const std::string& listener);

/// What a listener's page can do. `door` must outlive them.
Actions listener_actions(sitting::ListenerDoor& door);

}  // namespace web
