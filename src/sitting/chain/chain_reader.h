#pragma once

#include <vector>

#include "seal/digest.h"
#include "sitting/event.h"
#include "sitting/event_log.h"

namespace sitting {

/// A chain read back and found whole.
struct Chain {
  std::vector<Event> events;
  seal::Digest head{};
};

/// Reads the events of a sitting and follows the chain from its start.
/// @throws text::BadInput naming sitting and event when a head does not fit: something other than this program
///         changed the file.
Chain read_chain(const EventLog& log, const seal::Digest& commitment, int sitting);

}  // namespace sitting
