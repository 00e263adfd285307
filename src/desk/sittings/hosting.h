#pragma once

#include <map>
#include <string>

#include "desk/sittings/opened_sitting.h"

namespace desk {

/// A code of 128 bits in hex for each person of a sitting: whoever has it is that person. They come from the plan's seed by
/// a hash that does not lead back, so that a sitting hosted again has the same links, and nothing more is kept.
struct LinkCodes {
  std::string helper, organiser;
  std::map<std::string, std::string> listeners;  ///< by name
};

/// A sitting held live: opened as such unless it is, and kept open.
class Hosting {
 public:
  /// @throws text::NotNow for a sitting that is on paper.
  Hosting(const SittingName& name, const sitting::Clock& clock);

  sitting::Sitting& sitting() { return opened_.sitting; }
  const sitting::Sitting& sitting() const { return opened_.sitting; }
  LinkCodes codes() const;
  std::string commitment_hex() const;
  bool is_unsealed() const;

 private:
  OpenedSitting opened_;
};

}  // namespace desk
