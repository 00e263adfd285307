#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

namespace web {

/// The fields of a request's body: an object of short texts, whole numbers and flags.
class Fields {
 public:
  /// @throws text::BadInput unless `body` is one JSON object, not nested, of at most 20 fields.
  explicit Fields(std::string_view body);

  /// @throws text::BadInput when the field is missing or of another type.
  std::string text(const char* name) const;
  int whole(const char* name) const;
  double number(const char* name) const;
  bool flag(const char* name) const;
  /// "" when it is missing.
  std::string text_or_none(const char* name) const;

 private:
  const nlohmann::json& field(const char* name) const;

  nlohmann::json object_;
};

}  // namespace web
