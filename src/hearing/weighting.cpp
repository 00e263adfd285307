#include "hearing/weighting.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>

#include "electrical/argument.h"

namespace hearing {
namespace {

double flat_db(double frequency_hz) {
  electrical::require_positive("frequency_hz", frequency_hz);
  return 0;
}

constexpr std::array kCatalogue{
    Weighting{"1khz", "1 kHz tone", "common practice, no source", Tone{1000}},
    Weighting{"pink", "pink noise, 20 Hz to 20 kHz", "equal power per octave, by definition",
              Spectrum{flat_db}},
    Weighting{"pink-a", "pink noise, A-weighted, 20 Hz to 20 kHz", "IEC 61672-1, Annex E",
              Spectrum{a_weighting_db}},
    Weighting{"pink-k", "pink noise, K-weighted, 20 Hz to 20 kHz",
              "ITU-R BS.1770-4, Annex 1, Tables 1 and 2 (48 kHz)", Spectrum{k_weighting_db}},
    Weighting{"programme", "simulated programme, 20 Hz to 20 kHz", "IEC 60268-1:1985, clause 7, Table II",
              Spectrum{programme_spectrum_db}},
};

}  // namespace

std::span<const Weighting> catalogue() { return kCatalogue; }

const Weighting& find(std::string_view name) {
  const auto found = std::find_if(kCatalogue.begin(), kCatalogue.end(),
                                  [&](const Weighting& weighting) { return weighting.name == name; });
  if (found != kCatalogue.end()) return *found;
  std::string names;
  for (const Weighting& weighting : kCatalogue) {
    names += (names.empty() ? "" : ", ") + std::string(weighting.name);
  }
  throw std::domain_error("weighting must be one of " + names + ", got \"" + std::string(name) + "\"");
}

}  // namespace hearing
