#include "web/host.h"

#include <mutex>
#include <optional>
#include <thread>

#include "text/error.h"
#include "web/helper_desk.h"
#include "web/hub.h"
#include "web/listener_desk.h"
#include "web/page_file.h"
#include "web/qr.h"
#include "web/server.h"

namespace web {
namespace {

using nlohmann::json;

constexpr int most_streams = 96, most_waiting = 256;
constexpr std::chrono::seconds heartbeat{15}, pause_after_wrong_code{1};

std::string_view type_of(std::string_view name) {
  if (name.ends_with(".html")) return "text/html; charset=utf-8";
  if (name.ends_with(".css")) return "text/css; charset=utf-8";
  return "text/javascript; charset=utf-8";
}

}  // namespace

struct Host::Parts {
  sitting::HelperDoor& helper_door;
  OrganiserDesk& desk;
  sitting::ListenerDoor& listener_door;
  Codes codes;
  Address address;
  std::optional<Gate> gate;  ///< once the port is known
  Hub hub{most_streams};
  mutable std::mutex doors;  ///< whoever calls a door or the desk holds it
  httplib::Server server;
  std::thread serving;
  std::map<std::string, Actions> actions;
  std::string trouble;  ///< what went wrong at the last tick, "" for nothing

  Parts(sitting::ListenerDoor& a_listener_door, sitting::HelperDoor& a_helper_door, OrganiserDesk& a_desk,
        Codes the_codes, Address where)
      : helper_door(a_helper_door),
        desk(a_desk),
        listener_door(a_listener_door),
        codes(std::move(the_codes)),
        address(std::move(where)) {
    actions["listener"] = listener_actions(listener_door);
    actions["helper"] = helper_actions(helper_door);
    actions["organiser"] = organiser_actions(desk);
  }

  static std::string channel(const std::string& role, const std::string& person) {
    return role == "listener" ? "listener/" + person : role;
  }

  int connected(const std::string& person) const {
    return hub.streams_on(person == "helper" ? "helper" : channel("listener", person));
  }

  void release_to_staff() {
    hub.release("helper", helper_view(helper_door, trouble));
    hub.release("organiser",
                organiser_view(helper_door, desk, [this](const std::string& who) { return connected(who); }));
  }

  void release_to_listeners() {
    for (const auto& [name, code] : codes.listeners)
      hub.release(channel("listener", name), listener_view(listener_door, name));
  }

  void act(const std::string& role, const std::string& person, const httplib::Request& request,
           httplib::Response& response) {
    const auto action = actions.at(role).find(request.matches[2]);
    if (action == actions.at(role).end()) return answer_error(response, 404, "there is no such action");
    const Fields fields(request.body);
    if (const std::string as = fields.text_or_none("as"); !as.empty() && as != person)
      throw text::NotNow("this browser was opened as " + person + " in another tab; open the link of " + as +
                         " again, on a device of their own");
    const std::lock_guard lock(doors);
    if (role ==
        "listener") {  // staff see it at the next tick, so that a crowd's answers are kept without delay
      action->second(person, fields);
      return answer_json(response, 200, {{"kept", true}});
    }
    try {
      action->second(person, fields);
    } catch (...) {
      release_to_staff();  // another program's doing may be the reason
      throw;
    }
    release_to_staff();
    answer_json(response, 200, {{"kept", true}});
  }

  std::string link(const std::string& role, const std::string& listener) const {
    const std::string& code = role == "helper"      ? codes.helper
                              : role == "organiser" ? codes.organiser
                                                    : codes.listeners.at(listener);
    return "http://" + address.interface + ":" + std::to_string(address.port) + "/" + role + "#" + code;
  }

  json links() const {
    json all = json::array();
    const auto add = [&](const std::string& whose, const std::string& to) {
      const QrPath code = qr_for_page(to);
      all.push_back({{"name", whose}, {"link", to}, {"size", code.size}, {"path", code.path}});
    };
    add("helper", link("helper", ""));
    for (const auto& [listener, code] : codes.listeners) add(listener, link("listener", listener));
    return all;
  }

