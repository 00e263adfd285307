#include "web/server.h"

#include "text/error.h"

namespace web {
namespace {

constexpr std::size_t threads = 160, most_body_bytes = 16 * 1024;
constexpr unsigned most_silence_milliseconds = 30'000;

/// What a thrown error means to a browser; its own words only where they are meant for people.
void answer_thrown(httplib::Response& response, std::exception_ptr thrown) {
  try {
    std::rethrow_exception(thrown);
  } catch (const text::NotNow& error) {
    answer_error(response, 409, error.what());
  } catch (const text::BadInput& error) {
    answer_error(response, 400, error.what());
  } catch (const std::domain_error& error) {
    answer_error(response, 400, error.what());
  } catch (...) {
    answer_error(response, 500, "a fault in blindswap; nothing that was acknowledged is lost");
  }
}

}  // namespace

void answer_json(httplib::Response& response, int status, const nlohmann::json& body) {
  response.status = status;
  response.set_content(body.dump(), "application/json");
}

void answer_error(httplib::Response& response, int status, const std::string& words) {
  answer_json(response, status, {{"error", words}});
}

void configure(httplib::Server& server, socket_t& bound) {
  server.new_task_queue = [] { return new httplib::ThreadPool(threads); };
  server.set_payload_max_length(most_body_bytes);
  server.set_read_timeout(5);
  server.set_write_timeout(5);
  server.set_keep_alive_timeout(2);
  server.set_keep_alive_max_count(1);  // what a refused request left unread is never taken for another
  server.set_socket_options([&bound](socket_t socket) {
    bound = socket;
    const int yes = 1;  // a port in use by another server stays refused
    setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    setsockopt(socket, IPPROTO_TCP, TCP_USER_TIMEOUT, &most_silence_milliseconds,
               sizeof most_silence_milliseconds);  // a phone that left is soon noticed
  });
  server.set_default_headers({{"X-Content-Type-Options", "nosniff"},
                              {"Referrer-Policy", "no-referrer"},
                              {"Cache-Control", "no-store"},
                              {"Cross-Origin-Resource-Policy", "same-origin"}});
  server.set_exception_handler([](const httplib::Request&, httplib::Response& response,
                                  std::exception_ptr thrown) { answer_thrown(response, thrown); });
  server.set_post_routing_handler([](const httplib::Request&, httplib::Response& response) {
    if (!response.has_header("Content-Security-Policy"))
      response.set_header("Content-Security-Policy",
                          "default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'");
  });
}

void require_address(const std::string& interface) {
  in_addr parsed{};
  if (inet_pton(AF_INET, interface.c_str(), &parsed) != 1 || parsed.s_addr == INADDR_ANY)
    throw text::BadInput("--on must be one IPv4 address of this computer, such as 192.168.1.5, got \"" +
                         interface + "\"");
}

std::vector<std::string> hosts_of(const std::string& interface, int port) {
  std::vector<std::string> hosts;
  for (const std::string& name : {interface, std::string("localhost")}) {
    hosts.push_back(name + ":" + std::to_string(port));
    if (port == 80) hosts.push_back(name);
  }
  return hosts;
}

}  // namespace web
