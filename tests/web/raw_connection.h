#pragma once

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <string>

namespace web {

/// A connection to a local port that sends bytes as they are, whole or not, and is cut off at its end.
class RawConnection {
 public:
  explicit RawConnection(int port) : socket_(socket(AF_INET, SOCK_STREAM, 0)) {
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_port = htons(static_cast<std::uint16_t>(port));
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    connected_ = connect(socket_, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0;
    const linger at_once{.l_onoff = 1, .l_linger = 0};
    setsockopt(socket_, SOL_SOCKET, SO_LINGER, &at_once, sizeof at_once);
    const timeval patience{.tv_sec = 0, .tv_usec = 4000};
    setsockopt(socket_, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
  }
  ~RawConnection() { close(socket_); }
  RawConnection(const RawConnection&) = delete;
  RawConnection& operator=(const RawConnection&) = delete;

  bool connected() const { return connected_; }
  void send_bytes(const std::string& bytes) const {
    [[maybe_unused]] const auto sent = send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
  }
  /// The first bytes of a reply; "" when none comes soon.
  std::string reply() const {
    std::string bytes(256, '\0');
    const auto count = recv(socket_, bytes.data(), bytes.size(), 0);
    bytes.resize(count > 0 ? static_cast<std::size_t>(count) : 0);
    return bytes;
  }

 private:
  int socket_;
  bool connected_ = false;
};

}  // namespace web
