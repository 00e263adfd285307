#pragma once

#include <filesystem>
#include <string>

namespace desk {

/// The bytes of a file. @throws text::BadInput when there is no such file, it is a folder or cannot be read.
std::string read_file(const std::filesystem::path& file);

/// Writes a file whole or not at all: the old one stays until the new one is on disk. A link is followed; a device is
/// written to as it is.
///
/// @param replace  whether a file of other content may be replaced.
/// @throws text::BadInput when there is such a file and it may not be replaced.
/// @throws text::NotNow when the folder is missing, not writable, or the disk is full.
void write_file(const std::filesystem::path& file, const std::string& content, bool replace);

}  // namespace desk
