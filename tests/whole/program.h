#pragma once

#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

/// A folder for one test, gone with it.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "blindswap-test-XXXXXX").string();
    if (!mkdtemp(name.data())) throw std::runtime_error("no temporary folder");
    path_ = name;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }
  const std::filesystem::path& path() const { return path_; }

  std::filesystem::path write(const std::string& name, const std::string& content) const {
    std::ofstream(path_ / name, std::ios::binary) << content;
    return path_ / name;
  }

 private:
  std::filesystem::path path_;
};

inline std::string content_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

/// What a run of the program left behind.
struct Ran {
  int status = -1;  ///< exit status; 128 and more: ended by that signal
  std::string out, err;
};

/// Starts the program with its output in files of `folder`.
inline pid_t start_program(const Folder& folder, const std::vector<std::string>& words,
                           const std::string& input = "") {
  folder.write("stdin", input);
  const pid_t child = fork();
  if (child != 0) return child;
  if (chdir(folder.path().c_str()) != 0) _exit(126);
  const auto redirect = [](const char* name, int flags, int to) { dup2(open(name, flags, 0600), to); };
  redirect("stdin", O_RDONLY, 0);
  redirect("stdout", O_WRONLY | O_CREAT | O_TRUNC, 1);
  redirect("stderr", O_WRONLY | O_CREAT | O_TRUNC, 2);
  std::vector<char*> arguments = {const_cast<char*>("blindswap")};
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  execv(BLINDSWAP_PROGRAM, arguments.data());
  _exit(127);
}

inline Ran finished(const Folder& folder, pid_t child) {
  int status = 0;
  waitpid(child, &status, 0);
  return {WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status), content_of(folder / "stdout"),
          content_of(folder / "stderr")};
}

/// Runs the program in `folder` to its end.
inline Ran run_program(const Folder& folder, const std::vector<std::string>& words,
                       const std::string& input = "") {
  return finished(folder, start_program(folder, words, input));
}

/// Runs it and expects it to be done.
inline std::string expect_done(const Folder& folder, const std::vector<std::string>& words,
                               const std::string& input = "") {
  const Ran ran = run_program(folder, words, input);
  std::string all;
  for (const std::string& word : words) all += word + " ";
  EXPECT_EQ(ran.status, 0) << all << "\n" << ran.err;
  return ran.out;
}

/// The complete lines "kept ..." of the output: what was acknowledged.
inline std::vector<std::string> acknowledged(const std::string& out) {
  std::vector<std::string> lines;
  std::istringstream stream(out.substr(0, out.rfind('\n') + 1));
  for (std::string line; std::getline(stream, line);)
    if (line.starts_with("kept trial")) lines.push_back(line.substr(5));
  return lines;
}
