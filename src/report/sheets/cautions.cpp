#include "report/sheets.h"

namespace report {

// NIOSH, Criteria for a Recommended Standard: Occupational Noise Exposure, 1998; ITU-T H.870, 2018: the figures of
// hearing/exposure_limit.h.
std::string_view ears_caution() {
  return "Ears: at most 85 dBA for 8 hours a day, half as long for every 3 dB more (88 dBA 4 hours, 94 dBA 1 "
         "hour: NIOSH); 80 dBA for 40 hours a week (ITU-T H.870). Measure at the seat, count the whole day, "
         "stop when ears ring.";
}

const std::vector<std::string>& swap_cautions() {
  static const std::vector<std::string> cautions = {
      "Amplifier off, or volume at minimum or muted, before any plug is moved: a shorted output can destroy "
      "it.",
      "Bridged outputs have no ground terminal: neither side may touch ground or another channel.",
      "Valve amplifier: never without a load while it is on; switch it off for every swap.",
      "A cable of high capacitance (above about 1 nF in all, a rule of thumb) can make some amplifiers "
      "oscillate: stop at heat, hum or hiss.",
      "Mains parts only by a licensed person and under the local code; where this sheet and the code differ, "
      "the code holds.",
  };
  return cautions;
}

}  // namespace report
