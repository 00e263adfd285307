#include <limits>
#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/factors/factor_test.h"
#include "text/error.h"

namespace desk {
namespace {

/// Blocks as typed, or none.
std::vector<int> blocks_of(const Given& given) {
  return given.has("blocks") ? given.counts("blocks", 0, 1'000'000) : std::vector<int>();
}

void require_each(const std::string& name, std::size_t found, std::size_t values) {
  if (found != values)
    throw text::BadInput(name + " must be as many as values, got " + std::to_string(found) + " and " +
                         std::to_string(values) + " values");
}

void add_arrangements(Figures& figures, double arrangements, const std::optional<double>& smallest_p) {
  figures.add("arrangements", "arrangements", arrangements, "different ones within blocks");
  figures.add("smallest_attainable_p", "smallest attainable p", known(smallest_p),
              smallest_p ? "by any arrangement" : "not computed where arrangements are drawn");
}

/// A row of levels, from 0, for each factor.
std::vector<std::vector<int>> factors_of(const Given& given, std::size_t values) {
  std::vector<std::vector<int>> factors;
  for (const auto& row : given.ratings("factors")) {
    auto& factor = factors.emplace_back();
    for (const auto& level : row) {
      if (!level || *level != double(int(*level)) || *level < 0 || *level > 99)
        throw text::BadInput("levels of factor " + std::to_string(factors.size()) +
                             " must be whole numbers from 0 to 99");
      factor.push_back(int(*level));
    }
    require_each("levels of factor " + std::to_string(factors.size()), factor.size(), values);
  }
  return factors;
}

Figures factors_figures(const Given& given) {
  const auto values = given.list("values");
  const auto factors = factors_of(given, values.size());
  const auto blocks = blocks_of(given);
  if (!blocks.empty()) require_each("blocks", blocks.size(), values.size());
  const auto tests = stats::main_effects(values, factors, blocks, given.draws());
  Figures figures{
      "whether construction factors make a difference",
      {{"items", "items", std::ssize(values)},
       {"test", "test", std::string("permutation"),
        "each factor among items alike in all others and in their block; none: it never varies alone"}}};
  Series statistic{"statistic", "statistic", {}}, degrees{"degrees_of_freedom", "degrees of freedom", {}},
      p{"p", "p", {}}, exact{"exact", "exact (1 yes)", {}}, arrangements{"arrangements", "arrangements", {}},
      smallest{"smallest_attainable_p", "smallest p", {}};
  const double nothing = std::numeric_limits<double>::quiet_NaN();
  for (const auto& test : tests) {
    statistic.values.push_back(test ? test->statistic : nothing);
    degrees.values.push_back(test ? test->degrees_of_freedom : nothing);
    p.values.push_back(test ? test->test.p : nothing);
    exact.values.push_back(test ? test->test.exact : nothing);
    arrangements.values.push_back(test ? test->arrangements : nothing);
    smallest.values.push_back(test ? test->smallest_p.value_or(nothing) : nothing);
  }
  figures.series = {statistic, degrees, p, exact, arrangements, smallest};
  return figures;
}

Figures contrast_figures(const Given& given) {
  const auto values = given.list("values"), weights = given.list("weights");
  const auto levels = given.counts("levels", 0, 99), blocks = blocks_of(given);
  require_each("levels", levels.size(), values.size());
  if (!blocks.empty()) require_each("blocks", blocks.size(), values.size());
  const auto found =
      stats::contrast_test({values, levels, blocks}, weights, given.alternative(), given.draws());
  if (!found)
    throw text::BadInput(
        "no block has all the levels with weights and values that differ: there is nothing to compare");
  Figures figures{
      "planned contrast of levels",
      {{"estimate", "estimate", found->estimate,
        "sum of weight times mean of the level, over blocks by precision"},
       {"blocks", "blocks", static_cast<long long>(found->blocks), "that have all levels with weights"},
       {"alternative", "alternative", given.word("alternative")}}};
  add_permutation_p(figures, found->test, "values given to the items of a block in any order");
  add_arrangements(figures, found->arrangements, found->smallest_p);
  return figures;
}

}  // namespace

Topic factors_topic() {
  const Argument values{"--values", "A value of each item, " + list_form, Argument::required, Shape::list},
      blocks{"--blocks", "A number for the block of each: compared within it only", "", Shape::list};
  return {"Construction factors",
          {{"factors",
            "Whether each of several factors makes a difference, among items alike in the others",
            "--values 1.2,1.9,3.1,4.2,2.2,3.4 --factors \"0 1 0 1 0 1; 0 0 1 1 2 2\"",
            {values,
             {"--factors", "A row for each factor: the level of each item, from 0; semicolon between rows",
              Argument::required, Shape::raters},
             blocks,
             seed_argument(),
             draws_argument()},
            factors_figures},
           {"contrast",
            "Whether levels differ by a planned comparison, within blocks",
            "--values 1.2,1.9,3.1,4.2,2.2,3.4 --levels 0,1,0,1,0,1 --blocks 1,1,2,2,3,3 --weights \"-1 1\"",
            {values,
             {"--levels", "The level of each item, from 0", Argument::required, Shape::list},
             {"--weights", "A weight for each level from 0; their sum 0", Argument::required, Shape::list},
             blocks,
             alternative_argument(),
             seed_argument(),
             draws_argument()},
            contrast_figures}}};
}

}  // namespace desk
