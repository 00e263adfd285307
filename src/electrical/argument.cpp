#include "electrical/argument.h"

#include <charconv>
#include <cmath>
#include <stdexcept>

namespace electrical {
namespace {

[[noreturn]] void refuse(std::string_view name, const std::string& range, double value) {
  throw std::domain_error(std::string(name) + " must be " + range + ", got " + number_text(value));
}

}  // namespace

std::string number_text(double value) {
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, value).ptr;
  return {text, end};
}

void require_positive(std::string_view name, double value) {
  if (!std::isfinite(value) || value <= 0) refuse(name, "a finite number above 0", value);
}

void require_not_negative(std::string_view name, double value) {
  if (!std::isfinite(value) || value < 0) refuse(name, "a finite number, 0 or more", value);
}

void require_within(std::string_view name, double value, double low, double high) {
  if (!(value >= low && value <= high)) {
    refuse(name, "from " + number_text(low) + " to " + number_text(high), value);
  }
}

}  // namespace electrical
