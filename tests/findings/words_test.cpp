#include <gtest/gtest.h>

#include <algorithm>
#include <regex>

#include "findings/eventful_evidence.h"
#include "findings/words/numbers.h"

namespace {

using plan::Kind;

/// Claims that no finding may make; the control's own name, "identical pair", is none.
std::string forbidden_word_in(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? char(c + 32) : c; });
  text = std::regex_replace(text, std::regex("identical pair"), "control");
  for (const char* word :
       {"identical", "proved", "prove ", "proof", "because", "no difference", "the same sound"})
    if (text.find(word) != std::string::npos) return word;
  return "";
}

TEST(Words, NeverClaimMoreThanTheMethod) {
  EXPECT_EQ(forbidden_word_in("Proved Identical"), "identical");
  std::vector<Builder> builders = {eventful(), seven_of(9), seven_of(14), seven_of(2),
                                   Builder({"Ada", "Ben"}, "preference")};
  builders.back().trials(builders.back().claim("thin", "thick"), 15, 16);
  builders.back().trials(builders.back().claim("flat", "thick"), 8, 16);
  for (const int score : {8, 16}) {
    Builder controls;
    controls.trials(controls.claim("thin", "thick"), 8, 16);
    controls.trials(
        controls.comparison(controls.specimen("thin"), controls.specimen("thin"), Kind::identical_pair),
        score, 16);
    controls.trials(controls.comparison(controls.specimen("thin"), controls.specimen("thin", "0.22"),
                                        Kind::known_difference),
                    score, 16);
    builders.push_back(controls);
  }
  Builder measured = seven_of(9);
  for (std::size_t i = 0; i < measured.plan().specimens.size(); ++i)
    measured.evidence.cables[measured.plan().specimens[i].cable].line =
        electrical::Cable{.resistance_ohm_per_m = .01 * double(i + 1), .length_m = 3};
  measured.evidence.rig.source = electrical::Source{.resistance_ohm = .1};
  measured.evidence.rig.load = electrical::Resistor{8};
  builders.push_back(measured);
  std::size_t sentences = 0;
  for (const Builder& builder : builders)
    for (const std::string& text : every_sentence(builder.findings())) {
      EXPECT_EQ(forbidden_word_in(text), "") << text;
      ++sentences;
    }
  EXPECT_GT(sentences, 200U);
}

TEST(Numbers, AreWrittenForPeople) {
  EXPECT_EQ(findings::signed_db(.617), "+0.62 dB");
  EXPECT_EQ(findings::signed_db(-.004), "0.00 dB");
  EXPECT_EQ(findings::signed_db(-.1), "-0.10 dB");
  EXPECT_EQ(findings::p_words(.0384), "p 0.0384");
  EXPECT_EQ(findings::p_words(1e-9), "p <0.0001");
  EXPECT_EQ(findings::percent(.95), "95 %");
  EXPECT_EQ(findings::percent(.975), "97.5 %");
  EXPECT_EQ(findings::rounded_up(.9025), .903);
  EXPECT_EQ(findings::rounded_up(.9), .9);
  EXPECT_EQ(findings::rounded_down(.5156), .515);  // 12 of 16: to nearest would claim 0.516
  EXPECT_EQ(findings::rounded_down(.07), .07);
  EXPECT_EQ(findings::rounded_down(0), 0);
  EXPECT_EQ(findings::frequency_words(237.3), "237 Hz");
  EXPECT_EQ(findings::frequency_words(20000), "20.0 kHz");
  EXPECT_EQ(findings::listed({"a", "b", "c"}), "a, b and c");
  EXPECT_EQ(findings::typed_number("step", "0,5"), .5);
  EXPECT_EQ(findings::typed_number("step",
                                   "\u2212"
                                   "0.5"),
            -.5);  // the sign that plans may hold
  EXPECT_EQ(findings::typed_number("step", ""), std::nullopt);
}

}  // namespace
