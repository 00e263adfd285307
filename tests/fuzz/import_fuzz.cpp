#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "import/answers.h"
#include "import/import.h"
#include "import/levels.h"
#include "import/manifest.h"
#include "import/times.h"
#include "text/error.h"
#include "text/quantity.h"
#include "text/utf8.h"

// Any bytes are either read into sound values or refused by BadInput with a printable text; nothing else may happen.
// Build: clang++ -std=c++20 -g -O1 -fsanitize=fuzzer,address,undefined -I. -Isrc tests/fuzz/import_fuzz.cpp
//        src/text/*.cpp src/electrical/*.cpp src/import/*.cpp -o import_fuzz

namespace {

void require(bool condition) {
  if (!condition) std::abort();
}

template <class Act>
void read_or_refuse(const Act& act) {
  try {
    act();
  } catch (const text::BadInput& error) {
    const std::string report = error.what();
    require(!report.empty() && text::is_valid_utf8(report));
  }
}

void require_sound(const imported::Parsed& parsed) {
  require(!parsed.readings.empty());
  for (const imported::Reading& reading : parsed.readings) {
    require(reading.columns.size() == reading.values.size() && reading.repeat >= 1);
    for (const auto& values : reading.values) {
      require(!values.empty() && values.size() == reading.values.front().size());
      for (const double value : values) require(std::isfinite(value));
    }
  }
  for (const std::string& warning : parsed.warnings) require(text::is_valid_utf8(warning));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string content(reinterpret_cast<const char*>(data), size);
  const imported::Assignment assignment = {"cable", "rig", "", "", 1};
  read_or_refuse([&] { require_sound(imported::parse({"f.csv", content}, assignment)); });
  read_or_refuse([&] { require_sound(imported::parse({"f.csv", content}, {})); });
  read_or_refuse([&] { require_sound(imported::parse({"f.s1p", content}, assignment)); });
  read_or_refuse([&] { imported::parse_manifest(content, "f.csv"); });
  read_or_refuse([&] {
    imported::parse_answers(content, "f.csv", {{"anna", "ben"}, {"A", "B"}, {"guess", "sure"}});
  });
  read_or_refuse([&] { imported::parse_answers(content, "f.csv", {}); });
  read_or_refuse([&] { imported::parse_times(content, "f.csv"); });
  read_or_refuse([&] { imported::parse_spoilings(content, "f.csv", {}, {"wrong tag", "other"}); });
  read_or_refuse([&] { imported::parse_levels(content, "f.csv"); });
  read_or_refuse([&] { require(std::isfinite(text::quantity(content, text::Unit::ohm))); });
  return 0;
}
