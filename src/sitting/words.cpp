#include "sitting/words.h"

#include <algorithm>

#include "text/error.h"
#include "text/utf8.h"

namespace sitting {
namespace {

constexpr std::string_view reasons[] = {"wrong tag", "audible fault", "interruption", "pace overrun",
                                        "other"};

constexpr std::string_view sure[] = {"guess", "fairly sure", "certain"};

constexpr FactKind facts[] = {
    {"held-on", "Day and hour of the sitting"},
    {"helper", "Who helped"},
    {"channels", "Mono or stereo (both channels swapped together)"},
    {"terminations", "Terminations of the cables"},
    {"bi-wiring", "Bi-wiring"},
    {"contact-resistance", "Contact resistance"},
    {"seat", "Seat and distance from the loudspeakers"},
    {"level-at-seat-start", "Level at the seat at the start, dBA"},
    {"level-at-seat-end", "Level at the seat at the end, dBA"},
    {"mute-policy", "Mute or power-off before each swap, volume read back"},
    {"masking-noise", "Masking noise during swaps"},
    {"warm-up", "Warm-up, minutes"},
    {"temperature", "Temperature of the room"},
    {"longest-rehearsed-swap", "Longest rehearsed swap, seconds"},
    {"photograph", "Photograph (name and SHA-256)", true},
    {"other", "Other", true},
};

}  // namespace

std::span<const std::string_view> spoil_reasons() { return reasons; }

std::span<const std::string_view> sureness_words() { return sure; }

std::span<const FactKind> fact_kinds() { return facts; }

void require_words(const std::string& what, const std::string& words, std::size_t least) {
  if (words.size() < least) throw text::BadInput(what + " must not be empty");
  if (words.size() > most_bytes || !text::is_valid_utf8(words))
    throw text::BadInput(what + " must be valid UTF-8 of at most " + std::to_string(most_bytes) + " bytes");
}

bool is_one_of(std::string_view word, std::span<const std::string_view> list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

}  // namespace sitting
