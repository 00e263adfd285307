#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "import/import.h"
#include "text/problem.h"

namespace imported {

/// One file to be imported and what it is a reading of.
struct ManifestEntry {
  std::string file;  ///< as written; relative to the manifest's own folder
  Assignment assignment;
  text::Place place;  ///< of the file's name
};

struct Manifest {
  std::vector<ManifestEntry> entries;
  text::Problems problems;  ///< of its rows; what could be read stands in the entries nevertheless
};

/// Reads a manifest: columns `file`, and where wanted `cable`, `rig`, `piece`, `condition`, `instrument`, `feature` with
/// `state`, `bandwidth` of each level of a noise spectrum ("1.46Hz"), `repeat`.
///
/// Its problems: an empty name of a file, a file named twice, a repeat that is no whole number from 1, a feature without a
/// state, a bandwidth that is none.
/// @throws BadInput  for what is no such table: text::parse_table, an unknown column.
Manifest parse_manifest(std::string_view content, const std::string& name);

}  // namespace imported
