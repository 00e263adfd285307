#include "store/campaign.h"

#include <cerrno>
#include <cstdio>
#include <system_error>

#include "store/database.h"
#include "store/schema.h"
#include "text/error.h"
#include "text/utf8.h"

namespace store {
namespace {

namespace fs = std::filesystem;

std::string shown(const fs::path& file) { return text::printable(file.string()); }

void make_empty_file(const fs::path& file) {
  // "x": two programs that create the same campaign cannot both succeed.
  std::FILE* made = std::fopen(file.c_str(), "wx");
  if (made != nullptr) {
    std::fclose(made);
    return;
  }
  const int reason = errno;
  if (reason == EEXIST)
    throw text::BadInput(shown(file) +
                         " exists already\nchoose another name, or go on with the campaign in it");
  if (reason == ENOENT || reason == ENOTDIR)
    throw text::BadInput("cannot create " + shown(file) +
                         ": there is no such folder\ncreate the folder first");
  throw text::NotNow("cannot create " + shown(file) + ": " + std::generic_category().message(reason));
}

void remove_attempt(const fs::path& file) {
  std::error_code ignored;
  for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
    fs::path part = file;
    part += ending;
    fs::remove(part, ignored);
  }
}

void require_file(const fs::path& file) {
  std::error_code ignored;
  const fs::file_status status = fs::status(file, ignored);
  if (status.type() == fs::file_type::not_found)
    throw text::BadInput("there is no campaign " + shown(file) + "\nlook at the name, or create it");
  if (status.type() == fs::file_type::directory)
    throw text::BadInput(shown(file) + " is a folder\nname the campaign's file in it");
}

}  // namespace

Campaign::Campaign(std::shared_ptr<Database> database) : database_(std::move(database)) {}
Campaign::Campaign(Campaign&&) noexcept = default;
Campaign& Campaign::operator=(Campaign&&) noexcept = default;
Campaign::~Campaign() = default;

Campaign Campaign::create(const fs::path& file, const std::string& title) {
  if (title.empty()) throw text::BadInput("a campaign needs a title");
  make_empty_file(file);
  try {
    const auto database = std::make_shared<Database>(file);
    write_schema(*database, title);
    prepare_connection(*database);
    return Campaign(database);
  } catch (...) {
    remove_attempt(file);
    throw;
  }
}

Campaign Campaign::open(const fs::path& file) {
  require_file(file);
  const auto database = std::make_shared<Database>(file);
  const int version = require_campaign(*database, schema_version);
  if (version < schema_version) migrate(*database, file, version, migrations());
  prepare_connection(*database);
  require_whole(*database);
  return Campaign(database);
}

std::string Campaign::title() const {
  Statement title(*database_, "SELECT title FROM campaign");
  return title.next() ? title.bytes(0) : "";
}

void Campaign::all_or_none(const std::function<void()>& work) {
  Transaction transaction(*database_);
  work();
  transaction.keep();
}

}  // namespace store
