#pragma once

#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cmath>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "reference/call.h"

/// Puts many calls of a function to R or to Python at once: ask.R and ask.py.
namespace reference {

inline bool runs(const std::string& command) {
  return std::system((command + " > /dev/null 2>&1").c_str()) == 0;
}

inline bool has_r() {
  static const bool has = runs("Rscript --version");
  return has;
}

/// Whether R has a package.
inline bool has_package(const std::string& name) {
  static std::map<std::string, bool> known;
  const auto [found, is_new] = known.try_emplace(name);
  if (is_new)
    found->second =
        runs("Rscript --vanilla -e 'quit(status = !nzchar(system.file(package = \"" + name + "\")))'");
  return found->second;
}

/// A Python that has SciPy, "" for none: the first on the path may be another than the system's.
inline const std::string& python_with_scipy() {
  static const std::string found = [] {
    for (const std::string python : {PYTHON3, "/usr/bin/python3", "python3"})
      if (runs(python + " -c 'import importlib.util as u, sys; sys.exit(not u.find_spec(\"scipy\"))'"))
        return python;
    return std::string();
  }();
  return found;
}

/// A temporary folder, removed at the end.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "blindswap-reference-XXXXXX").string();
    if (!mkdtemp(name.data())) throw std::runtime_error("no temporary folder");
    path_ = name;
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::string file(const std::string& name) const { return (path_ / name).string(); }

 private:
  std::filesystem::path path_;
};

inline std::string spaced(const Numbers& numbers) {
  std::ostringstream text;
  text << std::hexfloat;
  for (std::size_t i = 0; i < numbers.size(); ++i) text << (i == 0 ? "" : " ") << numbers[i];
  return text.str();
}

inline void write_calls(const std::string& path, const std::string& header, const std::vector<Call>& calls) {
  std::ofstream file(path);
  file << header << '\n';
  for (const Call& call : calls) {
    for (std::size_t i = 0; i < call.arguments.size(); ++i)
      file << (i == 0 ? "\"" : ",\"") << spaced(call.arguments[i]) << '"';
    file << '\n';
  }
}

inline std::vector<Numbers> read_answers(const std::string& path) {
  std::ifstream file(path);
  std::vector<Numbers> answers;
  for (std::string line; std::getline(file, line);) {
    std::istringstream words(line);
    Numbers& numbers = answers.emplace_back();
    for (std::string word; words >> word;)
      numbers.push_back(word == "NA" ? kNothing : std::strtod(word.c_str(), nullptr));
  }
  return answers;
}

/// R or Python, which answers one question after the other, since it takes long to start.
class Interpreter {
 public:
  explicit Interpreter(const std::string& command) {
    std::signal(SIGPIPE, SIG_IGN);  // a script that failed reads no more
    const std::string questions = folder_.file("questions");
    if (mkfifo(questions.c_str(), 0600) != 0) throw std::runtime_error("no pipe");
    replies_ = popen((command + " < '" + questions + "'").c_str(), "r");
    questions_.open(questions);
  }
  ~Interpreter() {
    questions_ << "end" << std::endl;
    pclose(replies_);
  }
  Interpreter(const Interpreter&) = delete;
  Interpreter& operator=(const Interpreter&) = delete;

  /// Whether the question was answered; if not, what went wrong is on the terminal.
  bool answers(const std::string& question) {
    questions_ << question << std::endl;
    std::array<char, 16> reply{};
    return std::fgets(reply.data(), reply.size(), replies_) != nullptr &&
           reply.data() == std::string_view("done\n");
  }

 private:
  Folder folder_;
  FILE* replies_;
  std::ofstream questions_;
};

inline const std::string kHere = SOURCE_FOLDER "/tests/reference/";

inline std::unique_ptr<Interpreter>& interpreter(bool in_r) {
  static std::unique_ptr<Interpreter> r, python;
  auto& one = in_r ? r : python;
  if (!one)
    one = std::make_unique<Interpreter>(in_r ? "Rscript --vanilla '" + kHere + "ask.R'"
                                             : "'" + python_with_scipy() + "' -B -W error::RuntimeWarning '" +
                                                   kHere + "ask.py'");
  return one;
}

/// What the reference gives for each call.
inline std::vector<Numbers> ask(const Function& function, const std::vector<Call>& calls) {
  const Folder folder;
  const std::string table = folder.file("calls.csv"), list = folder.file("answers.txt");
  write_calls(table, function.arguments, calls);
  auto& reference = interpreter(function.script.ends_with(".R"));
  if (!reference->answers(kHere + function.script + '\t' + function.name + '\t' + table + '\t' + list)) {
    reference.reset();
    throw std::runtime_error(function.script + ": " + function.name + " failed");
  }
  auto answers = read_answers(list);
  if (answers.size() != calls.size())
    throw std::runtime_error(function.script + ": not an answer for each call");
  return answers;
}

}  // namespace reference
