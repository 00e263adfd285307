#pragma once

#include <fcntl.h>
#include <gtest/gtest.h>
#include <httplib.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <nlohmann/json.hpp>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

namespace browser {

using nlohmann::json;

/// Waits until the condition holds. @return false after 30 seconds.
inline bool eventually(const std::function<bool()>& condition) {
  const auto patience = std::chrono::steady_clock::now() + std::chrono::seconds(30);
  while (!condition()) {
    if (std::chrono::steady_clock::now() > patience) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(50));
  }
  return true;
}

/// The driver's program, spoken to by the W3C WebDriver protocol; ended with this object.
class Driver {
 public:
  Driver() {
    int ends[2];
    if (pipe(ends) != 0) throw std::runtime_error("no pipe");
    process_ = fork();
    if (process_ == 0) {
      setpgid(0, 0);
      dup2(ends[1], 1);
      dup2(open("/dev/null", O_WRONLY), 2);
      execlp("chromedriver", "chromedriver", "--port=0", static_cast<char*>(nullptr));
      _exit(127);
    }
    close(ends[1]);
    std::string said;
    char letter = 0;
    const std::string before = "started successfully on port ";
    while (read(ends[0], &letter, 1) == 1 && (said += letter, true))
      if (letter == '\n' && said.find(before) != std::string::npos) break;
    const auto at = said.find(before);
    if (at == std::string::npos) throw std::runtime_error("chromedriver does not start: " + said);
    port_ = std::stoi(said.substr(at + before.size()));
    output_ = ends[0];
  }
  ~Driver() {
    kill(-process_, SIGTERM);
    waitpid(process_, nullptr, 0);
    close(output_);
  }
  Driver(const Driver&) = delete;
  Driver& operator=(const Driver&) = delete;

  int port() const { return port_; }

 private:
  pid_t process_ = 0;
  int port_ = 0, output_ = -1;
};

/// How a browser presents itself.
struct Screen {
  int width = 360, height = 740;
  bool dark = false;
};

/// A browser with a profile of its own: cookies and pages are shared with no other.
class Browser {
 public:
  explicit Browser(const Driver& driver, const Screen& screen = {}) : client_("127.0.0.1", driver.port()) {
    client_.set_read_timeout(60);
    const json options = {{"args",
                           {"--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic",
                            "--no-first-run", "--disable-background-networking", "--disable-component-update",
                            "--disable-sync", "--disable-dev-shm-usage", "--hide-scrollbars"}}};
    session_ = "/session/" + call("POST", "/session",
                                  {{"capabilities", {{"alwaysMatch", {{"goog:chromeOptions", options}}}}}})
                                 .at("sessionId")
                                 .get<std::string>();
    show_as(screen);
  }
  ~Browser() { client_.Delete(session_); }
  Browser(const Browser&) = delete;
  Browser& operator=(const Browser&) = delete;

  void show_as(const Screen& screen) {
    devtools("Emulation.setDeviceMetricsOverride", {{"width", screen.width},
                                                    {"height", screen.height},
                                                    {"deviceScaleFactor", 1},
                                                    {"mobile", screen.width < 500}});
    devtools("Emulation.setEmulatedMedia",
             {{"features",
               {{{"name", "prefers-color-scheme"}, {"value", screen.dark ? "dark" : "light"}},
                {{"name", "prefers-reduced-motion"}, {"value", "reduce"}}}}});
  }

  void open(const std::string& address) { call("POST", session_ + "/url", {{"url", address}}); }
  void reload() { call("POST", session_ + "/refresh", json::object()); }
  std::string address() { return call("GET", session_ + "/url").get<std::string>(); }

  /// The value of a script's `return`.
  json run(const std::string& script, const json& arguments = json::array()) {
    return call("POST", session_ + "/execute/sync", {{"script", script}, {"args", arguments}});
  }
  json devtools(const std::string& command, const json& parameters) {
    return call("POST", session_ + "/goog/cdp/execute", {{"cmd", command}, {"params", parameters}});
  }

  /// The text of an element as a person sees it; "" while it is hidden or not there.
  std::string text(const std::string& css) {
    return run("const e = document.querySelector(arguments[0]);"
               "return e && e.checkVisibility() ? (e.innerText || '').trim() : ''",
               {css})
        .get<std::string>();
  }
  bool sees(const std::string& css, const std::string& words) {
    return text(css).find(words) != std::string::npos;
  }
  /// Waits until an element shows these words.
  void expect(const std::string& css, const std::string& words) {
    if (eventually([&] { return sees(css, words); })) return;
    ADD_FAILURE() << css << " never shows \"" << words << "\" but \"" << text(css) << "\"; the page says:\n"
                  << text("body");
    throw std::runtime_error("a page does not show what is expected");
  }

