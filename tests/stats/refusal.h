#pragma once

#include <stdexcept>
#include <string>

/// The message of the std::domain_error that `call` must end in.
template <typename Call>
std::string refusal(const Call& call) {
  try {
    call();
  } catch (const std::domain_error& error) {
    return error.what();
  }
  return "(not refused)";
}
