#pragma once

#include <gtest/gtest.h>
#include <sqlite3.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "seal/chain.h"
#include "seal/commitment.h"
#include "seal/digest.h"
#include "store/campaign.h"
#include "text/error.h"

/// The statement throws exactly this error with exactly this text.
#define EXPECT_REFUSAL(statement, Error, words)                     \
  try {                                                             \
    statement;                                                      \
    ADD_FAILURE() << "not refused: " #statement;                    \
  } catch (const Error& error) {                                    \
    EXPECT_EQ(std::string(error.what()), std::string(words));       \
  } catch (const std::exception& error) {                           \
    ADD_FAILURE() << "refused as something else: " << error.what(); \
  }

namespace store_test {

/// A folder of the test's own, gone with it. In memory where that can be had: what is asked is which bytes
/// are written and synced, not how long a disk takes.
class Folder {
 public:
  Folder() {
    const std::filesystem::path memory = "/dev/shm";
    const bool usable = access(memory.c_str(), W_OK) == 0;
    std::string name = ((usable ? memory : std::filesystem::temp_directory_path()) / "store-XXXXXX").string();
    path_ = mkdtemp(name.data());
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }
  const std::filesystem::path& path() const { return path_; }
  long files() const { return std::distance(std::filesystem::directory_iterator(path_), {}); }

 private:
  std::filesystem::path path_;
};

inline void write_file(const std::filesystem::path& file, const std::string& bytes) {
  std::ofstream(file, std::ios::binary) << bytes;
}

inline std::string read_file(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

inline plan::SealedPlan sealed_plan(const std::string& name) {
  plan::SealedPlan plan{name, R"({"name":")" + name + R"("})", seal::sha256("seed of " + name), {}};
  plan.commitment = seal::commitment(plan.text, plan.seed);
  return plan;
}

/// The events 1, 2, ... of a sitting, each a link of the chain.
class Links {
 public:
  Links(const plan::SealedPlan& plan, int sitting) : head_(seal::chain_start(plan.commitment, sitting)) {}

  sitting::LoggedEvent next(const std::string& words = "") {
    const std::string text = R"({"number":)" + std::to_string(++number_) + R"(,"words":")" + words + R"("})";
    head_ = seal::chain_next(head_, text);
    return {text, seal::to_hex(head_)};
  }
  int number() const { return number_; }

 private:
  seal::Digest head_;
  int number_ = 0;
};

/// Reads a sitting and checks every link; the number of its events.
inline int whole_chain(const sitting::EventLog& log, const plan::SealedPlan& plan, int sitting) {
  Links links(plan, sitting);
  for (const sitting::LoggedEvent& event : log.events(sitting)) {
    const std::string start = R"({"number":)" + std::to_string(links.number() + 1) + ",";
    EXPECT_EQ(event.text.substr(0, start.size()), start);
    const std::size_t from = event.text.find(R"("words":")") + 9;
    EXPECT_EQ(links.next(event.text.substr(from, event.text.size() - from - 2)).head_hex, event.head_hex);
  }
  return links.number();
}

/// Another program at the same file.
class Stranger {
 public:
  explicit Stranger(const std::filesystem::path& file) {
    sqlite3_open_v2(file.c_str(), &handle_, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr);
  }
  ~Stranger() { sqlite3_close(handle_); }
  Stranger(const Stranger&) = delete;
  Stranger& operator=(const Stranger&) = delete;

  /// "" when done, else SQLite's words.
  std::string run(const std::string& sql) {
    return sqlite3_exec(handle_, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK
               ? ""
               : sqlite3_errmsg(handle_);
  }

  /// The first column of all rows, one a line.
  std::string ask(const std::string& sql) {
    std::string lines;
    sqlite3_exec(
        handle_, sql.c_str(),
        [](void* out, int, char** cells, char**) {
          *static_cast<std::string*>(out) += std::string(cells[0] == nullptr ? "NULL" : cells[0]) + "\n";
          return 0;
        },
        &lines, nullptr);
    return lines;
  }

 private:
  sqlite3* handle_ = nullptr;
};

/// As somebody who is not the administrator, for whom permissions count.
class OrdinaryUser {
 public:
  OrdinaryUser() : before_(geteuid()) {
    if (before_ == 0) become(65534);
  }
  ~OrdinaryUser() {
    if (before_ == 0) become(before_);
  }
  OrdinaryUser(const OrdinaryUser&) = delete;
  OrdinaryUser& operator=(const OrdinaryUser&) = delete;

 private:
  static void become(uid_t user) { EXPECT_EQ(seteuid(user), 0); }

  uid_t before_;
};

}  // namespace store_test
