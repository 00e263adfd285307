#include "report/content/sections.h"
#include "report/content/words.h"
#include "text/number.h"

namespace report {
namespace {

std::string needed_words(const findings::Correlation& correlation) {
  if (correlation.rho_needed)
    return (correlation.rho_needed_is_exact ? "" : "about ") + text::fixed(*correlation.rho_needed, 3);
  return correlation.smallest_attainable_p ? "cannot reach it" : "not computed";
}

std::vector<std::string> row_of(const findings::Correlation& correlation) {
  std::string p = text::p_value(correlation.p);
  if (correlation.p_standard_error)
    p += " (s.e. " + text::significant(*correlation.p_standard_error, 1) + ")";
  return {correlation.measure + ", " + correlation.against,
          correlation.outcome,
          std::to_string(correlation.comparisons.size()),
          correlation.rho ? number_words(*correlation.rho, 3) : "\u2013",
          p,
          text::p_value(correlation.p_adjusted),
          needed_words(correlation)};
}

}  // namespace

Section correlation_section(const findings::Findings& findings) {
  Section section{2, "correlations", "What goes with what", {}};
  if (findings.correlations.empty()) {
    section.blocks.push_back(
        Paragraph{"No correlation was computed: it takes several comparisons with a measured difference."});
    return section;
  }
  section.blocks.push_back(
      Paragraph{"Outcomes over the comparisons against one measured difference at a time: Spearman's rank "
                "correlation with its permutation p, adjusted over this list (Benjamini and Hochberg). "
                "Exploratory: \u201Cgoes with\u201D is not \u201Cbecause\u201D."});
  Table table{
      "Rank correlations; needed: the size of rho that would reach the level at the list's first step",
      {{"Difference"},
       {"Outcome"},
       {"Comparisons", true},
       {"rho", true},
       {"p", true},
       {"Adjusted p", true},
       {"Needed", true}},
      {},
      {}};
  for (const auto& correlation : findings.correlations) table.rows.push_back(row_of(correlation));
  section.blocks.push_back(std::move(table));
  int number = 0;
  for (const auto& correlation : findings.correlations) {
    if (!correlation.sentence.empty()) section.blocks.push_back(Paragraph{correlation.sentence});
    if (correlation.smallest_attainable_p)
      section.blocks.push_back(Paragraph{"The smallest p that these values can give is " +
                                         text::p_value(*correlation.smallest_attainable_p) + "."});
    section.blocks.push_back(
        correlation_figure(findings, correlation, "correlation-" + std::to_string(++number)));
  }
  return section;
}

}  // namespace report
