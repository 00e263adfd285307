#pragma once

#include <memory>

#include "desk/sittings/sittings.h"

namespace desk {

/// A sitting with the campaign it stands in, for as long as it is used.
struct OpenedSitting {
  OpenedSitting(const SittingName& name, const sitting::Clock& clock);

  store::Campaign campaign;
  OpenedPlan opened;
  std::unique_ptr<sitting::EventLog> log;
  sitting::Sitting sitting;
};

}  // namespace desk
