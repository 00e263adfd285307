#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace store {

/// Bytes to be bound as they are; they must live until the statement has run.
struct Blob {
  std::string_view bytes;
};

/// An existing SQLite file, open for reading and writing. Failures are thrown by `refuse` (store/failure.h).
class Database {
 public:
  explicit Database(const std::filesystem::path& file);
  /// Brings everything into the one file, as far as other programs that have it open allow.
  ~Database();
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;

  /// Runs statements without arguments or results.
  void run(const std::string& sql);

  /// From here on this connection adds rows and reads them, and can do nothing else.
  void only_grow();

  [[noreturn]] void refuse_last_failure() const;

  /// The file's name fit for a message.
  const std::string& shown() const { return shown_; }
  sqlite3* handle() const { return handle_.get(); }

 private:
  struct Close {
    void operator()(sqlite3* handle) const;
  };
  std::string shown_;
  std::unique_ptr<sqlite3, Close> handle_;
};

/// A prepared statement.
///
///     Statement names(database, "SELECT name FROM cable WHERE number > ?1");
///     names.with(3);
///     while (names.next()) use(names.bytes(0));
class Statement {
 public:
  Statement(const Database& database, std::string_view sql);

  /// Starts anew with these arguments.
  template <class... Values>
  Statement& with(const Values&... values) {
    reset();
    int position = 0;
    (bind(++position, values), ...);
    return *this;
  }

  /// Goes to the next row; false, and the statement is at rest, when there is none.
  bool next();

  /// Runs to the end.
  void run();

  /// The value of a column of this row, counted from 0.
  std::int64_t integer(int column) const;
  /// Text or blob; "" for NULL.
  std::string bytes(int column) const;

 private:
  void reset();
  void bind(int position, std::int64_t value);
  void bind(int position, int value) { bind(position, std::int64_t{value}); }
  void bind(int position, const std::string& text);
  void bind(int position, const std::optional<std::string>& text);
  void bind(int position, const std::optional<std::int64_t>& value);
  void bind(int position, const Blob& blob);
  void require(int code) const;

  struct Finalize {
    void operator()(sqlite3_stmt* statement) const;
  };
  const Database* database_;
  std::unique_ptr<sqlite3_stmt, Finalize> statement_;
};

/// A write transaction, or a savepoint within the one that is running. Undone unless `keep` was called.
class Transaction {
 public:
  explicit Transaction(Database& database);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;

  void keep();

 private:
  Database& database_;
  bool nested_;
  bool open_ = true;
};

}  // namespace store
