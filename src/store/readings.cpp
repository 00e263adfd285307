#include <stdexcept>

#include "seal/digest.h"
#include "store/campaign.h"
#include "store/database.h"
#include "store/encoding.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/utf8.h"

namespace store {
namespace {

using imported::Reading;

std::optional<std::string> or_null(const std::string& name) {
  return name.empty() ? std::nullopt : std::optional(name);
}

std::string described(const Reading& reading) {
  std::string words = reading.kind + " of " + text::printable(reading.file);
  if (!reading.cable.empty()) words += ", cable " + text::quoted(reading.cable);
  if (!reading.rig.empty()) words += ", rig " + text::quoted(reading.rig);
  if (!reading.piece.empty()) words += ", piece " + text::quoted(reading.piece);
  if (!reading.condition.empty()) words += ", condition " + text::quoted(reading.condition);
  if (!reading.feature.empty())
    words += ", " + text::printable(reading.feature) + " " + text::quoted(reading.state);
  return words + ", repeat " + std::to_string(reading.repeat);
}

/// The questions asked about every reading before it is added, and the adding.
class Adder {
 public:
  explicit Adder(const Database& database)
      : database_(database),
        same_(
            database,
            "SELECT number, instrument, numbers FROM reading WHERE sha256 = ?1 AND cable IS ?2 AND rig IS ?3"
            " AND piece = ?4 AND condition = ?5 AND repeat = ?6 AND feature = ?7 AND state = ?8"
            " AND kind = ?9 AND as_typed = ?10"),
        source_(database, "SELECT 1 FROM source WHERE sha256 = ?1"),
        insert_(database,
                "INSERT INTO reading SELECT 1 + coalesce(max(number), 0), ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, "
                "?9, ?10,"
                " ?11, ?12, ?13, ?14, ?15 FROM reading") {}

  /// Whether it was not there yet.
  bool add(const Reading& reading) {
    require_known("cable", reading.cable, reading);
    require_known("rig", reading.rig, reading);
    if (!there(source_.with(reading.sha256_hex)))
      throw std::invalid_argument("the file of a reading is not there: " + described(reading));
    if (reading.columns.size() != reading.values.size())
      throw std::invalid_argument("a reading needs a column of numbers for each name: " + described(reading));
    const std::string numbers = bytes_of_columns(reading.values);
    if (is_there(reading, numbers)) return false;
    insert_
        .with(reading.kind, or_null(reading.cable), or_null(reading.rig), reading.piece, reading.condition,
              reading.repeat, reading.file, reading.sha256_hex, reading.note, text_of_names(reading.columns),
              text_of_pairs(reading.as_typed), Blob{numbers}, reading.instrument, reading.feature,
              reading.state)
        .run();
    return true;
  }

 private:
  static bool there(Statement& question) {
    const bool found = question.next();
    if (found) question.run();
    return found;
  }

  void require_known(const std::string& table, const std::string& name, const Reading& reading) const {
    if (name.empty()) return;
    std::vector<std::string> names;
    Statement rows(database_, "SELECT name FROM " + table + " ORDER BY name = ?1 DESC, number");
    rows.with(name);
    while (rows.next()) {
      names.push_back(rows.bytes(0));
      if (names.front() == name) return;
    }
    throw text::BadInput("there is no " + table + " " + text::quoted(name) + text::did_you_mean(name, names) +
                         "\nnothing was imported; the first reading of it is " + described(reading));
  }

  /// @throws text::BadInput when it is there, but with another instrument or other numbers.
  bool is_there(const Reading& reading, const std::string& numbers) {
    same_.with(reading.sha256_hex, or_null(reading.cable), or_null(reading.rig), reading.piece,
               reading.condition, reading.repeat, reading.feature, reading.state, reading.kind,
               text_of_pairs(reading.as_typed));
    if (!same_.next()) return false;
    if (same_.bytes(1) == reading.instrument && same_.bytes(2) == numbers) return true;
    throw text::BadInput("the reading is there already with another instrument or bandwidth, as number " +
                         std::to_string(same_.integer(0)) + ": " + described(reading) +
                         "\nnothing was imported; to correct it, import it under another repeat and let that "
                         "supersede it");
  }

