#include "seal/digest.h"

#include <sodium.h>

#include <stdexcept>

namespace seal {
namespace {

void start_sodium() {
  static const int started = sodium_init();
  if (started < 0) throw std::runtime_error("the cryptographic library could not be started");
}

const unsigned char* unsigned_bytes(std::string_view bytes) {
  return reinterpret_cast<const unsigned char*>(bytes.data());
}

}  // namespace

Digest sha256(std::string_view bytes) {
  start_sodium();
  Digest digest;
  crypto_hash_sha256(digest.data(), unsigned_bytes(bytes), bytes.size());
  return digest;
}

std::string to_hex(const Digest& digest) {
  static constexpr char digits[] = "0123456789abcdef";
  std::string hex;
  for (const unsigned char byte : digest) {
    hex += digits[byte >> 4];
    hex += digits[byte & 15];
  }
  return hex;
}

std::optional<Digest> from_hex(std::string_view hex) {
  Digest digest;
  if (hex.size() != 2 * digest.size()) return std::nullopt;
  std::size_t length = 0;
  const char* end = nullptr;
  start_sodium();
  if (sodium_hex2bin(digest.data(), digest.size(), hex.data(), hex.size(), nullptr, &length, &end) != 0 ||
      length != digest.size() || end != hex.data() + hex.size())
    return std::nullopt;
  return digest;
}

std::string_view bytes_of(const Digest& digest) {
  return {reinterpret_cast<const char*>(digest.data()), digest.size()};
}

Digest random_digest() {
  start_sodium();
  Digest digest;
  randombytes_buf(digest.data(), digest.size());
  return digest;
}

}  // namespace seal
