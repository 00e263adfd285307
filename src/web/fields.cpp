#include "web/fields.h"

#include <cmath>

#include "text/error.h"

namespace web {
namespace {

[[noreturn]] void refuse_field(const char* name, const char* wanted) {
  throw text::BadInput(std::string("the field ") + name + " must be " + wanted);
}

}  // namespace

Fields::Fields(std::string_view body) {
  constexpr int deepest = 2;
  bool flat = true;
  const auto look = [&](int depth, nlohmann::json::parse_event_t, nlohmann::json&) {
    flat = flat && depth < deepest;
    return flat;
  };
  object_ = nlohmann::json::parse(body, look, false);
  constexpr std::size_t most = 20;
  if (!flat || object_.is_discarded() || !object_.is_object() || object_.size() > most)
    throw text::BadInput("the request must be one JSON object, not nested");
}

const nlohmann::json& Fields::field(const char* name) const {
  static const nlohmann::json none;
  const auto found = object_.find(name);
  return found == object_.end() ? none : *found;
}

std::string Fields::text(const char* name) const {
  if (!field(name).is_string()) refuse_field(name, "a text");
  return field(name).get<std::string>();
}

std::string Fields::text_or_none(const char* name) const { return object_.contains(name) ? text(name) : ""; }

int Fields::whole(const char* name) const {
  const double value = number(name);
  constexpr double most = 1e6;
  if (std::abs(value) > most || value != std::floor(value)) refuse_field(name, "a whole number");
  return static_cast<int>(value);
}

double Fields::number(const char* name) const {
  if (!field(name).is_number()) refuse_field(name, "a number");
  return field(name).get<double>();
}

bool Fields::flag(const char* name) const {
  if (!field(name).is_boolean()) refuse_field(name, "true or false");
  return field(name).get<bool>();
}

}  // namespace web
