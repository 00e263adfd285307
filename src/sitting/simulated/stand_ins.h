#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "sitting/helper_door.h"
#include "sitting/listener_door.h"
#include "stats/random.h"

namespace sitting {

/// Persons played by the program, so that somebody alone can try a live sitting. A listener's stand-in answers by a fair
/// coin, the helper's says at once that everything is connected; the record says of each that it was a stand-in.
class StandIns {
 public:
  /// The doors must outlive it.
  /// @param who  listeners' names, or "helper".
  StandIns(ListenerDoor& listeners, HelperDoor& helper, std::vector<std::string> who, std::uint64_t seed);

  /// Does what is to be done now. To be called at every tick, before the pace is kept.
  void act();

 private:
  void act_as_listener(const std::string& name);
  void act_as_helper();

  ListenerDoor& listener_door_;
  HelperDoor& helper_door_;
  std::vector<std::string> who_;
  stats::Random random_;
};

}  // namespace sitting
