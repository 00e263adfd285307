#include "report/content/sections.h"
#include "report/content/words.h"
#include "text/number.h"

namespace report {

std::optional<Section> scale_section(const findings::Findings& findings) {
  if (!findings.preference_scale) return std::nullopt;
  const findings::PreferenceScale& scale = *findings.preference_scale;
  Section section{
      2,
      "scale",
      "A scale of preference",
      {Paragraph{
           "Explored, not planned, and no part of any finding: one number for each cable from the answers to "
           "all comparisons (Bradley and Terry), with an effect of being played first."},
       Paragraph{scale.sentence}}};
  if (scale.cables.empty()) return section;
  Table cables{"Worth: log odds of being preferred to " + scale.cables.front().title +
                   "; error of its own (quasi standard error): for comparing any two",
               {{"Cable"}, {"Worth", true}, {"Standard error", true}, {"Error of its own", true}},
               {},
               {}};
  for (const auto& cable : scale.cables)
    cables.rows.push_back({cable.title, number_words(cable.worth, 2), text::fixed(cable.standard_error, 2),
                           cable.quasi_error ? text::fixed(*cable.quasi_error, 2) : "\u2013"});
  section.blocks.push_back(std::move(cables));
  if (scale.pairs.empty()) return section;
  Table pairs{"Differences of worths: p of the likelihood ratio, adjusted over all pairs (Holm)",
              {{"Cables"}, {"Difference", true}, {"Adjusted p", true}},
              {},
              {}};
  for (const auto& pair : scale.pairs)
    pairs.rows.push_back({scale.cables[std::size_t(pair.first)].title + " less " +
                              scale.cables[std::size_t(pair.second)].title,
                          number_words(pair.difference, 2), text::p_value(pair.p_adjusted)});
  section.blocks.push_back(std::move(pairs));
  return section;
}

}  // namespace report
