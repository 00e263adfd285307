#pragma once

#include <string>

#include "seal/digest.h"

namespace plan {

/// A plan with its seed: what the campaign file holds of it.
struct SealedPlan {
  std::string name;
  std::string text;  ///< canonical
  seal::Digest seed{};
  seal::Digest commitment{};
};

}  // namespace plan
