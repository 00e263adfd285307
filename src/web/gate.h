#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace web {

/// Who may enter: a code of 128 random bits in hex for each person of each role.
struct Codes {
  std::string helper, organiser;
  std::map<std::string, std::string> listeners;  ///< by name
};

/// Keeps the doors apart: turns codes into cookies, cookies into persons, and refuses what comes from elsewhere.
/// Safe between threads.
class Gate {
 public:
  /// @param hosts  the values of the Host header under which this server may be addressed.
  Gate(Codes codes, std::vector<std::string> hosts);

  /// Another name in the Host header may be an attack by a rebound name.
  bool is_host(const std::string& host) const;
  /// "http://" and the host it was sent to: nothing else may change anything.
  bool is_own_origin(const std::string& origin, const std::string& host) const;

  /// The person whose code this is in that role; nothing for a wrong one.
  std::optional<std::string> person_with(std::string_view role, const std::string& code) const;
  /// The person whose cookie stands in a Cookie header for that role.
  std::optional<std::string> person_of(std::string_view role, const std::string& cookie_header) const;
  /// The Set-Cookie header that lets a person in.
  static std::string cookie_for(std::string_view role, const std::string& code);

 private:
  const Codes codes_;
  const std::vector<std::string> hosts_;
};

}  // namespace web
