#include "report/json_report.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "report/sample.h"

using nlohmann::json;

namespace {

json sample_report() {
  const findings::Evidence evidence = sample::evidence();
  return report::json_report(evidence, sample::findings_for(evidence));
}

void collect(const json& value, const std::string& path, std::set<std::string>& paths) {
  if (value.is_object())
    for (const auto& [key, child] : value.items()) {
      const std::string child_path = path.empty() ? key : path + "." + key;
      paths.insert(child_path);
      collect(child, child_path, paths);
    }
  if (value.is_array())
    for (const json& child : value) collect(child, path + "[]", paths);
}

std::set<std::string> paths_of(const json& value) {
  std::set<std::string> paths;
  collect(value, "", paths);
  return paths;
}

std::vector<std::vector<std::string>> dictionary_rows() {
  std::vector<std::vector<std::string>> rows;
  std::istringstream lines(report::data_dictionary());
  for (std::string line; std::getline(lines, line);) {
    if (!line.starts_with("| `")) continue;
    std::vector<std::string> cells;
    std::istringstream stream(line.substr(2));
    for (std::string cell; std::getline(stream, cell, '|');) {
      cell.erase(0, cell.find_first_not_of(" `"));
      cell.erase(cell.find_last_not_of(" `") + 1);
      cells.push_back(cell);
    }
    rows.push_back(cells);
  }
  return rows;
}

}  // namespace

TEST(JsonReport, EveryKeyIsInTheDictionaryAndEveryRowOfItInTheReport) {
  std::set<std::string> described;
  for (const auto& row : dictionary_rows())
    EXPECT_TRUE(described.insert(row.at(0)).second) << "twice: " << row.at(0);
  const std::set<std::string> present = paths_of(sample_report());
  for (const std::string& path : present) EXPECT_TRUE(described.contains(path)) << "not described: " << path;
  for (const std::string& path : described)
    EXPECT_TRUE(present.contains(path)) << "not in the report: " << path;
}

TEST(JsonReport, DictionaryRowsAreCompleteAndUnitsStandInNames) {
  for (const auto& row : dictionary_rows()) {
    ASSERT_EQ(row.size(), 5U) << row.at(0);
    EXPECT_FALSE(row[1].empty() || row[4].empty()) << row[0];
    for (const char* unit : {"dB", "Hz", "ohm", "s"})
      EXPECT_TRUE(row[2] != unit || row[0].ends_with("_seconds") || row[0].ends_with(std::string("_") + unit))
          << row[0] << " is in " << unit;
  }
}

TEST(JsonReport, TypesAreThoseOfTheDictionary) {
  const json report = sample_report();
  const std::map<std::string, bool (*)(const json&)> is = {
      {"object", [](const json& v) { return v.is_object(); }},
      {"string", [](const json& v) { return v.is_string(); }},
      {"number", [](const json& v) { return v.is_number(); }},
      {"integer", [](const json& v) { return v.is_number_integer(); }},
      {"boolean", [](const json& v) { return v.is_boolean(); }},
  };
  for (const auto& row : dictionary_rows()) {
    if (row[0].find("[]") != std::string::npos) continue;
    json::json_pointer pointer;
    std::istringstream keys(row[0]);
    for (std::string key; std::getline(keys, key, '.');) pointer /= key;
    const json& value = report.at(pointer);
    const std::string type = row[1].substr(0, row[1].find(' '));
    EXPECT_TRUE(type == "list" ? value.is_array() : is.at(type)(value)) << row[0] << " is " << value;
  }
}

TEST(JsonReport, KeepsTheSameKeysWhenLittleIsKnown) {
  const std::set<std::string> full = paths_of(sample_report());
  findings::Evidence evidence = sample::evidence();
  findings::Findings findings;
  findings.comparisons.resize(1);
  const json report = report::json_report(evidence, findings);
  const std::set<std::string> poor = paths_of(report);
  for (const std::string& path : poor) EXPECT_TRUE(full.contains(path)) << path;
  const json rich = sample_report()["comparisons"][0];
  for (const auto& [key, value] : rich.items()) EXPECT_TRUE(report["comparisons"][0].contains(key)) << key;
  EXPECT_TRUE(report["comparisons"][0]["agreement"].is_null());
  EXPECT_TRUE(report["pace"]["p"].is_null());
}

TEST(JsonReport, WritesNumbersInFullPrecision) {
  const findings::Evidence evidence = sample::evidence();
  findings::Findings findings = sample::findings_for(evidence);
  findings.comparisons[0].primary.p = 2517.0 / 65536;
  findings.comparisons[0].limits.share = 1.0 / 3;
  const json back = json::parse(report::json_report(evidence, findings).dump());
  EXPECT_EQ(back["comparisons"][0]["primary"]["p"].get<double>(), 2517.0 / 65536);
  EXPECT_EQ(back["comparisons"][0]["limits"]["share"].get<double>(), 1.0 / 3);
  EXPECT_EQ(back["schema"], 1);
}

TEST(JsonReport, NamesListenersAndAnswersInTrials) {
  const json trial = sample_report()["comparisons"][0]["trials"][0];
  EXPECT_EQ(trial["answers"],
            json::parse(R"([{"listener":"Anna","answer":"B"},{"listener":"Ben","answer":"B"}])"));
  EXPECT_EQ(trial["first_answers"][0]["answer"], "A");
  EXPECT_EQ(trial["corrections"], json::parse(R"([{"listener":"Anna","words":"misheard the number"}])"));
  EXPECT_EQ(trial["missing"], json::parse(R"(["Cleo"])"));
  EXPECT_EQ(trial["started_s"], json::parse("[0.0, 45.5, null]"));
  EXPECT_EQ(trial["fate"], "counted");
}
