#include "desk/sittings/hosting.h"

#include "seal/digest.h"
#include "sitting/chain/plan_chain.h"
#include "text/error.h"

namespace desk {

Hosting::Hosting(const SittingName& name, const sitting::Clock& clock) : opened_(name, clock) {
  if (sitting().state().way.empty()) sitting().open("live");
  if (sitting().state().way != "live")
    throw text::NotNow("sitting " + std::to_string(name.number) + " is held on paper; it cannot be hosted");
}

LinkCodes Hosting::codes() const {
  constexpr std::size_t digits = 32;
  const std::string secret = seal::to_hex(opened_.opened.sealed.seed);
  const auto code = [&](const std::string& person) {
    return seal::to_hex(
               seal::sha256("link\n" + secret + "\n" + std::to_string(sitting().number()) + "\n" + person))
        .substr(0, digits);
  };
  LinkCodes codes{code("helper"), code("organiser"), {}};
  for (const std::string& listener : sitting().state().listeners)
    codes.listeners[listener] = code("listener " + listener);
  return codes;
}

std::string Hosting::commitment_hex() const { return seal::to_hex(opened_.opened.sealed.commitment); }

bool Hosting::is_unsealed() const { return sitting::story_of(*opened_.log, opened_.opened.sealed).unsealed; }

}  // namespace desk
