#pragma once

#include <functional>
#include <string>

#include "sitting/helper_door.h"
#include "web/actions.h"

namespace web {

/// What the organiser may do beyond the sitting itself; whoever makes the server knows how.
class OrganiserDesk {
 public:
  virtual ~OrganiserDesk() = default;

  virtual std::string title() const = 0;
  virtual std::string commitment_hex() const = 0;
  /// The chain's head once the sitting has ended, "" before.
  virtual std::string head_hex() const = 0;
  virtual bool is_unsealed() const = 0;
  virtual void end() = 0;
  virtual void end_early(const std::string& who, const std::string& reason, bool had_seen) = 0;
  virtual void hand_over_head(const std::string& who, const std::string& how) = 0;
  virtual void unseal() = 0;
  /// The report as a page of its own. @throws text::NotNow while the plan is sealed.
  virtual std::string report_html() const = 0;
};

/// How many devices of a person are connected: "helper", or a listener's name.
using Connected = std::function<int(const std::string& person)>;

/// What the organiser's page shows, as JSON: who is there, how far, how long still; no tag and no answer.
std::string organiser_view(const sitting::HelperDoor& door, const OrganiserDesk& desk,
                           const Connected& connected);

Actions organiser_actions(OrganiserDesk& desk);

}  // namespace web