  const Database& database_;
  Statement same_;
  Statement source_;
  Statement insert_;
};

void add_source(const Database& database, const SourceFile& source) {
  if (seal::to_hex(seal::sha256(source.text)) != source.sha256_hex)
    throw std::invalid_argument("the checksum of " + text::printable(source.name) +
                                " is not that of its text");
  Statement(database,
            "INSERT INTO source SELECT 1 + (SELECT coalesce(max(number), 0) FROM source), ?1, ?2, ?3"
            " WHERE NOT EXISTS (SELECT 1 FROM source WHERE sha256 = ?1)")
      .with(source.sha256_hex, source.name, Blob{source.text})
      .run();
}

Reading reading_of(const Statement& row) {
  Reading reading;
  reading.kind = row.bytes(1);
  reading.cable = row.bytes(2);
  reading.rig = row.bytes(3);
  reading.piece = row.bytes(4);
  reading.condition = row.bytes(5);
  reading.repeat = static_cast<int>(row.integer(6));
  reading.file = row.bytes(7);
  reading.sha256_hex = row.bytes(8);
  reading.note = row.bytes(9);
  reading.columns = names_of_text(row.bytes(10));
  reading.as_typed = pairs_of_text(row.bytes(11));
  reading.values = columns_of_bytes(row.bytes(12), reading.columns.size());
  reading.instrument = row.bytes(13);
  reading.feature = row.bytes(14);
  reading.state = row.bytes(15);
  return reading;
}

}  // namespace

std::vector<bool> Campaign::add_readings(std::span<const Reading> readings,
                                         std::span<const SourceFile> sources) {
  Transaction transaction(*database_);
  for (const SourceFile& source : sources) add_source(*database_, source);
  Adder adder(*database_);
  std::vector<bool> are_new;
  for (const Reading& reading : readings) are_new.push_back(adder.add(reading));
  transaction.keep();
  return are_new;
}

std::vector<NumberedReading> Campaign::readings(const ReadingFilter& filter) const {
  std::vector<NumberedReading> readings;
  Statement rows(*database_,
                 "SELECT reading.number, kind, cable, rig, piece, condition, repeat, file, sha256, note, "
                 "columns, as_typed,"
                 " numbers, instrument, feature, state, correction.number, replaced_by, why"
                 " FROM reading LEFT JOIN correction ON correction.reading = reading.number"
                 " WHERE (?1 IS NULL OR coalesce(cable, '') = ?1)"
                 " AND (?2 IS NULL OR kind = ?2) AND (?3 IS NULL OR coalesce(rig, '') = ?3)"
                 " AND (?4 OR correction.number IS NULL) ORDER BY reading.number");
  rows.with(filter.cable, filter.kind, filter.rig, int{filter.superseded_too});
  while (rows.next()) {
    NumberedReading& found = readings.emplace_back(static_cast<int>(rows.integer(0)), reading_of(rows));
    if (rows.integer(16) > 0) found.correction = {static_cast<int>(rows.integer(17)), rows.bytes(18)};
  }
  return readings;
}

void Campaign::supersede(int number, std::optional<int> by, const std::string& why) {
  const auto all = this->readings({.superseded_too = true});
  const auto reading = [&](int one) -> const NumberedReading& {
    if (one < 1 || one > static_cast<int>(all.size()))
      throw text::BadInput(
          "there is no reading " + std::to_string(one) + ": " +
          (all.empty() ? "none was imported yet" : "they are numbered 1 to " + std::to_string(all.size())));
    return all[static_cast<std::size_t>(one - 1)];
  };
  const auto require_current = [&](const NumberedReading& one) {
    if (one.correction)
      throw text::BadInput("reading " + std::to_string(one.number) + " is superseded already" +
                           (one.correction->by > 0 ? " by " + std::to_string(one.correction->by) : "") +
                           ": " + text::printable(one.correction->why));
  };
  require_current(reading(number));
  if (by) {
    const Reading &old = reading(number).reading, &fresh = reading(*by).reading;
    require_current(reading(*by));
    if (number == *by || old.kind != fresh.kind || old.cable != fresh.cable || old.rig != fresh.rig)
      throw text::BadInput("a reading is superseded by another of the same kind, cable and rig\n  reading " +
                           std::to_string(number) + " is " + described(old) + "\n  reading " +
                           std::to_string(*by) + " is " + described(fresh));
  }
  if (why.empty())
    throw text::BadInput("why reading " + std::to_string(number) + " is superseded must be said");
  Transaction transaction(*database_);
  Statement(*database_,
            "INSERT INTO correction SELECT 1 + coalesce(max(number), 0), ?1, ?2, ?3 FROM correction")
      .with(number, by ? std::optional(std::int64_t{*by}) : std::nullopt, why)
      .run();
  transaction.keep();
}

SourceFile Campaign::source(const std::string& sha256_hex) const {
  Statement row(*database_, "SELECT name, text FROM source WHERE sha256 = ?1");
  if (!row.with(sha256_hex).next())
    throw text::BadInput("no imported file has the checksum " + text::quoted(sha256_hex));
  SourceFile source{row.bytes(0), sha256_hex, row.bytes(1)};
  if (seal::to_hex(seal::sha256(source.text)) != sha256_hex)
    throw text::BadInput(
        "the imported file " + text::printable(source.name) +
        " does not fit its checksum: the campaign was changed by something other than blindswap\n"
        "go back to a copy that was made before");
  return source;
}

}  // namespace store
