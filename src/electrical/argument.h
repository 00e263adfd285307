#pragma once

#include <string>
#include <string_view>

namespace electrical {

/// The shortest decimal text that reads back as `value`, whatever the locale: "0.1", "2e-05", "inf", "nan".
std::string number_text(double value);

/// Refuses a value that is not finite and above 0.
/// @throws std::domain_error  "<name> must be a finite number above 0, got <value>"
void require_positive(std::string_view name, double value);

/// Refuses a value that is not finite or is below 0.
/// @throws std::domain_error  "<name> must be a finite number, 0 or more, got <value>"
void require_not_negative(std::string_view name, double value);

/// Refuses a value outside `low` to `high`, both allowed.
/// @throws std::domain_error  "<name> must be from <low> to <high>, got <value>"
void require_within(std::string_view name, double value, double low, double high);

}  // namespace electrical
