#pragma once

#include <string>
#include <vector>

namespace store {

/// One table, index or trigger of the schema.
struct Definition {
  std::string name;
  std::string sql;
};

/// The schema that this program writes: the tables, and for each of them three triggers by which the file
/// itself refuses to change a row, to remove a row, and to add a row in place of another.
const std::vector<Definition>& definitions();

}  // namespace store
