#pragma once

#include <stdexcept>
#include <string>

/// The whole text of the std::domain_error that `act` throws, or "accepted".
template <typename Act>
std::string refusal(Act act) {
  try {
    act();
  } catch (const std::domain_error& error) {
    return error.what();
  }
  return "accepted";
}
