#include <unistd.h>
#include <csignal>

#include <ostream>

#include "cli/sitting_options.h"
#include "desk/reports/reports.h"
#include "desk/sittings/hosting.h"
#include "web/host.h"
#include "web/qr.h"

namespace cli {
namespace {

/// The organiser's part of the pages, done by the desk.
class HostedDesk : public web::OrganiserDesk {
 public:
  HostedDesk(desk::SittingName name, desk::Hosting& hosting) : name_(std::move(name)), hosting_(hosting) {}

  std::string title() const override {
    return hosting_.sitting().plan().name + ", sitting " + std::to_string(hosting_.sitting().number());
  }
  std::string commitment_hex() const override { return hosting_.commitment_hex(); }
  std::string head_hex() const override {
    return hosting_.sitting().state().ended ? hosting_.sitting().head() : "";
  }
  bool is_unsealed() const override { return hosting_.is_unsealed(); }
  void end() override { hosting_.sitting().end(); }
  void end_early(const std::string& who, const std::string& reason, bool had_seen) override {
    hosting_.sitting().end_early(who, reason, had_seen);
  }
  void hand_over_head(const std::string& who, const std::string& how) override {
    desk::record_head_handover(name_, who, how, now);
  }
  void unseal() override { desk::unseal_plan(name_.campaign, hosting_.sitting().plan().name, now); }
  std::string report_html() const override {
    return desk::report_on(name_.campaign, hosting_.sitting().plan().name, desk::ReportForm::html);
  }

 private:
  desk::SittingName name_;
  desk::Hosting& hosting_;
};

void print_links(const web::Host& host, const desk::LinkCodes& codes, bool with_qr, std::ostream& out) {
  const auto print = [&](const std::string& whose, const std::string& link) {
    out << whose << "  " << link << "\n" << (with_qr ? web::qr_for_terminal(link) : "");
  };
  print("organiser", host.link("organiser"));
  print("helper", host.link("helper"));
  for (const auto& [listener, code] : codes.listeners) print(listener, host.link("listener", listener));
}

/// Blocks the signals that end the program, so that they can be waited for; no thread may be running yet.
sigset_t block_ending_signals() {
  sigset_t ending;
  sigemptyset(&ending);
  sigaddset(&ending, SIGINT);
  sigaddset(&ending, SIGTERM);
  pthread_sigmask(SIG_BLOCK, &ending, nullptr);
  return ending;
}

struct HostOptions {
  Which which;
  web::Address address{.interface = "127.0.0.1", .port = 8010};
  std::vector<std::string> stand_ins;
  bool no_qr = false;
};

void host_sitting(const HostOptions& options, Console& console) {
  const sigset_t ending = block_ending_signals();
  desk::Hosting hosting(options.which.get(), now);
  hosting.let_stand_in(options.stand_ins);
  HostedDesk desk(options.which.get(), hosting);
  const desk::LinkCodes codes = hosting.codes();
  web::Host host(hosting.sitting(), hosting.sitting(), desk, {codes.helper, codes.organiser, codes.listeners},
                 options.address);
  console.out << "commitment  " << hosting.commitment_hex() << "\n";
  print_links(host, codes, !options.no_qr, console.out);
  console.out << "each link lets its holder be that person: give it to nobody else; Ctrl-C stops"
              << std::endl;
  const timespec second{.tv_sec = 1, .tv_nsec = 0};
  while (sigtimedwait(&ending, nullptr, &second) < 0) {
    host.tick([&] { hosting.act_for_stand_ins(); });
    if (isatty(STDERR_FILENO)) console.err << "\r" << host.state_line() << "   " << std::flush;
  }
  console.err << "\nstopped; start it again with --port " << host.port() << " to go on with the same links\n";
}

}  // namespace

void add_host(CLI::App& sitting, Console& console) {
  const auto options = std::make_shared<HostOptions>();
  CLI::App* command = add_sitting_command(
      sitting, "host", "Hold a sitting live: pages for helper, listeners and organiser on the local network",
      "1 --on 192.168.1.5", *options);
  command->add_option("--on", options->address.interface, "The address of this computer to serve on")
      ->capture_default_str();
  command->add_option("--port", options->address.port, "The port, 0 for any")
      ->capture_default_str()
      ->check(CLI::Range(0, 65535));
  command->add_option("--stand-in", options->stand_ins,
                      "In a demonstration: the program plays this listener, or \"helper\"");
  command->add_flag("--no-qr", options->no_qr, "Print the links without QR codes");
  command->callback([options, &console] { host_sitting(*options, console); });
}

}  // namespace cli
