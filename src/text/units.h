#pragma once

#include <span>
#include <string_view>

#include "text/quantity.h"

namespace text {

/// One unit as it is written, without prefix, and the prefixes that may stand before it.
struct UnitName {
  std::string_view name;
  std::string_view prefixes;
  Scale scale;
};

/// One kind of quantity.
struct UnitKind {
  Unit unit;
  std::string_view kind;     ///< with its article: "a resistance"
  std::string_view usual;    ///< the symbol named first in messages
  std::string_view symbols;  ///< those offered in messages, separated by spaces, ascending
};

/// All units that can be written; names of one kind stand together, the first is the plain one.
std::span<const UnitName> unit_names();

/// The row of `unit`.
const UnitKind& unit_kind(Unit unit);

/// Power of ten of an SI prefix letter; 0 for none of them.
int power_of_prefix(char prefix);

}  // namespace text
