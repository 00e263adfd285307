#pragma once

#include <string>
#include <vector>

namespace report {

/// One key of the JSON report.
struct DictionaryRow {
  std::string path;
  std::string
      type;  ///< of JSON: object, list, string, number, integer, boolean; "or null" where it may be unknown
  std::string unit;    ///< "" where there is none
  std::string domain;  ///< "" where the type says all
  std::string meaning;
};

using Dictionary = std::vector<DictionaryRow>;

/// Every key path, sorted as written in the sources: head, plan, sittings, comparisons, the rest.
Dictionary dictionary();

/// The parts, each in its own file.
Dictionary evidence_dictionary();
Dictionary plan_dictionary();
Dictionary comparison_dictionary();
Dictionary exploration_dictionary();
Dictionary scale_dictionary();
Dictionary finding_dictionary();

}  // namespace report
