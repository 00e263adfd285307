#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/preference/circular_triads.h"
#include "stats/preference/preference_agreement.h"
#include "stats/worth/row_means.h"
#include "text/error.h"

namespace desk {
namespace {

Figures triads_figures(const Given& given) {
  const auto found = stats::circular_triads(given.count_rows("wins"), given.draws());
  Figures figures{"consistency of one listener's preferences",
                  {{"circular_triads", "circular triads", static_cast<long long>(found.triads),
                    "three items, each preferred to the next in a circle"},
                   {"expected", "by guessing", found.expected, "on average"},
                   {"most", "at most", static_cast<long long>(found.most), "for so many items"},
                   {"zeta", "consistency zeta", found.zeta, "1 if one ranking holds all preferences"}}};
  add_permutation_p(figures, found.test, "as few circular triads or fewer, by guessing");
  return figures;
}

Figures alike_figures(const Given& given) {
  const auto found = stats::preference_agreement(given.count_rows("wins"), given.draws());
  Figures figures{"agreement of several listeners' preferences",
                  {{"agreements", "agreements", static_cast<long long>(found.agreements),
                    "pairs of listeners with the same preference, over all pairs of items"},
                   {"u", "coefficient u", found.u, "1 if all prefer alike, 0 by chance"},
                   {"lowest_u", "at least", found.lowest_u, "for so many listeners"}}};
  add_permutation_p(figures, found.test, "as many agreements or more, by guessing");
  figures.add("chi_square", "chi-square", known(found.chi_square),
              found.chi_square ? "an approximation, for comparison with published ones"
                               : "not defined for two listeners");
  figures.add("degrees_of_freedom", "degrees of freedom", known(found.degrees_of_freedom), "of it");
  return figures;
}

Figures row_means_figures(const Given& given) {
  const stats::CountTable wins = given.count_rows("wins");
  const auto means = stats::thurstone_row_means(wins);
  if (!means)
    throw text::BadInput(
        "a pair was not compared, or answered alike by all: there is no deviate of it\n"
        "calc worths --model normal does without it");
  return {"scale by Thurstone's row means (case V)",
          {{"items", "items", std::ssize(wins)}},
          {{"scale", "scale, the first 0", *means}}};
}

Argument wins_argument(const std::string& counts) {
  return {"wins",
          "A row for each item, in it " + counts +
              " to each item in the same order, 0 to itself; semicolon between rows",
          Argument::required, Shape::rows};
}

}  // namespace

Topic preferences_topic() {
  return {"Preferences, two items at a time",
          {{"triads",
            "How consistent one listener's preferences are",
            "\"0,1,1,1,1; 0,0,1,1,1; 0,0,0,1,0; 0,0,0,0,1; 0,0,1,0,0\"",
            {wins_argument("1 where it was preferred"), seed_argument(), draws_argument()},
            triads_figures},
           {"alike",
            "Whether several listeners prefer alike, each pair compared once by each",
            "\"0,5,6; 1,0,5; 0,1,0\"",
            {wins_argument("how many preferred it"), seed_argument(), draws_argument()},
            alike_figures},
           {"row-means",
            "Thurstone's own way to a scale, for comparison with published ones",
            "\"0,3,2,2; 12,0,11,3; 13,4,0,5; 13,12,10,0\"",
            {wins_argument("how often it was preferred")},
            row_means_figures}}};
}

}  // namespace desk
