#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "desk/sittings/opened_sitting.h"
#include "sitting/simulated/stand_ins.h"

namespace desk {

/// A code of 128 bits in hex for each person of a sitting: whoever has it is that person. They are hashed from a random key
/// of the campaign, so that a sitting hosted again has the same links, and have nothing to do with the order's seed.
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
  LinkCodes codes();
  /// Lets the program play these persons, in a demonstration; nothing before.
  /// @throws text::BadInput for a plan whose seed was drawn: its answers are evidence.
  void let_stand_in(const std::vector<std::string>& who);
  /// Does for the stand-ins what is to be done now.
  void act_for_stand_ins();

  std::string commitment_hex() const;
  bool is_unsealed() const;

 private:
  OpenedSitting opened_;
  std::optional<sitting::StandIns> stand_ins_;
};

}  // namespace desk
