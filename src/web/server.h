#pragma once

#include <httplib.h>

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace web {

/// Limits, time limits and headers of the server, whatever it serves.
/// @param bound  gets the socket that the server is going to be bound to.
void configure(httplib::Server& server, socket_t& bound);

/// @throws text::BadInput unless it is one IPv4 address that a browser can be sent to.
void require_address(const std::string& interface);

/// What browsers may call a server there, as values of the Host header; they leave out the port of HTTP.
std::vector<std::string> hosts_of(const std::string& interface, int port);

void answer_json(httplib::Response& response, int status, const nlohmann::json& body);
/// {"error": words}.
void answer_error(httplib::Response& response, int status, const std::string& words);

}  // namespace web
