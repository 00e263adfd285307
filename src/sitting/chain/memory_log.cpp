#include "sitting/event_log.h"
#include "text/error.h"

namespace sitting {

std::vector<LoggedEvent> MemoryLog::events(int sitting) const {
  const auto index = static_cast<std::size_t>(sitting);
  return index < sittings_.size() ? sittings_[index] : std::vector<LoggedEvent>{};
}

void MemoryLog::append(int sitting, int number, const LoggedEvent& event) {
  const auto index = static_cast<std::size_t>(sitting);
  if (index >= sittings_.size()) sittings_.resize(index + 1);
  if (number != static_cast<int>(sittings_[index].size()) + 1)
    throw text::NotNow("another writer was first; nothing was kept, try again");
  sittings_[index].push_back(event);
}

}  // namespace sitting
