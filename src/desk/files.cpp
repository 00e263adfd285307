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

[[noreturn]] void refuse_writing(const std::filesystem::path& file, const std::string& partial) {
  const std::string why = std::strerror(errno);
  ::unlink(partial.c_str());
  throw text::NotNow("cannot write " + file.string() + ": " + why +
                     "\nchoose another place, or make room there");
}

}  // namespace

std::string read_file(const std::filesystem::path& file) {
  if (std::filesystem::is_directory(file)) throw text::BadInput(file.string() + " is a folder; name a file");
  std::ifstream stream(file, std::ios::binary);
  if (!stream) throw text::BadInput("cannot read " + file.string() + ": " + std::strerror(errno));
  std::string content{std::istreambuf_iterator<char>(stream), {}};
  if (stream.bad()) throw text::BadInput("cannot read " + file.string() + " to its end");
  return content;
}

void write_file(const std::filesystem::path& file, const std::string& content) {
  const std::string partial = file.string() + ".partial";
  const int descriptor = ::open(partial.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
  if (descriptor < 0) refuse_writing(file, partial);
  std::size_t written = 0;
  while (written < content.size()) {
    const ssize_t count = ::write(descriptor, content.data() + written, content.size() - written);
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) {
      const int failure = errno;
      ::close(descriptor);
      errno = failure;
      refuse_writing(file, partial);
    }
    written += static_cast<std::size_t>(count);
  }
  const bool synced = ::fsync(descriptor) == 0;
  if (::close(descriptor) != 0 || !synced) refuse_writing(file, partial);
  if (::rename(partial.c_str(), file.c_str()) != 0) refuse_writing(file, partial);
}

}  // namespace desk
