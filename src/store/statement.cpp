#include <sqlite3.h>

#include "store/database.h"

namespace store {

void Statement::Finalize::operator()(sqlite3_stmt* statement) const { sqlite3_finalize(statement); }

Statement::Statement(const Database& database, std::string_view sql) : database_(&database) {
  sqlite3_stmt* statement = nullptr;
  const int code = sqlite3_prepare_v3(database.handle(), sql.data(), static_cast<int>(sql.size()),
                                      SQLITE_PREPARE_PERSISTENT, &statement, nullptr);
  statement_.reset(statement);
  require(code);
}

bool Statement::next() {
  const int code = sqlite3_step(statement_.get());
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) {
    reset();
    return false;
  }
  reset();
  database_->refuse_last_failure();
}

void Statement::run() {
  while (next()) {
  }
}

std::int64_t Statement::integer(int column) const { return sqlite3_column_int64(statement_.get(), column); }

std::string Statement::bytes(int column) const {
  const void* start = sqlite3_column_blob(statement_.get(), column);
  const int size = sqlite3_column_bytes(statement_.get(), column);
  return size == 0 ? std::string()
                   : std::string(static_cast<const char*>(start), static_cast<std::size_t>(size));
}

void Statement::reset() { sqlite3_reset(statement_.get()); }

void Statement::bind(int position, std::int64_t value) {
  require(sqlite3_bind_int64(statement_.get(), position, value));
}

void Statement::bind(int position, const std::string& text) {
  require(sqlite3_bind_text64(statement_.get(), position, text.data(), text.size(), SQLITE_TRANSIENT,
                              SQLITE_UTF8));
}

void Statement::bind(int position, const std::optional<std::string>& text) {
  if (text) return bind(position, *text);
  require(sqlite3_bind_null(statement_.get(), position));
}

void Statement::bind(int position, const std::optional<std::int64_t>& value) {
  if (value) return bind(position, *value);
  require(sqlite3_bind_null(statement_.get(), position));
}

void Statement::bind(int position, const Blob& blob) {
  // A null pointer would be NULL instead of no bytes.
  const char* start = blob.bytes.data() == nullptr ? "" : blob.bytes.data();
  require(sqlite3_bind_blob64(statement_.get(), position, start, blob.bytes.size(), SQLITE_STATIC));
}

void Statement::require(int code) const {
  if (code != SQLITE_OK) database_->refuse_last_failure();
}

}  // namespace store
