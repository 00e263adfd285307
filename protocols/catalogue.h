#pragma once

#include <span>
#include <string_view>

#include "protocols/protocol.h"

namespace protocols {

/// Every protocol there is, in the order in which they are shown.
std::span<const Protocol* const> catalogue();

/// The protocol of that name, or nothing.
const Protocol* find(std::string_view name);

/// The protocol whose order is drawn by that rule, or nothing. Rules of old plans stay here for ever.
const Protocol* find_rule(std::string_view order_rule);

}  // namespace protocols
