#pragma once

#include <functional>
#include <map>
#include <string>

#include "web/fields.h"

namespace web {

/// What one role may do, by the last part of the address: /helper/ready is "ready". The first argument is who does it.
using Actions = std::map<std::string, std::function<void(const std::string& person, const Fields& fields)>>;

}  // namespace web
