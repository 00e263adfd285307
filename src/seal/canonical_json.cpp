#include "seal/canonical_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace seal {
namespace {

using nlohmann::json;

constexpr int deepest = 32;
constexpr std::int64_t largest_integer = std::int64_t{1} << 53;

[[noreturn]] void refuse(const std::string& place, const std::string& found) {
  throw std::domain_error(
      "sealed text: " + (place.empty() ? std::string("the value") : place) + " is " + found +
      "; it may hold objects with ASCII keys, arrays, booleans, UTF-8 strings and integers "
      "within 2^53, at most 32 deep");
}

bool ascii(const std::string& key) {
  return std::all_of(key.begin(), key.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

void check_integer(const json& value, const std::string& place) {
  const auto integer = value.get<std::int64_t>();
  const bool fits = value.is_number_unsigned()
                        ? value.get<std::uint64_t>() <= static_cast<std::uint64_t>(largest_integer)
                        : -largest_integer <= integer && integer <= largest_integer;
  if (!fits) refuse(place, "an integer beyond 2^53");
}

void check(const json& value, const std::string& place, int depth) {
  if (depth > deepest) refuse(place, "nested too deep");
  if (value.is_object()) {
    for (const auto& [key, member] : value.items()) {
      if (!ascii(key)) refuse(place, "an object with a key outside ASCII");
      check(member, place + "/" + key, depth + 1);
    }
  } else if (value.is_array()) {
    for (std::size_t i = 0; i < value.size(); ++i)
      check(value[i], place + "/" + std::to_string(i), depth + 1);
  } else if (value.is_number_integer()) {
    check_integer(value, place);
  } else if (!value.is_string() && !value.is_boolean()) {
    refuse(place, value.is_null() ? "null" : value.is_number() ? "a fraction" : "of an unknown type");
  }
}

}  // namespace

std::string canonical_text(const json& value) {
  check(value, "", 0);
  try {
    return value.dump(-1, ' ', false, json::error_handler_t::strict);
  } catch (const json::type_error&) {
    refuse("", "not valid UTF-8");
  }
}

json parse_canonical(std::string_view text) {
  int depth = 0;
  const auto limit_depth = [&depth](int d, json::parse_event_t, json&) {
    depth = std::max(depth, d);
    if (depth > deepest + 1) refuse("", "nested too deep");
    return true;
  };
  json value;
  try {
    value = json::parse(text, limit_depth);
  } catch (const json::exception& error) {
    throw std::domain_error(std::string("sealed text cannot be read: ") + error.what());
  }
  if (canonical_text(value) != text)
    throw std::domain_error("sealed text is not in its canonical form (sorted, compact, no double keys)");
  return value;
}

}  // namespace seal
