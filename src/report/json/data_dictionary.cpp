#include "report/json/dictionary.h"
#include "report/json_report.h"
#include "text/utf8.h"

namespace report {
namespace {

std::string table_cell(const std::string& words) { return words.empty() ? "-" : words; }

}  // namespace

Dictionary dictionary() {
  Dictionary all = evidence_dictionary();
  for (const auto& part : {plan_dictionary(), comparison_dictionary(), exploration_dictionary(),
                           scale_dictionary(), finding_dictionary()})
    all.insert(all.end(), part.begin(), part.end());
  return all;
}

std::string data_dictionary() {
  std::string all =
      "# Data dictionary of the JSON report\n\n"
      "Schema " +
      std::to_string(json_schema) +
      ". A path joins keys by \".\"; \"[]\" stands for every element of a list. Every key is always there; "
      "what is not\n"
      "known is null, and so is a number that is not finite. Times are UTC, RFC 3339. Numbers are written so "
      "that they\n"
      "read back as the same binary64. Differences are the comparison's second less its first.\n\n"
      "| path | type | unit | domain | meaning |\n| --- | --- | --- | --- | --- |\n";
  for (const DictionaryRow& row : dictionary())
    all += "| `" + row.path + "` | " + row.type + " | " + table_cell(row.unit) + " | " +
           table_cell(row.domain) + " | " + row.meaning + " |\n";
  return all;
}

}  // namespace report