  void stream(const std::string& on, httplib::Response& response) {
    if (!hub.join(on)) return answer_error(response, 503, "too many pages are open; close one");
    auto version = std::make_shared<std::uint64_t>(0);
    response.set_chunked_content_provider(
        "text/event-stream",
        [this, on, version](std::size_t, httplib::DataSink& sink) {
          const auto release = hub.next(on, *version, heartbeat);
          if (hub.closed()) {
            sink.done();
            return true;
          }
          if (release) *version = release->version;
          const std::string words = release ? "data: " + release->text + "\n\n" : "event: pulse\ndata:\n\n";
          return sink.write(words.data(), words.size());
        },
        [this, on](bool) { hub.leave(on); });
  }

  void enter(const httplib::Request& request, httplib::Response& response) {
    const std::string role = request.matches[1], code = Fields(request.body).text("code");
    if (!gate->person_with(role, code)) {
      std::this_thread::sleep_for(pause_after_wrong_code);  // guesses are slowed, and nobody else is
      return answer_error(response, 403, "this link is not valid");
    }
    response.set_header("Set-Cookie", Gate::cookie_for(role, code));
    answer_json(response, 200, {{"entered", true}});
  }

  void serve_pages() {
    server.Get("/favicon.ico",
               [](const httplib::Request&, httplib::Response& response) { response.status = 204; });
    for (const PageFile& page : page_files()) {
      const bool is_html = page.name.ends_with(".html");
      const std::string stem(page.name.substr(0, page.name.rfind('.')));
      const std::string path = page.name == "start.html" ? "/"
                               : is_html                 ? "/" + stem
                                                         : "/pages/" + std::string(page.name);
      server.Get(path, [&page](const httplib::Request&, httplib::Response& response) {
        response.set_content(page.content.data(), page.content.size(),
                             std::string(type_of(page.name)).c_str());
      });
    }
  }

  /// Runs `handler` for the person whose cookie came along; nobody else gets further.
  template <typename Handler>
  auto only_for_persons(Handler handler) {
    return [this, handler](const httplib::Request& request, httplib::Response& response) {
      const std::string role = request.matches[1];
      const auto person = gate->person_of(role, request.get_header_value("Cookie"));
      if (!person) return answer_error(response, 403, "open the link you were given");
      handler(role, *person, request, response);
    };
  }

  void serve_persons() {
    server.Post("/(helper|listener|organiser)/enter",
                [this](const auto& request, auto& response) { enter(request, response); });
    server.Get("/(helper|listener|organiser)/events",
               only_for_persons([this](const auto& role, const auto& person, const auto&, auto& response) {
                 stream(channel(role, person), response);
               }));
    server.Get("/(helper|listener|organiser)/view",
               only_for_persons([this](const auto& role, const auto& person, const auto&, auto& response) {
                 response.set_content(hub.shown(channel(role, person)).text, "application/json");
               }));
    server.Get("/(helper)/tagging-list",
               only_for_persons([this](const auto&, const auto&, const auto&, auto& response) {
                 const std::lock_guard lock(doors);
                 response.set_content(tagging_list(helper_door), "application/json");
               }));
    server.Get("/(organiser)/links",
               only_for_persons([this](const auto&, const auto&, const auto&, auto& response) {
                 answer_json(response, 200, links());
               }));
    server.Get("/(organiser)/report",
               only_for_persons([this](const auto&, const auto&, const auto&, auto& response) {
                 const std::lock_guard lock(doors);
                 response.set_content(desk.report_html(), "text/html; charset=utf-8");
                 response.set_header("Content-Security-Policy",
                                     "default-src 'none'; style-src 'unsafe-inline'");
               }));
    server.Post("/(helper|listener|organiser)/([a-z-]+)",
                only_for_persons([this](const auto& role, const auto& person, const auto& request,
                                        auto& response) { act(role, person, request, response); }));
  }

