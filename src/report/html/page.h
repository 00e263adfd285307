#pragma once

#include <kainjow/mustache.hpp>
#include <string>
#include <string_view>

#include "report/content/document.h"

namespace report {

/// The page as a mustache template, its style sheet included.
std::string page_template();

/// The style sheet: paper, screen, dark, phone and print.
std::string_view page_style();

/// Everything that the template names; each block supplies every name, so that nothing is inherited by accident.
kainjow::mustache::data page_data(const Document& document, std::string_view version);

/// The whole page.
std::string html_page(const Document& document, std::string_view version);

}  // namespace report
