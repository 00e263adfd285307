#include "desk/sittings/hosting.h"

#include <algorithm>
#include <cstring>

#include "seal/digest.h"
#include "sitting/chain/plan_chain.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/utf8.h"

namespace desk {

Hosting::Hosting(const SittingName& name, const sitting::Clock& clock) : opened_(name, clock) {
  if (sitting().state().way.empty()) sitting().open("live");
  if (sitting().state().way != "live")
    throw text::NotNow("sitting " + std::to_string(name.number) + " is held on paper; it cannot be hosted");
}

LinkCodes Hosting::codes() {
  constexpr std::size_t digits = 32;
  const std::string key = seal::to_hex(opened_.campaign.link_key());
  const std::string place = opened_.opened.plan.name + "\n" + std::to_string(sitting().number());
  const auto code = [&](const std::string& person) {
    return seal::to_hex(seal::sha256("link\n" + key + "\n" + place + "\n" + person)).substr(0, digits);
  };
  LinkCodes codes{code("helper"), code("organiser"), {}};
  for (const std::string& listener : sitting().state().listeners)
    codes.listeners[listener] = code("listener " + listener);
  return codes;
}

void Hosting::let_stand_in(const std::vector<std::string>& who) {
  if (who.empty()) return;
  if (sitting().plan().seed_origin != "supplied")
    throw text::BadInput("stand-ins are for demonstrations, and plan " + text::quoted(sitting().plan().name) +
                         " is none\nseal one with --supplied-seed");
  const std::vector<std::string>& listeners = sitting().state().listeners;
  for (const std::string& name : who)
    if (name != "helper" && std::find(listeners.begin(), listeners.end(), name) == listeners.end())
      throw text::BadInput("no listener " + text::quoted(name) + " attends sitting " +
                           std::to_string(sitting().number()) + text::did_you_mean(name, listeners));
  const seal::Digest drawn = seal::random_digest();
  std::uint64_t seed = 0;
  std::memcpy(&seed, drawn.data(), sizeof seed);
  stand_ins_.emplace(sitting(), sitting(), who, seed);
}

void Hosting::act_for_stand_ins() {
  if (stand_ins_) stand_ins_->act();
}

std::string Hosting::commitment_hex() const { return seal::to_hex(opened_.opened.sealed.commitment); }

bool Hosting::is_unsealed() const { return sitting::story_of(*opened_.log, opened_.opened.sealed).unsealed; }

}  // namespace desk
