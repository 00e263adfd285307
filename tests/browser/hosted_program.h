#pragma once

#include <map>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "browser/browser.h"
#include "whole/program.h"

namespace browser {

/// The program hosting sitting 1 of the campaign in a folder.
class HostedProgram {
 public:
  explicit HostedProgram(const Folder& folder, std::vector<std::string> options = {})
      : folder_(folder), options_(std::move(options)) {
    start("0");
  }
  ~HostedProgram() {
    if (process_ > 0) stop(SIGKILL);
  }

  void start(const std::string& port) {
    std::vector<std::string> words = {"sitting", "host", "1", "--no-qr", "--port", port};
    words.insert(words.end(), options_.begin(), options_.end());
    std::filesystem::remove(folder_ / "stdout");  // what a program before this one said
    process_ = start_program(folder_, words);
    EXPECT_TRUE(eventually([&] { return said().find("Ctrl-C stops") != std::string::npos; }))
        << content_of(folder_ / "stderr");
    links_.clear();
    std::istringstream lines(said());
    for (std::string who, link; lines >> who >> link;)
      if (link.starts_with("http://")) links_[who] = link;
  }
  void kill_and_start_again() {
    const std::string before = said(), address = links_.at("helper");
    const auto colon = address.rfind(':');
    EXPECT_EQ(stop(SIGKILL), 128 + SIGKILL);
    start(address.substr(colon + 1, address.find('/', colon) - colon - 1));
    EXPECT_EQ(said(), before) << "the same links";
  }
  int stop(int signal) {
    kill(process_, signal);
    const Ran ran = finished(folder_, process_);
    process_ = 0;
    return ran.status;
  }

  std::string link(const std::string& who) const { return links_.at(who); }

 private:
  std::string said() const { return content_of(folder_ / "stdout"); }

  const Folder& folder_;
  std::vector<std::string> options_;
  pid_t process_ = 0;
  std::map<std::string, std::string> links_;
};

/// On the organiser's page after the end: gives the chain head away, unseals, and opens the report.
inline void unseal_and_open_report(Browser& organiser) {
  organiser.type("#to", "the treasurer");
  organiser.click("#handover button");
  EXPECT_TRUE(eventually([&] {
    return organiser.run("return document.querySelector('#to').value").get<std::string>().empty();
  }));
  organiser.click("#unseal");
  organiser.click("#report a");
}

}  // namespace browser
