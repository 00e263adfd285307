#pragma once

#include <filesystem>
#include <string>

namespace desk {

/// The bytes of a file. @throws text::BadInput when there is no such file, it is a folder or cannot be read.
std::string read_file(const std::filesystem::path& file);

/// Writes a file whole or not at all: the old one stays until the new one is on disk.
/// @throws text::NotNow when the folder is missing, not writable, or the disk is full.
void write_file(const std::filesystem::path& file, const std::string& content);

}  // namespace desk
