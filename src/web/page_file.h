#pragma once

#include <span>
#include <string_view>

namespace web {

/// A file that browsers are given as it stands.
struct PageFile {
  std::string_view name;  ///< "listener.html"
  std::string_view content;
};

/// Everything in src/web/pages, built into the program.
std::span<const PageFile> page_files();

}  // namespace web
