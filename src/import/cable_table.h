#pragma once

#include <vector>

#include "import/header.h"
#include "import/import.h"
#include "import/warnings.h"

namespace imported {

/// One reading for each row of a table of cables. Problems of the rows are added to the table's, then all are
/// thrown.
std::vector<Reading> cable_readings(text::Table& table, const KnownHeader& header,
                                    const Assignment& assignment, Warnings& warnings);

}  // namespace imported
