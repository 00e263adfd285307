#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

namespace seal {

/// The one text of a value that is sealed: compact JSON with sorted keys.
///
/// Sealed values hold only objects with ASCII keys, arrays, booleans, valid UTF-8 strings and integers
/// within +-2^53, at most 32 deep; on that subset this text is the JSON Canonicalization Scheme of RFC 8785.
/// Measured numbers are strings as typed.
///
/// @throws std::domain_error  naming the place and what was found, for anything outside the subset.
std::string canonical_text(const nlohmann::json& value);

/// Reads a canonical text back.
///
/// @throws std::domain_error  when `text` is not exactly what `canonical_text` writes for the value it holds
///         (so double keys, spaces, fractions and unsorted keys are all refused).
nlohmann::json parse_canonical(std::string_view text);

}  // namespace seal
