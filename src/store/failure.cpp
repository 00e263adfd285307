#include "store/failure.h"

#include <sqlite3.h>

#include <new>
#include <stdexcept>

#include "text/error.h"

namespace store {
namespace {

constexpr const char* kept = "\neverything acknowledged before is kept; ";

[[noreturn]] void refuse_disk(int code, const std::string& file) {
  switch (code) {
    case SQLITE_FULL:
    case SQLITE_IOERR_WRITE:
    case SQLITE_IOERR_FSYNC:
    case SQLITE_IOERR_TRUNCATE:
    case SQLITE_IOERR_SHMSIZE:
      throw text::NotNow("the disk is full or cannot be written: " + file + kept +
                         "make room and do this step again");
    default:
      throw text::NotNow("the disk fails: " + file + kept +
                         "put a copy of it on another disk and go on with that");
  }
}

}  // namespace

void refuse(int code, const std::string& file, const std::string& detail) {
  switch (code & 0xff) {
    case SQLITE_FULL:
    case SQLITE_IOERR:
      refuse_disk(code, file);
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      throw text::NotNow(file + " is in use: another program is writing to it\nnothing was added; try again");
    case SQLITE_READONLY:
    case SQLITE_PERM:
      throw text::NotNow(
          (code == SQLITE_READONLY_DIRECTORY ? "the folder of " : "") + file +
          " cannot be written\nallow writing, or copy the campaign to a folder of your own and use "
          "the copy");
    case SQLITE_CANTOPEN:
      throw text::NotNow(
          "cannot open " + file +
          "\na campaign must be readable and writable, and on a disk of this computer, not on a "
          "network share");
    case SQLITE_NOTADB:
      throw text::BadInput(file + " is not a campaign: it is another kind of file");
    case SQLITE_CORRUPT:
      throw text::BadInput(file + " is damaged\ngo back to a copy that was made before");
    case SQLITE_CONSTRAINT:
      if (code == SQLITE_CONSTRAINT_TRIGGER) throw text::NotNow(detail);
      throw text::BadInput(file + " refuses this: " + detail);
    case SQLITE_TOOBIG:
      throw text::BadInput(file + " cannot hold a text as long as this one");
    case SQLITE_NOMEM:
      throw std::bad_alloc();
    default:
      throw std::runtime_error(file + ": SQLite says: " + detail + " (" + std::to_string(code) + ")");
  }
}

}  // namespace store
