#include "seal/chain.h"

#include <string>

namespace seal {

Digest chain_start(const Digest& commitment, int sitting) {
  return sha256(to_hex(commitment) + "/" + std::to_string(sitting));
}

Digest chain_next(const Digest& head, std::string_view canonical_event) {
  std::string link(bytes_of(head));
  link += canonical_event;
  return sha256(link);
}

}  // namespace seal
