#include "desk/shelf/shelf_prediction.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "desk/files.h"
#include "desk/shelf/circuit.h"
#include "electrical/many/levels.h"
#include "hearing/level_difference.h"
#include "hearing/trim.h"
#include "text/error.h"
#include "text/number.h"
#include "text/utf8.h"

namespace desk {
namespace {

struct NamedRig {
  std::string name, description;
  electrical::Rig circuit;
  std::optional<double> volume_step_db;
};

/// What there is to predict from.
struct KnownShelf {
  NamedLine baseline;
  std::vector<NamedLine> others;
  std::vector<NamedRig> rigs;
  std::vector<std::string> left_out;
};

NamedLine baseline_of(const store::Campaign& campaign) {
  const std::string name = campaign.baseline();
  if (name.empty())
    throw text::BadInput(
        "the campaign has no baseline to compare all cables with\n"
        "name one: blindswap baseline CABLE; or name two cables to predict one swap");
  const auto line = known_line(campaign, name);
  if (!line)
    throw text::BadInput("the baseline, " + text::quoted(name) +
                         ", has no reading of its resistance, and its construction gives none\n"
                         "import a table: cable,length_m,resistance_ohm; or name another baseline");
  return {name, *line};
}

void add_rigs(const store::Campaign& campaign, const std::string& only, KnownShelf& shelf) {
  for (const store::Rig& rig : campaign.rigs()) {
    if (!only.empty() && rig.name != only) continue;
    const findings::RigEvidence evidence = rig_evidence(campaign, rig.name);
    if (evidence.source && evidence.load)
      shelf.rigs.push_back({rig.name,
                            evidence.description,
                            {*evidence.source, *evidence.load},
                            text::number(rig.volume_step_db)});
    else
      shelf.left_out.push_back("rig " + rig.name + (evidence.source ? ": its load" : ": its source") +
                               " is not known");
  }
  if (!shelf.rigs.empty()) return;
  std::string why =
      "no rig has both source and load\nadd one with blindswap rig --source and --load, or import its "
      "impedance";
  for (const std::string& each : shelf.left_out) why += "\n" + each;
  throw text::BadInput(why);
}

KnownShelf known_shelf(const store::Campaign& campaign, const std::string& rig) {
  if (!rig.empty()) rig_named(campaign, rig);
  KnownShelf shelf{baseline_of(campaign), {}, {}, {}};
  for (const store::Cable& cable : campaign.cables()) {
    if (cable.name == shelf.baseline.name) continue;
    if (const auto line = known_line(campaign, cable.name))
      shelf.others.push_back({cable.name, *line});
    else
      shelf.left_out.push_back("cable " + cable.name + ": its resistance is not known");
  }
  if (shelf.others.empty())
    throw text::BadInput(
        "of no cable but the baseline is the resistance known\n"
        "import a table: cable,length_m,resistance_ohm,inductance_uH,capacitance_pF");
  add_rigs(campaign, rig, shelf);
  return shelf;
}

bool has_unknown(const NamedLine& named) {
  return named.line.inductance == Origin::unknown || named.line.capacitance == Origin::unknown;
}

hearing::LevelCurve curve_on(const NamedRig& rig, const NamedLine& named) {
  return hearing::predicted_curve(rig.circuit.source, named.line.cable, rig.circuit.load);
}

ShelfSwap swap_on(const NamedRig& rig, const NamedLine& baseline, const NamedLine& other,
                  const hearing::Weighting& weighting) {
  const hearing::LevelCurve from = curve_on(rig, baseline), to = curve_on(rig, other);
  const double difference_db = hearing::level_difference(weighting, to, from).difference_db;
  ShelfSwap swap{other.name, difference_db, after_trim(to, from, difference_db), std::nullopt,
                 left_open(baseline, other, rig.circuit.source, rig.circuit.load, weighting)};
  if (rig.volume_step_db) {
    const auto trims = hearing::trims(std::array{0.0, difference_db}, *rig.volume_step_db);
    swap.left_by_steps_db = trims[1].level_db - trims[0].level_db;
  }
  return swap;
}

std::string table_cell(const std::string& name) {
  if (name.find_first_of(",\"\n") == std::string::npos) return name;
  std::string cell = "\"";
  for (const char c : name) cell += c == '"' ? std::string("\"\"") : std::string(1, c);
  return cell + "\"";
}

void add_curves_on(const NamedRig& rig, const KnownShelf& shelf, std::string& table) {
  constexpr electrical::Band kDrawn{10, 100'000};
  constexpr int kFrequencies = 2'000;
  const auto band = electrical::common_band(kDrawn, electrical::known_band(rig.circuit.load));
  if (!band) return;
  const std::vector<double> frequency_hz = electrical::log_spaced(*band, kFrequencies);
  std::vector<electrical::Cable> cables{shelf.baseline.line.cable};
  for (const NamedLine& other : shelf.others) cables.push_back(other.line.cable);
  const electrical::Levels levels = electrical::levels_db(std::array{rig.circuit}, cables, frequency_hz);
  const auto baseline_db = levels.at(0, 0);
  for (std::size_t c = 0; c < cables.size(); ++c) {
    const std::string names = table_cell(rig.name) + "," +
                              table_cell(c == 0 ? shelf.baseline.name : shelf.others[c - 1].name) + ",";
    const auto level_db = levels.at(0, c);
    for (std::size_t i = 0; i < frequency_hz.size(); ++i)
      table += names + text::significant(frequency_hz[i], 6) + "," + text::fixed(level_db[i], 6) + "," +
               text::fixed(level_db[i] - baseline_db[i], 6) + "\n";
  }
}

}  // namespace

ShelfPrediction predict_shelf(const Path& file, const std::string& rig, const std::string& weighting) {
  const KnownShelf shelf = known_shelf(store::Campaign::open(file), rig);
  const hearing::Weighting& trim = hearing::find(weighting.empty() ? "pink-k" : weighting);
  ShelfPrediction prediction;
  prediction.baseline = shelf.baseline.name;
  prediction.weighting = trim.name;
  prediction.left_out = shelf.left_out;
  for (const NamedRig& on : shelf.rigs) {
    RigOfShelf& all = prediction.rigs.emplace_back(on.name, on.description);
    for (const NamedLine& other : shelf.others) all.swaps.push_back(swap_on(on, shelf.baseline, other, trim));
    std::ranges::stable_sort(all.swaps, std::greater(), [](const ShelfSwap& swap) {
      return swap.open ? std::max(std::abs(swap.open->level_difference_db.least),
                                  std::abs(swap.open->level_difference_db.greatest))
                       : std::abs(swap.difference_db);
    });
  }
  std::vector<NamedLine> lines{shelf.baseline};
  lines.insert(lines.end(), shelf.others.begin(), shelf.others.end());
  for (const NamedLine& each : lines) {
    if (has_unknown(each)) prediction.unknown.push_back(each.name);
    for (const std::string& caution : cautions_of(each.line))
      prediction.cautions.push_back(each.name + ": " + caution);
  }
  return prediction;
}

void write_curves(const Path& file, const std::string& rig, const Path& table, bool replace) {
  const KnownShelf shelf = known_shelf(store::Campaign::open(file), rig);
  std::string rows = "rig,cable,frequency_Hz,level_dB,difference_dB\n";
  for (const NamedRig& on : shelf.rigs) add_curves_on(on, shelf, rows);
  write_file(table, rows, replace);
}

}  // namespace desk
