#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "sitting/helper_door.h"
#include "sitting/listener_door.h"
#include "web/gate.h"
#include "web/organiser_desk.h"

namespace web {

/// Where a sitting is hosted.
struct Address {
  std::string interface = "127.0.0.1";  ///< an IPv4 address of this computer
  int port = 0;                         ///< 0 for any that is free
};

/// Serves one sitting's pages. Listeners see only what was released on a tick, so that no message tells when it arose.
class Host {
 public:
  /// Binds, and serves from then on. The doors and the desk must outlive it; it calls them from one thread at a time.
  /// @throws text::NotNow when the address cannot be bound.
  Host(sitting::ListenerDoor& listener_door, sitting::HelperDoor& helper_door, OrganiserDesk& desk,
       Codes codes, const Address& address);
  /// Ends every stream, waits for running requests, and stops.
  ~Host();

  int port() const;
  /// "http://192.168.1.5:8010/helper#..." of the role; listeners by name.
  std::string link(const std::string& role, const std::string& listener = "") const;

  /// Keeps the pace and releases to listeners what has changed. To be called once a second. What cannot be kept now, on a
  /// full disk for instance, is shown to the helper and in the state line, and tried again.
  /// @param before  is run first, while nobody else calls a door.
  void tick(const std::function<void()>& before = {});
  /// One line that gives nothing away: how far, who is connected.
  std::string state_line() const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace web
