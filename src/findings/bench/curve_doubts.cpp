#include <algorithm>
#include <cmath>
#include <map>

#include "electrical/extreme.h"
#include "findings/bench/doubts.h"
#include "hearing/level_curve.h"
#include "text/number.h"
#include "text/quantity.h"

namespace findings {
namespace {

using text::Unit;

/// How far a response may be from the prediction, or from that of the other piece; common practice, no source.
constexpr double kTolerance_db = 0.1;
constexpr int kPoints = 61;

const BenchCable* cable_of(const Measurement& one, const std::vector<BenchCable>& cables) {
  const auto found = std::find_if(cables.begin(), cables.end(),
                                  [&](const BenchCable& each) { return each.name == one.cable; });
  return found == cables.end() ? nullptr : &*found;
}

const BenchRig* rig_of_response(const Measurement& one, const std::vector<BenchRig>& rigs) {
  const auto found =
      std::find_if(rigs.begin(), rigs.end(), [&](const BenchRig& each) { return each.name == one.rig; });
  return found == rigs.end() || !found->source || !found->load ? nullptr : &*found;
}

hearing::LevelCurve curve_of(const Measurement& one) {
  return {*one.column("frequency_hz"), *one.column("level_db")};
}

/// A response less its prediction, at points of the band that both have.
struct Departure {
  const Measurement* response;
  std::vector<double> frequency_hz, departure_db;
  double mean_db = 0;
};

std::optional<Departure> departure_of(const Measurement& one, const std::vector<BenchCable>& cables,
                                      const std::vector<BenchRig>& rigs) {
  const BenchCable* cable = cable_of(one, cables);
  const BenchRig* rig = rig_of_response(one, rigs);
  if (cable == nullptr || !cable->line || rig == nullptr) return std::nullopt;
  const hearing::LevelCurve measured = curve_of(one),
                            predicted = hearing::predicted_curve(*rig->source, *cable->line, *rig->load);
  const auto audio = electrical::common_band(measured.band(), electrical::kAudioBand);
  const auto band = audio ? electrical::common_band(*audio, predicted.band()) : std::nullopt;
  if (!band) return std::nullopt;
  Departure found{&one, electrical::log_spaced(*band, kPoints), {}, 0};
  for (const double f : found.frequency_hz) {
    found.departure_db.push_back(measured.level_db(f) - predicted.level_db(f));
    found.mean_db += found.departure_db.back() / kPoints;
  }
  return found;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

/// The largest departure from the level common to all responses, and where.
struct Largest {
  std::size_t place = 0;
  double departure_db = 0;
};

Largest largest_of(const Departure& departure, double reference_db) {
  Largest largest;
  for (std::size_t i = 0; i < departure.departure_db.size(); ++i)
    if (const double one = departure.departure_db[i] - reference_db;
        std::abs(one) > std::abs(largest.departure_db))
      largest = {i, one};
  return largest;
}

/// What a departure that is about the same everywhere, or that grows to the end, can come from.
std::string explanation_of(const Departure& departure, double reference_db, std::size_t place) {
  const auto [least, most] =
      std::minmax_element(departure.departure_db.begin(), departure.departure_db.end());
  if (*most - *least < kTolerance_db)
    return "a gain or reference that changed, or the response of another cable";
  const double at_front = std::abs(departure.departure_db.front() - reference_db),
               at_back = std::abs(departure.departure_db.back() - reference_db);
  if (place > kPoints * 9 / 10 && at_back > 2 * at_front)
    return "it grows with frequency: inductance, capacitance, or the load's impedance at high frequencies";
  return "resistance or contacts other than when the totals were read, another cable, or another load";
}

/// One doubt for all responses of a cable on a rig that are beyond the tolerance, in the words of the worst.
void doubt_cable(const std::string& rig, const std::vector<const Departure*>& of_cable, double reference_db,
                 std::vector<Doubt>& doubts) {
  const Departure* worst = nullptr;
  Largest most;
  std::vector<int> numbers;
  for (const Departure* each : of_cable) {
    const Largest largest = largest_of(*each, reference_db);
    if (std::abs(largest.departure_db) <= kTolerance_db) continue;
    numbers.push_back(each->response->number);
    if (std::abs(largest.departure_db) <= std::abs(most.departure_db)) continue;
    worst = each;
    most = largest;
  }
  if (worst == nullptr) return;
  const std::string others =
      numbers.size() == 1 ? "" : ", the worst of " + std::to_string(numbers.size()) + " beyond the tolerance";
  doubts.push_back({numbers, worst->response->cable,
                    described(*worst->response) + others + ": at " +
                        text::with_unit(worst->frequency_hz[most.place], Unit::hertz) + " the response is " +
                        text::fixed(std::abs(most.departure_db), 2) + " dB " +
                        (most.departure_db > 0 ? "above" : "below") +
                        " what the cable's own totals predict on rig " + rig + " (tolerance " +
                        text::fixed(kTolerance_db, 1) +
                        " dB; the level common to all responses there taken away)",
                    explanation_of(*worst, reference_db, most.place)});
}

void doubt_predictions(const std::vector<Measurement>& measurements, const std::vector<BenchCable>& cables,
                       const std::vector<BenchRig>& rigs, std::vector<Doubt>& doubts) {
  std::map<std::string, std::vector<Departure>> by_rig;
  for (const Measurement& one : measurements)
    if (!one.superseded && one.kind == "response")
      if (auto departure = departure_of(one, cables, rigs)) by_rig[one.rig].push_back(std::move(*departure));
  for (const auto& [rig, departures] : by_rig) {
    std::vector<double> means;
    std::map<std::string, std::vector<const Departure*>> by_cable;
    for (const Departure& each : departures) {
      means.push_back(each.mean_db);
      by_cable[each.response->cable].push_back(&each);
    }
    for (const auto& [cable, of_cable] : by_cable) doubt_cable(rig, of_cable, median(means), doubts);
  }
}

/// Whether a measured phase would lie much nearer to the predicted one with its sign changed.
void doubt_phase_sign(const Measurement& one, const std::vector<BenchCable>& cables,
                      const std::vector<BenchRig>& rigs, std::vector<Doubt>& doubts) {
  const BenchCable* cable = cable_of(one, cables);
  const BenchRig* rig = rig_of_response(one, rigs);
  const auto* phase_deg = one.column("phase_deg");
  if (phase_deg == nullptr || cable == nullptr || !cable->line || rig == nullptr) return;
  const auto& frequency_hz = *one.column("frequency_hz");
  const electrical::Band known = electrical::known_band(*rig->load);
  double as_is = 0, changed = 0, size = 0;
  for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
    if (frequency_hz[i] < known.low_hz || frequency_hz[i] > known.high_hz) continue;
    const double predicted =
        electrical::phase_deg(electrical::response(*rig->source, *cable->line, *rig->load, frequency_hz[i]));
    as_is += std::pow((*phase_deg)[i] - predicted, 2);
    changed += std::pow(-(*phase_deg)[i] - predicted, 2);
    size += predicted * predicted;
  }
  if (as_is <= 4 * changed || changed > size / 4) return;
  doubts.push_back(
      {{one.number},
       one.cable,
       described(one) +
           ": with the sign of its phase changed it is that of the prediction behind the source and "
           "load of rig " +
           one.rig,
       "phase counted as delay, or plus and minus of one probe exchanged"});
}

/// A passive impedance leads where its magnitude rises and lags where it falls: over many octaves their product is positive.
void doubt_impedance(const Measurement& one, const std::vector<BenchRig>& rigs, std::vector<Doubt>& doubts) {
  const auto& frequency_hz = *one.column("frequency_hz");
  const auto &magnitude = *one.column("magnitude_ohm"), &phase = *one.column("phase_deg");
  double together = 0, apart = 0;
  for (std::size_t i = 1; i < frequency_hz.size(); ++i) {
    const double product = std::log(magnitude[i] / magnitude[i - 1]) * (phase[i] + phase[i - 1]);
    (product > 0 ? together : apart) += std::abs(product);
  }
  if (apart > 3 * together)
    doubts.push_back({{one.number},
                      "",
                      described(one) + ": its phase lags where the impedance rises and leads where it falls",
                      "the sign of the phase is changed: plus and minus of one probe exchanged"});
  const auto rig =
      std::find_if(rigs.begin(), rigs.end(), [&](const BenchRig& each) { return each.name == one.rig; });
  if (rig == rigs.end() || !rig->rated_impedance_ohm) return;
  const double permitted = electrical::lowest_permitted_impedance_ohm(*rig->rated_impedance_ohm);
  std::size_t least = 0;
  for (std::size_t i = 0; i < magnitude.size(); ++i)
    if (frequency_hz[i] >= 20 && frequency_hz[i] <= 20000 &&
        (frequency_hz[least] < 20 || magnitude[i] < magnitude[least]))
      least = i;
  if (magnitude[least] >= permitted) return;
  doubts.push_back({{one.number},
                    "",
                    described(one) + ": " + text::with_unit(magnitude[least], Unit::ohm) + " at " +
                        text::with_unit(frequency_hz[least], Unit::hertz) + " is below 80 % of the rated " +
                        text::with_unit(*rig->rated_impedance_ohm, Unit::ohm) + " of rig " + one.rig +
                        " (IEC 60268-5, 16.1)",
                    magnitude[least] < permitted / 100
                        ? "a unit off by 1000: ohm for kohm"
                        : "a rating that is too high, or another loudspeaker"});
}

void doubt_pieces(const std::vector<Measurement>& measurements, std::vector<Doubt>& doubts) {
  for (const Measurement& left : measurements)
    for (const Measurement& right : measurements) {
      if (left.superseded || right.superseded || left.kind != "response" || right.kind != "response" ||
          left.piece != "left" || right.piece != "right" || left.cable != right.cable ||
          left.rig != right.rig || left.repeat != right.repeat || left.condition != right.condition ||
          left.state != right.state)
        continue;
      const hearing::LevelCurve one = curve_of(left), other = curve_of(right);
      const auto band = electrical::common_band(one.band(), other.band());
      if (!band) continue;
      const auto apart = electrical::maximum_over(
          [&](double f) { return std::abs(one.level_db(f) - other.level_db(f)); }, *band);
      if (apart.value <= kTolerance_db) continue;
      doubts.push_back({{left.number, right.number},
                        left.cable,
                        described(left) + " and " + described(right) + ": the pieces differ by " +
                            text::fixed(apart.value, 2) + " dB at " +
                            text::with_unit(apart.frequency_hz, Unit::hertz),
                        "pieces of different length, a bad joint in one, or a channel of the amplifier"});
    }
}

}  // namespace

std::vector<Doubt> curve_doubts(const std::vector<Measurement>& measurements,
                                const std::vector<BenchCable>& cables, const std::vector<BenchRig>& rigs) {
  std::vector<Doubt> doubts;
  for (const Measurement& one : measurements) {
    if (one.superseded) continue;
    if (one.kind == "response" || one.kind == "phase") doubt_phase_sign(one, cables, rigs, doubts);
    if (one.kind == "impedance") doubt_impedance(one, rigs, doubts);
  }
  doubt_predictions(measurements, cables, rigs, doubts);
  doubt_pieces(measurements, doubts);
  return doubts;
}

}  // namespace findings