  /// Presses an element as a person does, once it can be pressed.
  void click(const std::string& css) { act_on(css, "/click", json::object()); }
  /// Types into a field, in place of what stood there.
  void type(const std::string& css, const std::string& words) {
    act_on(css, "/clear", json::object());
    act_on(css, "/value", {{"text", words}});
  }
  void choose(const std::string& css, const std::string& value) {
    run("const e = document.querySelector(arguments[0]);"
        "e.value = [...e.options].find((o) => o.value === arguments[1]).value",
        {css, value});
  }
  /// The key as pressed on the keyboard: "\uE004" is Tab (W3C WebDriver, 17.4.2).
  void press(const std::string& key) {
    const json strokes = {{{"type", "keyDown"}, {"value", key}}, {{"type", "keyUp"}, {"value", key}}};
    call("POST", session_ + "/actions",
         {{"actions", {{{"type", "key"}, {"id", "keyboard"}, {"actions", strokes}}}}});
  }

  /// What the browser tells a screen reader: its computed role and name of every element that matches.
  struct Told {
    std::string html, role, name;
  };
  std::vector<Told> told_of(const std::string& css) {
    std::vector<Told> all;
    for (const std::string& element : elements(css)) {
      if (!call("GET", element + "/displayed").get<bool>()) continue;
      all.push_back({call("GET", element + "/property/outerHTML").get<std::string>().substr(0, 200),
                     call("GET", element + "/computedrole").get<std::string>(),
                     call("GET", element + "/computedlabel").get<std::string>()});
    }
    return all;
  }

  /// The whole page as PNG.
  void picture(const std::string& file) {
    const json shot =
        devtools("Page.captureScreenshot", {{"captureBeyondViewport", true}, {"format", "png"}});
    const std::string encoded = shot.at("data").get<std::string>();
    std::ofstream(file, std::ios::binary) << decoded(encoded);
  }

  /// The network is gone, or is back.
  void go_offline(bool offline) {
    devtools("Network.enable", json::object());
    devtools("Network.emulateNetworkConditions",
             {{"offline", offline}, {"latency", 0}, {"downloadThroughput", -1}, {"uploadThroughput", -1}});
  }

  std::string new_tab() {
    const std::string tab = call("POST", session_ + "/window/new", {{"type", "tab"}}).at("handle");
    turn_to(tab);
    return tab;
  }
  std::string tab() { return call("GET", session_ + "/window").get<std::string>(); }
  void turn_to(const std::string& tab) { call("POST", session_ + "/window", {{"handle", tab}}); }
  void close_tab() { call("DELETE", session_ + "/window"); }

 private:
  static std::string decoded(const std::string& base64) {
    static const std::string digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string bytes;
    unsigned bits = 0, count = 0;
    for (const char digit : base64) {
      const auto value = digits.find(digit);
      if (value == std::string::npos) break;
      bits = bits << 6 | static_cast<unsigned>(value);
      if ((count += 6) >= 8) bytes += static_cast<char>(bits >> (count -= 8) & 0xff);
    }
    return bytes;
  }

  std::vector<std::string> elements(const std::string& css) {
    std::vector<std::string> all;
    for (const json& found :
         call("POST", session_ + "/elements", {{"using", "css selector"}, {"value", css}}))
      all.push_back(session_ + "/element/" + found.begin()->get<std::string>());
    return all;
  }

  void act_on(const std::string& css, const std::string& action, const json& fields) {
    std::string refused = "is not there";
    const bool done = eventually([&] {
      for (const std::string& element : elements(css)) {
        const auto reply = client_.Post(element + action, fields.dump(), "application/json");
        if (reply && reply->status == 200) return true;
        if (reply) refused = reply->body;
      }
      return false;
    });
    if (done) return;
    ADD_FAILURE() << css << ": " << refused << "; the page says:\n" << text("body");
    throw std::runtime_error("a page cannot be used");
  }

  json call(const std::string& method, const std::string& path, const json& fields = nullptr) {
    const auto reply = method == "GET"      ? client_.Get(path)
                       : method == "DELETE" ? client_.Delete(path)
                                            : client_.Post(path, fields.dump(), "application/json");
    if (!reply) throw std::runtime_error("the browser's driver does not answer " + path);
    const json value = json::parse(reply->body).at("value");
    if (reply->status != 200) throw std::runtime_error(path + ": " + value.dump().substr(0, 400));
    return value;
  }

  httplib::Client client_;
  std::string session_;
};

}  // namespace browser
