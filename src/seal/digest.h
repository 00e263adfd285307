#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace seal {

/// A SHA-256 digest, or 256 bits of seed: 32 bytes in the order in which SHA-256 gives them.
using Digest = std::array<unsigned char, 32>;

/// SHA-256 of `bytes` (FIPS 180-4).
Digest sha256(std::string_view bytes);

/// 64 lower-case hexadecimal digits.
std::string to_hex(const Digest& digest);

/// The digest written by `hex`; nothing unless it is exactly 64 hexadecimal digits.
std::optional<Digest> from_hex(std::string_view hex);

/// The 32 bytes as a string view, for hashing them together with text.
std::string_view bytes_of(const Digest& digest);

/// 256 random bits from the operating system.
/// @throws std::runtime_error when the random source cannot be opened.
Digest random_digest();

}  // namespace seal
