#pragma once

#include <sqlite3.h>

#include <limits>
#include <new>

namespace store_test {

/// The disk as SQLite sees it, with a limit: after a number of further writes, syncs and truncations every one
/// fails, and a write that fails has written half of its bytes. SQLite's default as long as it lives; campaigns
/// opened through it must be gone before it is.
///
///     FailingVfs disk;
///     disk.fail_after(3);
///     EXPECT_THROW(campaign.add_cable(cable), text::NotNow);
///     disk.work();
class FailingVfs {
 public:
  /// What a failing call answers: a full disk says SQLITE_FULL, a broken one what it could not do.
  enum class Fault { full, broken };

  FailingVfs() : real_(sqlite3_vfs_find(nullptr)), vfs_(*real_) {
    vfs_.iVersion = 2;
    vfs_.szOsFile = static_cast<int>(sizeof(File)) + real_->szOsFile;
    vfs_.zName = "failing";
    vfs_.pAppData = this;
    vfs_.xOpen = open;
    vfs_.xDelete = [](sqlite3_vfs* vfs, const char* name, int sync) {
      return of(vfs)->xDelete(of(vfs), name, sync);
    };
    vfs_.xAccess = [](sqlite3_vfs* vfs, const char* name, int flags, int* answer) {
      return of(vfs)->xAccess(of(vfs), name, flags, answer);
    };
    vfs_.xFullPathname = [](sqlite3_vfs* vfs, const char* name, int size, char* full) {
      return of(vfs)->xFullPathname(of(vfs), name, size, full);
    };
    sqlite3_vfs_register(&vfs_, 1);
  }
  ~FailingVfs() { sqlite3_vfs_unregister(&vfs_); }
  FailingVfs(const FailingVfs&) = delete;
  FailingVfs& operator=(const FailingVfs&) = delete;

  void fail_after(int steps, Fault fault = Fault::full) {
    left_ = steps;
    fault_ = fault;
    failed_ = false;
  }
  void work() { left_ = std::numeric_limits<int>::max(); }
  /// Whether anything failed since `fail_after`.
  bool failed() const { return failed_; }
  /// Writes, syncs and truncations asked for so far.
  int steps() const { return steps_; }
  int syncs() const { return syncs_; }

  /// Files opened from now on have no shared memory, as on a network share.
  void refuse_shared_memory() { shared_memory_ = false; }

 private:
  struct File {
    sqlite3_file base;
    FailingVfs* disk;
    sqlite3_io_methods methods;
    sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
  };

  static sqlite3_vfs* of(sqlite3_vfs* vfs) { return static_cast<FailingVfs*>(vfs->pAppData)->real_; }
  static File* of(sqlite3_file* file) { return reinterpret_cast<File*>(file); }
  static sqlite3_file* real(sqlite3_file* file) { return of(file)->real(); }

  /// One more step that needs the disk; not SQLITE_OK when the disk has had enough.
  int spend(int code_when_broken) {
    ++steps_;
    if (left_ > 0) {
      --left_;
      return SQLITE_OK;
    }
    failed_ = true;
    return fault_ == Fault::full ? SQLITE_FULL : code_when_broken;
  }

  static int open(sqlite3_vfs* vfs, const char* name, sqlite3_file* place, int flags, int* out_flags) {
    auto* disk = static_cast<FailingVfs*>(vfs->pAppData);
    File* file = new (place) File{};
    const int code = disk->real_->xOpen(disk->real_, name, file->real(), flags, out_flags);
    if (file->real()->pMethods == nullptr) return code;
    file->disk = disk;
    file->methods = methods(disk->shared_memory_ ? 2 : 1);
    file->base.pMethods = &file->methods;
    return code;
  }

  static int write(sqlite3_file* file, const void* bytes, int size, sqlite3_int64 at) {
    const int code = of(file)->disk->spend(SQLITE_IOERR_WRITE);
    if (code == SQLITE_OK) return real(file)->pMethods->xWrite(real(file), bytes, size, at);
    real(file)->pMethods->xWrite(real(file), bytes, size / 2, at);
    return code;
  }

  static int sync(sqlite3_file* file, int flags) {
    ++of(file)->disk->syncs_;
    const int code = of(file)->disk->spend(SQLITE_IOERR_FSYNC);
    return code == SQLITE_OK ? real(file)->pMethods->xSync(real(file), flags) : code;
  }

  static int truncate(sqlite3_file* file, sqlite3_int64 size) {
    const int code = of(file)->disk->spend(SQLITE_IOERR_TRUNCATE);
    return code == SQLITE_OK ? real(file)->pMethods->xTruncate(real(file), size) : code;
  }

  static int map_shared(sqlite3_file* file, int page, int size, int extend, void volatile** memory) {
    if (extend != 0 && of(file)->disk->spend(SQLITE_IOERR_SHMSIZE) != SQLITE_OK) return SQLITE_IOERR_SHMSIZE;
    return real(file)->pMethods->xShmMap(real(file), page, size, extend, memory);
  }

  static sqlite3_io_methods methods(int version) {
    sqlite3_io_methods all{};
    all.iVersion = version;
    all.xClose = [](sqlite3_file* f) { return real(f)->pMethods->xClose(real(f)); };
    all.xRead = [](sqlite3_file* f, void* b, int n, sqlite3_int64 at) {
      return real(f)->pMethods->xRead(real(f), b, n, at);
    };
    all.xWrite = write;
    all.xTruncate = truncate;
    all.xSync = sync;
    all.xFileSize = [](sqlite3_file* f, sqlite3_int64* n) {
      return real(f)->pMethods->xFileSize(real(f), n);
    };
    all.xLock = [](sqlite3_file* f, int level) { return real(f)->pMethods->xLock(real(f), level); };
    all.xUnlock = [](sqlite3_file* f, int level) { return real(f)->pMethods->xUnlock(real(f), level); };
    all.xCheckReservedLock = [](sqlite3_file* f, int* out) {
      return real(f)->pMethods->xCheckReservedLock(real(f), out);
    };
    all.xFileControl = [](sqlite3_file* f, int what, void* argument) {
      return real(f)->pMethods->xFileControl(real(f), what, argument);
    };
    all.xSectorSize = [](sqlite3_file* f) { return real(f)->pMethods->xSectorSize(real(f)); };
    all.xDeviceCharacteristics = [](sqlite3_file* f) {
      return real(f)->pMethods->xDeviceCharacteristics(real(f));
    };
    if (version < 2) return all;
    all.xShmMap = map_shared;
    all.xShmLock = [](sqlite3_file* f, int offset, int n, int flags) {
      return real(f)->pMethods->xShmLock(real(f), offset, n, flags);
    };
    all.xShmBarrier = [](sqlite3_file* f) { real(f)->pMethods->xShmBarrier(real(f)); };
    all.xShmUnmap = [](sqlite3_file* f, int remove) { return real(f)->pMethods->xShmUnmap(real(f), remove); };
    return all;
  }

  sqlite3_vfs* real_;
  sqlite3_vfs vfs_;
  int left_ = std::numeric_limits<int>::max();
  Fault fault_ = Fault::full;
  bool failed_ = false;
  bool shared_memory_ = true;
  int steps_ = 0;
  int syncs_ = 0;
};

}  // namespace store_test
