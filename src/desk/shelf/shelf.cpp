#include "desk/shelf/shelf.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "desk/files.h"
#include "desk/shelf/built.h"
#include "import/load_text.h"
#include "import/manifest.h"
#include "seal/digest.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/number.h"
#include "text/quantity.h"
#include "text/utf8.h"

namespace desk {
namespace {

std::string kept_number(const std::string& what, const std::string& typed, text::Unit unit,
                        bool may_be_zero) {
  if (typed.empty()) return "";
  double value = 0;
  try {
    value = text::quantity(typed, unit);
  } catch (const text::BadInput& error) {
    throw text::BadInput(what + ": " + error.what());
  }
  if (value < 0 || (value == 0 && !may_be_zero))
    throw text::BadInput(what + " must be " + (may_be_zero ? "0 or more" : "above 0") + ", got \"" + typed +
                         "\"");
  return text::shortest(value);
}

/// Refuses what is not one line of text.
void require_line(const std::string& what, const std::string& words) {
  if (!text::is_valid_utf8(words) ||
      std::any_of(words.begin(), words.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; }))
    throw text::BadInput(what + " must be one line of UTF-8 text, got " + text::quoted(words));
}

/// The characters refused have a meaning where cables are named together: heavy-pair/thin-pair, thin-pair=2.
void require_cable_name(const std::string& name) {
  require_line("the cable's name", name);
  constexpr std::size_t most = 80;
  if (text::length_in_characters(name) > most || name.find_first_of("/:=") != std::string::npos)
    throw text::BadInput("a cable's name must be at most 80 characters without / : or =, got " +
                         text::quoted(name));
}

/// Parsed files that wait to be kept together.
struct Batch {
  Imported result;
  std::vector<store::SourceFile> sources;
  std::string refusals;
  std::vector<imported::Reading> refused;  // their names alone
  std::set<std::string> cables_of_refused;
  bool all_cables_known = true;

  void add(const Path& file, const std::string& shown_name, const imported::Assignment& assignment) {
    std::string content;
    try {
      content = read_file(file);
      const std::string sha256_hex = seal::to_hex(seal::sha256(content));
      imported::Parsed parsed = imported::parse({shown_name, content}, assignment);
      for (imported::Reading& reading : parsed.readings) {
        reading.sha256_hex = sha256_hex;
        result.readings.push_back(std::move(reading));
      }
      result.warnings.insert(result.warnings.end(), parsed.warnings.begin(), parsed.warnings.end());
      sources.push_back({shown_name, sha256_hex, std::move(content)});
    } catch (const text::BadInput& error) {
      refuse(error.what());
      remember_names({shown_name, content}, assignment);
    }
  }

  /// So that a refused file hides no mistaken name, and a refused table of cables makes no name mistaken.
  void remember_names(const imported::Source& source, const imported::Assignment& assignment) {
    imported::Reading& names = refused.emplace_back();
    names.file = source.name;
    names.cable = assignment.cable;
    names.rig = assignment.rig;
    if (!assignment.cable.empty()) return;
    const imported::CablesNamed cables = imported::cables_named(source);
    cables_of_refused.insert(cables.names.begin(), cables.names.end());
    all_cables_known = all_cables_known && cables.all;
  }

  void refuse(const std::string& why) { refusals += (refusals.empty() ? "" : "\n") + why; }

  /// Refuses every name that is not there, once.
  void check_names(const std::string& what, std::string imported::Reading::*name,
                   const std::set<std::string>& known, const std::string& remedy) {
    std::set<std::string> told;
    std::vector<const imported::Reading*> all;
    for (const imported::Reading& reading : result.readings) all.push_back(&reading);
    for (const imported::Reading& reading : refused) all.push_back(&reading);
    for (const imported::Reading* reading : all) {
      const std::string& one = reading->*name;
      if (one.empty() || known.contains(one) || !told.insert(one).second) continue;
      refuse(text::printable(reading->file) + ": there is no " + what + " " + text::quoted(one) +
             text::did_you_mean(one, {known.begin(), known.end()}) + "\n" + remedy);
    }
  }

  void keep_new_ones(const std::vector<bool>& are_new) {
    std::vector<imported::Reading> fresh;
    for (std::size_t i = 0; i < are_new.size(); ++i)
      if (are_new[i]) fresh.push_back(std::move(result.readings[i]));
    result.there_already = static_cast<int>(result.readings.size() - fresh.size());
    result.readings = std::move(fresh);
  }

  /// A curve that was kept before under another repeat, from the same file or a copy of it.
  void warn_of_copies(const store::Campaign& campaign) {
    using Names = std::tuple<std::string, std::string, std::string, std::string>;
    const auto names_of = [](const imported::Reading& one) {
      return Names(one.kind, one.cable, one.rig, one.sha256_hex);
    };
    std::map<Names, store::NumberedReading> firsts;
    for (store::NumberedReading& each : campaign.readings()) {
      each.reading.values.clear();
      firsts.emplace(names_of(each.reading), std::move(each));
    }
    for (const imported::Reading& reading : result.readings) {
      const auto first = firsts.find(names_of(reading));
      if (reading.kind == "cable-lcr" || reading.kind == "phase" || first == firsts.end() ||
          first->second.reading.repeat == reading.repeat)
        continue;
      result.warnings.push_back(text::printable(reading.file) + ", repeat " + std::to_string(reading.repeat) +
                                ", is a copy of reading " + std::to_string(first->second.number) + " (" +
                                text::printable(first->second.reading.file) +
                                ")\n  a repeat is measured anew: supersede one of them");
    }
  }