  /// Before any handler: only browsers that were sent here, and only their own pages change anything.
  httplib::Server::HandlerResponse guard(const httplib::Request& request, httplib::Response& response) {
    const std::string host = request.get_header_value("Host");
    const bool changes = request.method != "GET" && request.method != "HEAD";
    if (!gate->is_host(host)) {
      answer_error(response, 421, "this name is not served here");
    } else if (changes && (!gate->is_own_origin(request.get_header_value("Origin"), host) ||
                           request.get_header_value("X-Blindswap") != "1")) {
      answer_error(response, 403, "this did not come from a page of this sitting");
    } else if (request.has_header("Transfer-Encoding") || request.has_header("Content-Encoding")) {
      answer_error(response, 411, "a body is sent whole, with its length");  // the library limits no other
    } else {
      return httplib::Server::HandlerResponse::Unhandled;
    }
    return httplib::Server::HandlerResponse::Handled;
  }
};

Host::Host(sitting::ListenerDoor& listener_door, sitting::HelperDoor& helper_door, OrganiserDesk& desk,
           Codes codes, const Address& address)
    : parts_(std::make_unique<Parts>(listener_door, helper_door, desk, std::move(codes), address)) {
  require_address(address.interface);
  Parts& parts = *parts_;
  socket_t bound = INVALID_SOCKET;
  configure(parts.server, bound);
  if (address.port == 0)
    parts.address.port = parts.server.bind_to_any_port(address.interface);
  else if (!parts.server.bind_to_port(address.interface, address.port))
    parts.address.port = -1;
  if (parts.address.port <= 0)
    throw text::NotNow("cannot serve on " + address.interface + ":" + std::to_string(address.port) +
                       "\nis another program there, or is it no address of this computer?");
  ::listen(bound, most_waiting);  // once more: the library lets five wait, and turns the others away
  parts.gate.emplace(parts.codes, hosts_of(parts.address.interface, parts.address.port));
  parts.server.set_pre_routing_handler(
      [&parts](const auto& request, auto& response) { return parts.guard(request, response); });
  parts.serve_pages();
  parts.serve_persons();
  {
    const std::lock_guard lock(parts.doors);
    parts.release_to_staff();
    parts.release_to_listeners();
  }
  parts.serving = std::thread([&parts] { parts.server.listen_after_bind(); });
  while (!parts.server.is_running()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
}

Host::~Host() {
  parts_->hub.close();
  parts_->server.stop();
  parts_->serving.join();
}

int Host::port() const { return parts_->address.port; }

std::string Host::link(const std::string& role, const std::string& listener) const {
  return parts_->link(role, listener);
}

void Host::tick(const std::function<void()>& before) {
  const std::lock_guard lock(parts_->doors);
  try {
    if (before) before();
    parts_->helper_door.keep_pace();
    parts_->trouble.clear();
    parts_->release_to_staff();
  } catch (const text::NotNow& error) {
    parts_->trouble = error.what();
    parts_->hub.release("helper", helper_view(parts_->helper_door, parts_->trouble));
  }
  parts_->release_to_listeners();
}

std::string Host::state_line() const {
  const std::lock_guard lock(parts_->doors);
  const sitting::HelperView view = parts_->helper_door.look();
  int listeners = 0;
  for (const auto& [name, code] : parts_->codes.listeners) listeners += parts_->connected(name) > 0;
  return "trial " + std::to_string(view.played) + " of " + std::to_string(view.planned) + ", helper " +
         (parts_->connected("helper") > 0 ? "connected" : "not connected") + ", " +
         std::to_string(listeners) + " of " + std::to_string(parts_->codes.listeners.size()) +
         " listeners connected" + (parts_->trouble.empty() ? "" : "; " + parts_->trouble);
}

}  // namespace web
