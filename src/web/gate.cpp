#include "web/gate.h"

#include <algorithm>
#include <utility>

namespace web {
namespace {

/// Takes the same time wherever the two differ.
bool is_same(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  unsigned difference = 0;
  for (std::size_t i = 0; i < a.size(); ++i)
    difference |= static_cast<unsigned char>(a[i]) ^ static_cast<unsigned>(static_cast<unsigned char>(b[i]));
  return difference == 0;
}

std::string cookie_name(std::string_view role) { return "blindswap_" + std::string(role); }

}  // namespace

Gate::Gate(Codes codes, std::vector<std::string> hosts)
    : codes_(std::move(codes)), hosts_(std::move(hosts)) {}

bool Gate::is_host(const std::string& host) const {
  return std::find(hosts_.begin(), hosts_.end(), host) != hosts_.end();
}

bool Gate::is_own_origin(const std::string& origin, const std::string& host) const {
  return is_host(host) && origin == "http://" + host;
}

std::optional<std::string> Gate::person_with(std::string_view role, const std::string& code) const {
  std::optional<std::string> owner;
  if (role == "helper" && is_same(code, codes_.helper)) owner = "helper";
  if (role == "organiser" && is_same(code, codes_.organiser)) owner = "organiser";
  if (role == "listener")
    for (const auto& [name, own] : codes_.listeners)
      if (is_same(code, own)) owner = name;
  return owner;
}

std::optional<std::string> Gate::person_of(std::string_view role, const std::string& cookie_header) const {
  const std::string begin = cookie_name(role) + "=";
  for (std::size_t at = 0; at < cookie_header.size();) {
    const std::size_t end = std::min(cookie_header.find(';', at), cookie_header.size());
    std::string_view cookie = std::string_view(cookie_header).substr(at, end - at);
    while (cookie.starts_with(' ')) cookie.remove_prefix(1);
    if (cookie.starts_with(begin)) return person_with(role, std::string(cookie.substr(begin.size())));
    at = end + 1;
  }
  return std::nullopt;
}

std::string Gate::cookie_for(std::string_view role, const std::string& code) {
  return cookie_name(role) + "=" + code + "; Path=/" + std::string(role) + "; HttpOnly; SameSite=Strict";
}

}  // namespace web
