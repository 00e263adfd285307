#include "report/html_report.h"

#include <stdexcept>

#include "report/html/page.h"

namespace report {

std::string html_page(const Document& document, std::string_view version) {
  kainjow::mustache::mustache page(page_template());
  if (!page.is_valid()) throw std::logic_error("the page's template is broken: " + page.error_message());
  return page.render(page_data(document, version));
}

std::string html_report(const findings::Evidence& evidence, const findings::Findings& findings,
                        std::string_view version) {
  return html_page(document_of(evidence, findings), version);
}

}  // namespace report
