#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "import/import.h"
#include "store/cable.h"
#include "store/campaign.h"
#include "store/rig.h"

/// One function for each thing that a user does. They print nothing: what there is to say is returned.
namespace desk {

using Path = std::filesystem::path;

void start_campaign(const Path& campaign, const std::string& title);

/// Adds a cable; with `baseline` it becomes the one the others are compared with.
/// @throws text::BadInput for a pair or coaxial cable with a dimension that cannot be read (`built.h`).
void add_cable(const Path& campaign, const store::Cable& cable, bool baseline);

void set_baseline(const Path& campaign, const std::string& cable);

/// A rig as typed, with units.
struct RigTyped {
  std::string name;
  std::string kind = "loudspeaker";
  std::string source;             ///< "0.1ohm"
  std::string source_inductance;  ///< "2uH", may be ""
  std::string load;               ///< see imported::parse_load; "" for an impedance reading of this rig
  std::string rated_impedance;    ///< "8ohm", may be ""
  std::string volume_step;        ///< "0.5dB", may be ""
  std::string level_note;
  std::string programme_note;
};

/// @throws text::BadInput for a quantity without its unit or of the wrong kind.
void add_rig(const Path& campaign, const RigTyped& typed);

/// What an import kept, and what looks odd.
struct Imported {
  std::vector<imported::Reading> readings;  ///< the new ones
  int there_already = 0;                    ///< left as they were
  std::vector<std::string> warnings;
  std::vector<std::string> new_cables;  ///< named by a file, added to the campaign with it
};

/// Imports files of readings, all or none. Cables that only the files name are added.
Imported import_files(const Path& campaign, const std::vector<Path>& files,
                      const imported::Assignment& assignment);

/// Imports every file of a manifest, all or none. Files are looked for beside the manifest.
/// @param progress  called before each file with how many are read and how many there are.
Imported import_manifest(const Path& campaign, const Path& manifest,
                         const std::function<void(std::size_t, std::size_t)>& progress = {});

/// From here on reading `number` counts no longer, and reading `by` instead where there is one.
/// @throws text::BadInput  as store::Campaign::supersede.
void supersede(const Path& campaign, int number, std::optional<int> by, const std::string& why);

/// Everything on the shelf.
struct Inventory {
  std::string title, baseline;
  std::vector<store::Cable> cables;
  std::vector<store::Rig> rigs;
  std::vector<store::NumberedReading> readings;
};

Inventory inventory(const Path& campaign);

}  // namespace desk
