#include "sitting/chain/chain_reader.h"

#include "seal/chain.h"
#include "text/error.h"

namespace sitting {

Chain read_chain(const EventLog& log, const seal::Digest& commitment, int sitting) {
  Chain chain;
  chain.head = seal::chain_start(commitment, sitting);
  for (const LoggedEvent& logged : log.events(sitting)) {
    chain.head = seal::chain_next(chain.head, logged.text);
    if (seal::to_hex(chain.head) != logged.head_hex)
      throw text::BadInput(
          "sitting " + std::to_string(sitting) + ", event " + std::to_string(chain.events.size() + 1) +
          " does not fit the hash chain: the file was changed by something other than blindswap\n"
          "go back to a copy that was made before");
    chain.events.push_back(event_of(logged.text));
  }
  return chain;
}

}  // namespace sitting
