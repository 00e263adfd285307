#pragma once

#include <string>
#include <vector>

namespace sitting {

/// An event as it is kept: its canonical text, and the chain's head after it as 64 hex digits.
struct LoggedEvent {
  std::string text;
  std::string head_hex;
};

/// Where events are kept. Events of one sitting are numbered 1, 2, ... and never change; sitting 0 is the plan's own.
class EventLog {
 public:
  virtual ~EventLog() = default;

  /// A sitting's events, in order.
  virtual std::vector<LoggedEvent> events(int sitting) const = 0;

  /// Keeps one more event, durably: when this returns, the event survives a power cut.
  ///
  /// @param number  one more than the number of events the sitting has.
  /// @throws text::NotNow  when another writer was first, or the event cannot be written; nothing is kept then.
  virtual void append(int sitting, int number, const LoggedEvent& event) = 0;
};

/// A log that lives as long as the program: for rehearsals and simulations.
class MemoryLog : public EventLog {
 public:
  std::vector<LoggedEvent> events(int sitting) const override;
  void append(int sitting, int number, const LoggedEvent& event) override;

 private:
  std::vector<std::vector<LoggedEvent>> sittings_;
};

}  // namespace sitting
