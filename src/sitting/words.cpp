#include "sitting/words.h"

#include <algorithm>

namespace sitting {
namespace {

constexpr std::string_view reasons[] = {"wrong tag", "audible fault", "interruption", "pace overrun",
                                        "other"};

constexpr std::string_view sure[] = {"guess", "fairly sure", "certain"};

constexpr FactKind facts[] = {
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
    {"photograph", "Photograph (name and SHA-256)"},
    {"other", "Other"},
};

}  // namespace

std::span<const std::string_view> spoil_reasons() { return reasons; }

std::span<const std::string_view> sureness_words() { return sure; }

std::span<const FactKind> fact_kinds() { return facts; }

bool is_one_of(std::string_view word, std::span<const std::string_view> list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

}  // namespace sitting
