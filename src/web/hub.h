#pragma once

#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <string>

namespace web {

/// What a channel showed last, and how often it has changed.
struct Release {
  std::uint64_t version = 0;
  std::string text;
};

/// Channels on which views are released, and the streams that listen to them. Safe between threads.
class Hub {
 public:
  /// @param most_streams  streams open at once over all channels; more are turned away.
  explicit Hub(int most_streams) : most_streams_(most_streams) {}

  /// Shows `text` on a channel; the same text again is no change.
  void release(const std::string& channel, const std::string& text);

  Release shown(const std::string& channel) const;

  /// Waits until the channel shows something else than `version`. Nothing after `patience`, or once closed.
  std::optional<Release> next(const std::string& channel, std::uint64_t version,
                              std::chrono::milliseconds patience) const;

  /// One more stream on a channel. @return  false when there are too many.
  bool join(const std::string& channel);
  void leave(const std::string& channel);
  int streams_on(const std::string& channel) const;

  /// Ends every wait, now and later.
  void close();
  bool closed() const;

 private:
  const int most_streams_;
  mutable std::mutex mutex_;
  mutable std::condition_variable changed_;
  std::map<std::string, Release> channels_;
  std::map<std::string, int> streams_;
  int all_streams_ = 0;
  bool closed_ = false;
};

}  // namespace web
