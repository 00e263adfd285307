#include "store/database.h"

#include <sqlite3.h>

#include "store/failure.h"
#include "text/utf8.h"

namespace store {
namespace {

constexpr int wait_for_others_ms = 2000;

int only_adding_and_reading(void*, int action, const char*, const char*, const char*, const char*) {
  switch (action) {
    case SQLITE_SELECT:
    case SQLITE_READ:
    case SQLITE_INSERT:
    case SQLITE_FUNCTION:
    case SQLITE_TRANSACTION:
    case SQLITE_SAVEPOINT:
    case SQLITE_RECURSIVE:
      return SQLITE_OK;
    default:
      return SQLITE_DENY;
  }
}

}  // namespace

void Database::Close::operator()(sqlite3* handle) const {
  sqlite3_set_authorizer(handle, nullptr, nullptr);
  sqlite3_busy_timeout(handle, 0);
  sqlite3_wal_checkpoint_v2(handle, nullptr, SQLITE_CHECKPOINT_TRUNCATE, nullptr, nullptr);
  sqlite3_close(handle);
}

Database::Database(const std::filesystem::path& file) : shown_(text::printable(file.string())) {
  // An absolute path, because SQLite gives names that start with "file:" or ":" a meaning of their own.
  const std::string path = std::filesystem::absolute(file).string();
  sqlite3* handle = nullptr;
  const int code =
      sqlite3_open_v2(path.c_str(), &handle, SQLITE_OPEN_READWRITE | SQLITE_OPEN_EXRESCODE, nullptr);
  handle_.reset(handle);
  if (code != SQLITE_OK) refuse(code, shown_, handle == nullptr ? "" : sqlite3_errmsg(handle));
  if (sqlite3_db_readonly(handle, "main") != 0) refuse(SQLITE_READONLY, shown_, "");
  sqlite3_busy_timeout(handle, wait_for_others_ms);
}

Database::~Database() = default;

void Database::run(const std::string& sql) {
  if (sqlite3_exec(handle(), sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) refuse_last_failure();
}

void Database::only_grow() { sqlite3_set_authorizer(handle(), only_adding_and_reading, nullptr); }

void Database::refuse_last_failure() const {
  refuse(sqlite3_extended_errcode(handle()), shown_, sqlite3_errmsg(handle()));
}

Transaction::Transaction(Database& database)
    : database_(database), nested_(sqlite3_get_autocommit(database.handle()) == 0) {
  database_.run(nested_ ? "SAVEPOINT part" : "BEGIN IMMEDIATE");
}

Transaction::~Transaction() {
  // Nothing is left to undo when SQLite itself has given up the whole transaction.
  if (!open_ || sqlite3_get_autocommit(database_.handle()) != 0) return;
  sqlite3_exec(database_.handle(), nested_ ? "ROLLBACK TO part; RELEASE part" : "ROLLBACK", nullptr, nullptr,
               nullptr);
}

void Transaction::keep() {
  database_.run(nested_ ? "RELEASE part" : "COMMIT");
  open_ = false;
}

}  // namespace store
