#include "web/hub.h"

namespace web {

void Hub::release(const std::string& channel, const std::string& text) {
  {
    const std::lock_guard lock(mutex_);
    Release& shown = channels_[channel];
    if (shown.version > 0 && shown.text == text) return;
    ++shown.version;
    shown.text = text;
  }
  changed_.notify_all();
}

Release Hub::shown(const std::string& channel) const {
  const std::lock_guard lock(mutex_);
  const auto found = channels_.find(channel);
  return found == channels_.end() ? Release{} : found->second;
}

std::optional<Release> Hub::next(const std::string& channel, std::uint64_t version,
                                 std::chrono::milliseconds patience) const {
  std::unique_lock lock(mutex_);
  const auto is_new = [&] {
    const auto found = channels_.find(channel);
    return closed_ || (found != channels_.end() && found->second.version != version);
  };
  if (!changed_.wait_for(lock, patience, is_new) || closed_) return std::nullopt;
  return channels_.at(channel);
}

bool Hub::join(const std::string& channel) {
  const std::lock_guard lock(mutex_);
  if (closed_ || all_streams_ >= most_streams_) return false;
  ++all_streams_;
  ++streams_[channel];
  return true;
}

void Hub::leave(const std::string& channel) {
  const std::lock_guard lock(mutex_);
  --all_streams_;
  --streams_[channel];
}

int Hub::streams_on(const std::string& channel) const {
  const std::lock_guard lock(mutex_);
  const auto found = streams_.find(channel);
  return found == streams_.end() ? 0 : found->second;
}

void Hub::close() {
  {
    const std::lock_guard lock(mutex_);
    closed_ = true;
  }
  changed_.notify_all();
}

bool Hub::closed() const {
  const std::lock_guard lock(mutex_);
  return closed_;
}

}  // namespace web
