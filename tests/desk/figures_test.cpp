#include "desk/calculator/figures.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "desk/calculated.h"

namespace desk {
namespace {

using nlohmann::json;

TEST(CalculatedText, IsInColumns) {
  EXPECT_EQ(figures_text(calculated("adjust 0.01 0.04 0.03")),
            "adjusted p-values of a family\n"
            "  tests                            3\n"
            "  level                            0.05  of the whole family\n"
            "  supported by Bonferroni          1     holds the chance of any false one\n"
            "  supported by Holm                1     holds the chance of any false one\n"
            "  supported by Benjamini-Hochberg  3     holds the expected share of false ones\n"
            "\n"
            "        p  Bonferroni  Holm  Benjamini-Hochberg\n"
            "  1  0.01        0.03  0.03                0.03\n"
            "  2  0.04        0.12  0.06                0.04\n"
            "  3  0.03        0.09  0.06                0.04\n");
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
  const std::vector<Figures> all{calculated("right 1 2"),
                                 calculated("need 2"),
                                 calculated("size --share 1"),
                                 calculated("power 2 --share 1"),
                                 calculated("redraw 1:0 --observed 1"),
                                 calculated("adjust 1"),
                                 calculated("kappa '1 0;0 1'"),
                                 calculated("fleiss '2 0;0 2'"),
                                 calculated("agree 10 10"),
                                 calculated("correlate --x '1 2' --y '1 2'"),
                                 calculated("differ --x 1 --y 1")};
  for (const Figures& figures : all) {
    std::set<std::string> keys{"schema", "title", "notes"};
    std::vector<std::string> given;
    for (const Figure& figure : figures.figures) given.push_back(figure.key);
    for (const Series& column : figures.series) given.push_back(column.key);
    for (const std::string& key : given) {
      EXPECT_TRUE(keys.insert(key).second) << key << " twice in " << figures.title;
      EXPECT_EQ(key.find_first_not_of("abcdefghijklmnopqrstuvwxyz_"), std::string::npos) << key;
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
