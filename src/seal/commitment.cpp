#include "seal/commitment.h"

#include <nlohmann/json.hpp>
#include <stdexcept>

#include "seal/canonical_json.h"

namespace seal {

Digest commitment(std::string_view canonical_plan, const Digest& seed) {
  std::string sealed(canonical_plan);
  sealed += bytes_of(seed);
  return sha256(sealed);
}

Digest order_seed(const Digest& seed, std::span<const std::string> contributions, int sitting) {
  if (sitting < 1) throw std::domain_error("sitting must be 1 or more, got " + std::to_string(sitting));
  nlohmann::json characters = nlohmann::json::array();
  for (const std::string& contribution : contributions) characters.push_back(contribution);
  std::string text(bytes_of(seed));
  text += canonical_text(characters);
  text += std::to_string(sitting);
  return sha256(text);
}

}  // namespace seal
