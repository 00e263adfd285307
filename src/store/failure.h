#pragma once

#include <string>

namespace store {

/// Says in words what became of a call to SQLite, for all of its failures.
///
/// @param code    an extended result code of SQLite.
/// @param file    the file's name fit for a message.
/// @param detail  SQLite's own words.
/// @throws text::NotNow    disk full or failing, file or folder not writable, file in use, another
///                         writer first.
/// @throws text::BadInput  not an SQLite file, damaged, or a row that the file's own rules refuse.
/// @throws std::bad_alloc, std::runtime_error  for what is a fault in blindswap.
[[noreturn]] void refuse(int code, const std::string& file, const std::string& detail);

}  // namespace store
