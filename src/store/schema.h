#pragma once

#include <filesystem>
#include <span>
#include <string>

#include "store/database.h"

namespace store {

/// The schema that this program writes.
inline constexpr int schema_version = 3;

/// SQLite's application id of a campaign: the letters "bswp".
inline constexpr int campaign_id = 0x62737770;

/// One step forward: the statements that turn schema `to - 1` into schema `to`.
struct Migration {
  int to = 0;
  std::string sql;
};

/// The steps from schema 1 to `schema_version`, in order.
std::span<const Migration> migrations();

/// Writes the schema and the title into an empty file, in one transaction.
void write_schema(Database& database, const std::string& title);

/// Refuses what is not a campaign or is newer than `newest`; changes nothing.
/// @return  the file's schema version.
int require_campaign(Database& database, int newest);

/// Takes an older file to the schema of the last step: first a copy beside it, named FILE.schema-N (N the
/// version it has), then all steps in one transaction.
/// @throws text::NotNow when there is a file of the copy's name already.
void migrate(Database& database, const std::filesystem::path& file, int version,
             std::span<const Migration> steps);

/// Refuses a campaign that lacks a table or one of the rules that guard it.
void require_whole(Database& database);

/// Settings of the connection: write-ahead log, full durability, foreign keys, distrust of the file's rules;
/// from here on it reads and adds, and nothing else.
/// @throws text::NotNow when the folder cannot hold a write-ahead log.
void prepare_connection(Database& database);

}  // namespace store
