#include "desk/calculator/figures.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "desk/calculated.h"

namespace desk {
namespace {

using nlohmann::json;

TEST(CalculatedText, IsInColumns) {
  EXPECT_EQ(figures_text(calculated("combine 0.01 0.2 0.3")),
            "one p from several independent ones\n"
            "  tests                3\n"
            "  Fisher's chi-square  14.8372    6 degrees of freedom\n"
            "  Fisher's p           0.0215618  conservative for exact tests of counts\n"
            "  Stouffer's z         2.13179    equal weights\n"
            "  Stouffer's p         0.016512   likewise\n");
  EXPECT_TRUE(figures_text(calculated("agree 10 11"))
                  .ends_with("\n"
                             "     answered  right\n"
                             "  1         2      1\n"
                             "  2         2      2\n"));
}

TEST(CalculatedJson, KeepsFullPrecisionAndNothingAsNull) {
  const json right = json::parse(figures_json(calculated("right 12 16")));
  EXPECT_EQ(right.at("schema"), 1);
  EXPECT_EQ(right.at("title"), "12 of 16 right");
  EXPECT_EQ(right.at("p_one_sided").get<double>(), 2517.0 / 65536);
  EXPECT_EQ(right.at("minimum_correct"), 12);
  EXPECT_EQ(right.at("reaches_level"), true);
  EXPECT_EQ(right.at("notes").at("wilson_lower"), "two-sided 95 %, approximation (Wilson)");
  EXPECT_TRUE(json::parse(figures_json(calculated("need 4"))).at("minimum_correct").is_null());
  const json adjusted = json::parse(figures_json(calculated("adjust 0.01 0.04")));
  EXPECT_EQ(adjusted.at("holm"), (json{0.02, 0.04}));
}

TEST(CalculatedJson, HasItsOwnSnakeCaseKeyForEveryFigure) {
  for (const std::string& example : calculated_examples()) {
    const Figures figures = calculated(example);
    std::set<std::string> keys{"schema", "title", "notes"};
    std::vector<std::string> given;
    for (const Figure& figure : figures.figures) given.push_back(figure.key);
    for (const Series& column : figures.series) given.push_back(column.key);
    for (const std::string& key : given) {
      EXPECT_TRUE(keys.insert(key).second) << key << " twice in " << figures.title;
      EXPECT_EQ(key.find_first_not_of("abcdefghijklmnopqrstuvwxyz_0123456789"), std::string::npos) << key;
    }
    EXPECT_EQ(json::parse(figures_json(figures)).size(), keys.size()) << figures.title;
  }
}

TEST(Figures, KnowTheirKeys) {
  const Figures figures{"two", {{"one", "one", 1}, {"none", "none", known(std::optional<double>())}}};
  EXPECT_EQ(std::get<long long>(figures.at("one")), 1);
  EXPECT_EQ(figures.at("none"), Value());
  EXPECT_THROW(figures.at("other"), std::out_of_range);
}

// Six digits for a person, every digit for a program.
TEST(Figures, RoundForPersonsOnly) {
  const Figures figures{"third", {{"third", "a third", 1.0 / 3}, {"tiny", "tiny", 9.5367431640625e-07}}};
  EXPECT_EQ(figures_text(figures), "third\n  a third  0.333333\n  tiny     9.53674e-07\n");
  EXPECT_EQ(json::parse(figures_json(figures)).at("third").get<double>(), 1.0 / 3);
}

}  // namespace
}  // namespace desk
