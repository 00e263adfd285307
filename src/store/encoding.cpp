#include "store/encoding.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <limits>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "text/error.h"

namespace store {
namespace {

static_assert(std::numeric_limits<double>::is_iec559 && sizeof(double) == 8);

template <class Value>
std::string text_of(const Value& value) {
  try {
    return nlohmann::json(value).dump();
  } catch (const nlohmann::json::type_error&) {
    throw text::BadInput("a text to be kept in the campaign is not UTF-8");
  }
}

template <class Value>
Value value_of(const std::string& text) {
  try {
    return nlohmann::json::parse(text).get<Value>();
  } catch (const nlohmann::json::exception&) {
    throw text::BadInput(
        "the campaign is damaged: a list in it cannot be read\ngo back to a copy that was made before");
  }
}

}  // namespace

std::string text_of_pairs(const Pairs& pairs) { return text_of(pairs); }

Pairs pairs_of_text(const std::string& text) { return value_of<Pairs>(text); }

std::string text_of_names(const std::vector<std::string>& names) { return text_of(names); }

std::vector<std::string> names_of_text(const std::string& text) {
  return value_of<std::vector<std::string>>(text);
}

std::string bytes_of_columns(const Columns& columns) {
  std::string bytes;
  for (const auto& column : columns) {
    if (column.size() != columns.front().size())
      throw std::invalid_argument("the columns of a reading must be equally long");
    for (const double number : column) {
      const auto bits = std::bit_cast<std::uint64_t>(number);
      for (int shift = 0; shift < 64; shift += 8) bytes.push_back(static_cast<char>(bits >> shift & 0xff));
    }
  }
  return bytes;
}

Columns columns_of_bytes(std::string_view bytes, std::size_t count) {
  if (bytes.size() % (8 * std::max<std::size_t>(count, 1)) != 0 || (count == 0 && !bytes.empty()))
    throw text::BadInput(
        "the campaign is damaged: the numbers of a reading are incomplete\n"
        "go back to a copy that was made before");
  Columns columns(count);
  std::size_t at = 0;
  for (auto& column : columns) {
    column.resize(bytes.size() / 8 / count);
    for (double& number : column) {
      std::uint64_t bits = 0;
      for (int shift = 0; shift < 64; shift += 8)
        bits |= std::uint64_t{static_cast<unsigned char>(bytes[at++])} << shift;
      number = std::bit_cast<double>(bits);
    }
  }
  return columns;
}

}  // namespace store
