#pragma once

#include <exception>
#include <string>

/// What an action is refused with, word for word; says so when it is not refused at all.
template <typename Action>
std::string refusal(Action action) {
  try {
    action();
  } catch (const std::exception& error) {
    return error.what();
  }
  return "(not refused)";
}