  Imported keep_in(const Path& file) {
    store::Campaign campaign = store::Campaign::open(file);
    std::set<std::string> known;
    for (const store::Cable& cable : campaign.cables()) known.insert(cable.name);
    for (const imported::Reading& reading : result.readings)
      if (reading.kind == "cable-lcr" && known.insert(reading.cable).second) try {
          require_cable_name(reading.cable);
          result.new_cables.push_back(reading.cable);
        } catch (const text::BadInput& error) {
          refuse(text::printable(reading.file) + ": " + error.what());
        }
    known.insert(cables_of_refused.begin(), cables_of_refused.end());
    if (all_cables_known)
      check_names("cable", &imported::Reading::cable, known, "add it first, or import its table");
    std::set<std::string> rigs;
    for (const store::Rig& rig : campaign.rigs()) rigs.insert(rig.name);
    check_names("rig", &imported::Reading::rig, rigs, "add it first: blindswap rig");
    if (!refusals.empty()) {
      for (const std::string& warning : result.warnings) refuse(warning);
      throw text::BadInput(refusals + "\nnothing was imported");
    }
    campaign.all_or_none([&] {
      for (const std::string& name : result.new_cables) campaign.add_cable({name, {}, ""});
      keep_new_ones(campaign.add_readings(result.readings, sources));
    });
    warn_of_copies(campaign);
    return std::move(result);
  }
};

}  // namespace

void start_campaign(const Path& campaign, const std::string& title) {
  require_line("title", title);
  store::Campaign::create(campaign, title);
}

void add_cable(const Path& file, const store::Cable& cable, bool baseline) {
  require_cable_name(cable.name);
  require_line("the note", cable.note);
  for (const auto& [attribute, value] : cable.construction) require_line("--built", attribute + "=" + value);
  refuse_unless_buildable(cable);
  store::Campaign campaign = store::Campaign::open(file);
  campaign.all_or_none([&] {
    campaign.add_cable(cable);
    if (baseline) campaign.set_baseline(cable.name);
  });
}

void set_baseline(const Path& file, const std::string& cable) {
  store::Campaign::open(file).set_baseline(cable);
}

void add_rig(const Path& file, const RigTyped& typed) {
  require_line("the rig's name", typed.name);
  require_line("the level note", typed.level_note);
  require_line("the programme note", typed.programme_note);
  if (!typed.load.empty()) imported::parse_load(typed.load);
  store::Rig rig;
  rig.name = typed.name;
  rig.kind = typed.kind;
  rig.source_resistance_ohm = kept_number("source resistance", typed.source, text::Unit::ohm, true);
  rig.source_inductance_henry =
      kept_number("source inductance", typed.source_inductance, text::Unit::henry, true);
  rig.load = typed.load;
  rig.rated_impedance_ohm = kept_number("rated impedance", typed.rated_impedance, text::Unit::ohm, false);
  rig.volume_step_db = kept_number("volume step", typed.volume_step, text::Unit::decibel, false);
  rig.level_note = typed.level_note;
  rig.programme_note = typed.programme_note;
  store::Campaign::open(file).add_rig(rig);
}

Imported import_files(const Path& campaign, const std::vector<Path>& files,
                      const imported::Assignment& assignment) {
  Batch batch;
  for (const Path& file : files) batch.add(file, file.string(), assignment);
  return batch.keep_in(campaign);
}

Imported import_manifest(const Path& campaign, const Path& file,
                         const std::function<void(std::size_t, std::size_t)>& progress) {
  const imported::Manifest manifest = imported::parse_manifest(read_file(file), file.string());
  Batch batch;
  if (!manifest.problems.empty()) batch.refuse(manifest.problems.report());
  std::set<std::string> read;
  for (std::size_t i = 0; i < manifest.entries.size(); ++i) {
    const imported::ManifestEntry& entry = manifest.entries[i];
    if (progress) progress(i, manifest.entries.size());
    if (entry.file.empty() || !read.insert(entry.file).second) continue;
    batch.add(file.parent_path() / entry.file, (file.parent_path() / entry.file).string(), entry.assignment);
  }
  return batch.keep_in(campaign);
}

void supersede(const Path& file, int number, std::optional<int> by, const std::string& why) {
  require_line("the reason", why);
  store::Campaign::open(file).supersede(number, by, why);
}

Inventory inventory(const Path& file) {
  const store::Campaign campaign = store::Campaign::open(file);
  return {campaign.title(), campaign.baseline(), campaign.cables(), campaign.rigs(), campaign.readings()};
}

}  // namespace desk
