#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "import/reading.h"
#include "plan/sealed_plan.h"
#include "seal/digest.h"
#include "sitting/event_log.h"
#include "store/cable.h"
#include "store/rig.h"

namespace store {

class Database;

/// The text of an imported file, byte for byte.
struct SourceFile {
  std::string name;
  std::string sha256_hex;  ///< of `text`, 64 lower-case digits
  std::string text;

  bool operator==(const SourceFile&) const = default;
};

/// Why a reading no longer counts, and what counts instead.
struct Correction {
  int by = 0;  ///< number of another reading; 0 for none
  std::string why;
};

/// A reading with its number in the campaign: 1, 2, ... in the order of import.
struct NumberedReading {
  int number = 0;
  imported::Reading reading;
  std::optional<Correction> correction{};
};

/// Which readings are wanted; nothing stands for any, "" for those of no cable or no rig.
struct ReadingFilter {
  std::optional<std::string> cable{};
  std::optional<std::string> kind{};
  std::optional<std::string> rig{};
  bool superseded_too = false;  ///< those that were corrected as well
};

/// One investigation in one file. It only grows: nothing in it is ever changed or removed.
///
/// While it is open there are two more files beside it, FILE-wal and FILE-shm; when the campaign and its logs
/// are gone it is one file again. Whatever has been added survives a power cut from the moment the call
/// returns. One thread at a time; other processes may have the same file open.
///
/// Every call can throw
/// text::NotNow when the disk is full or failing, the file cannot be written or another program holds it:
/// nothing of the call is kept then, and everything from before is; text::BadInput when the file is damaged.
class Campaign {
 public:
  /// Starts a campaign in a new file.
  /// @throws text::BadInput when there is such a file, its folder does not exist, or the title is empty.
  /// @throws text::NotNow when the folder does not allow it, as under `open`; no file is left then.
  static Campaign create(const std::filesystem::path& file, const std::string& title);

  /// @throws text::BadInput when there is no such file, it is not a campaign, or a newer blindswap wrote it.
  /// @throws text::NotNow when the file or its folder cannot be written, or the folder has no shared memory
  ///         for a write-ahead log, as on a network share.
  static Campaign open(const std::filesystem::path& file);

  Campaign(Campaign&&) noexcept;
  Campaign& operator=(Campaign&&) noexcept;
  ~Campaign();

  std::string title() const;

  /// @throws text::BadInput for an empty name or one already taken.
  void add_cable(const Cable& cable);
  /// In the order in which they were added.
  std::vector<Cable> cables() const;

  /// Names the cable that the others are compared with; the last one named counts.
  /// @throws text::BadInput for a cable that is not there.
  void set_baseline(const std::string& cable);
  /// "" before one is named.
  std::string baseline() const;

  /// @throws text::BadInput for an empty name, one already taken, or another kind than those of `Rig`.
  void add_rig(const Rig& rig);
  /// In the order in which they were added.
  std::vector<Rig> rigs() const;

  /// Keeps readings and the files they came from: all of them or none. A reading that is kept already (same file, kind,
  /// cable, rig, piece, condition, feature, state and repeat) is left as it is.
  ///
  /// @param readings  each of a file in `sources` or kept before; its cable and rig are there or "".
  /// @param sources   the text of a file is kept once, under the name it first came with.
  /// @return  of each reading, whether it is new.
  /// @throws text::BadInput naming the reading: unknown cable or rig; kept already with another instrument or bandwidth.
  /// @throws std::invalid_argument when a checksum is not that of its text, or a reading's file is not there.
  std::vector<bool> add_readings(std::span<const imported::Reading> readings,
                                 std::span<const SourceFile> sources);

  /// From here on a reading counts no longer, and another one instead; or none, where the measurement cannot be had again.
  /// @throws text::BadInput for a number that is not there or superseded already, a reading of another kind, cable or rig,
  ///         an empty reason.
  void supersede(int number, std::optional<int> by, const std::string& why);

  /// By number.
  std::vector<NumberedReading> readings(const ReadingFilter& filter = {}) const;

  /// The imported file with this checksum.
  /// @throws text::BadInput when there is none, or its text no longer fits the checksum.
  SourceFile source(const std::string& sha256_hex) const;

  /// @throws text::BadInput for an empty name or one already taken.
  /// @throws std::invalid_argument when the commitment is not that of text and seed.
  void add_plan(const plan::SealedPlan& plan);
  /// In the order in which they were sealed.
  /// @throws text::BadInput when one no longer fits its commitment.
  std::vector<plan::SealedPlan> plans() const;
  /// @throws text::BadInput when there is none of this name, or it no longer fits its commitment.
  plan::SealedPlan plan(const std::string& name) const;

  /// The events of a plan; an event appended is one durable insert. The file stays open as long as the log.
  /// @throws text::BadInput when there is no such plan.
  std::unique_ptr<sitting::EventLog> log(const std::string& plan_name) const;

  /// 256 random bits from which the links of hosted sittings are made; drawn from the operating system when first asked
  /// for. They have nothing to do with any plan's seed.
  seal::Digest link_key();

  /// Does the work so that everything it adds is kept together: all of it, or none when it throws.
  ///
  ///     campaign.all_or_none([&] { campaign.add_plan(sealed); record_sealing(*campaign.log(name), ...); });
  void all_or_none(const std::function<void()>& work);

 private:
  explicit Campaign(std::shared_ptr<Database> database);

  std::shared_ptr<Database> database_;
};

}  // namespace store
