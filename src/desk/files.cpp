#include "desk/files.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iterator>

#include "text/error.h"

namespace desk {
namespace {

/// Says why nothing could be written, and takes the half-written file away.
[[noreturn]] void refuse_writing(const std::filesystem::path& file, const std::filesystem::path& partial) {
  const std::string why = std::strerror(errno);
  std::error_code ignored;
  if (std::filesystem::is_regular_file(partial, ignored)) std::filesystem::remove(partial, ignored);
  throw text::NotNow("cannot write " + file.string() + ": " + why +
                     "\nchoose another place, or make room there");
}

/// Writes everything to `target` and onto the disk; `named` is the file as the user calls it.
void write_all(const std::filesystem::path& target, const std::string& content,
               const std::filesystem::path& named, int flags) {
  const int descriptor = ::open(target.c_str(), flags | O_CLOEXEC, 0666);
  if (descriptor < 0) refuse_writing(named, target);
  std::size_t written = 0;
  bool failed = false;
  while (written < content.size() && !failed) {
    const ssize_t count = ::write(descriptor, content.data() + written, content.size() - written);
    failed = count < 0 && errno != EINTR;
    if (count > 0) written += static_cast<std::size_t>(count);
  }
  failed = failed || (::fsync(descriptor) != 0 && errno != EINVAL);  // a device may not know fsync
  const int failure = errno;
  if (::close(descriptor) == 0 && !failed) return;
  if (failed) errno = failure;
  refuse_writing(named, target);
}

bool is_campaign(const std::filesystem::path& file) {
  char begin[16] = {};
  std::ifstream(file, std::ios::binary).read(begin, sizeof begin);
  return std::string(begin, sizeof begin) == std::string("SQLite format 3\0", 16);
}

}  // namespace

std::string read_file(const std::filesystem::path& file) {
  std::error_code ignored;
  if (std::filesystem::is_directory(file, ignored))
    throw text::BadInput(file.string() + " is a folder; name a file");
  std::ifstream stream(file, std::ios::binary);
  if (!stream) throw text::BadInput("cannot read " + file.string() + ": " + std::strerror(errno));
  std::string content{std::istreambuf_iterator<char>(stream), {}};
  if (stream.bad()) throw text::BadInput("cannot read " + file.string() + " to its end");
  return content;
}

void write_file(const std::filesystem::path& named, const std::string& content, bool replace) {
  std::error_code no_such_file;
  const auto resolved = std::filesystem::canonical(named, no_such_file);
  const std::filesystem::path file = no_such_file ? named : resolved;
  std::error_code ignored;
  const auto status = std::filesystem::status(file, ignored);
  if (std::filesystem::is_directory(status))
    throw text::BadInput(named.string() + " is a folder; name a file");
  if (std::filesystem::is_other(status)) return write_all(file, content, file, O_WRONLY);
  if (std::filesystem::exists(status)) {
    if (is_campaign(file)) throw text::BadInput(named.string() + " is a campaign; it is never written over");
    if (!replace && read_file(file) != content)
      throw text::BadInput(named.string() +
                           " exists already and holds something else\n"
                           "choose another name, or say --replace");
  }
  const std::filesystem::path partial = file.string() + ".partial-" + std::to_string(::getpid());
  write_all(partial, content, named, O_WRONLY | O_CREAT | O_EXCL);
  if (::rename(partial.c_str(), file.c_str()) != 0) refuse_writing(named, partial);
}

}  // namespace desk
