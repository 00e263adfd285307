#include "desk/calculator/topics/topics.h"
#include "text/number.h"

namespace desk {

const std::string list_form =
    "separated by spaces or semicolons, \"0,5; 0,7\"; or by commas, with decimal points: 0.5,0.7";

Argument level_argument() { return {"--level", "Level of significance", "0.05"}; }

Argument chance_argument() {
  return {"--chance", "Probability that a guess is right; 1/3 for the triangle", "0.5"};
}

Argument alternative_argument() { return {"--alternative", "two-sided, greater or less", "two-sided"}; }

Argument seed_argument() {
  return {"--seed", "Seed of the random arrangements, drawn where there are too many to count", "1"};
}

Argument draws_argument() { return {"--draws", "Number of random arrangements", "99999"}; }

void add_permutation_p(Figures& figures, const stats::PermutationP& test, const std::string& against) {
  figures.figures.push_back({"p", "permutation p", test.p, against});
  figures.figures.push_back(
      {"exact", "exact", test.exact, test.exact ? "every arrangement counted" : "arrangements drawn"});
  figures.figures.push_back({"draws", "draws", test.draws});
  figures.figures.push_back(
      {"p_standard_error", "standard error of p", test.standard_error, "by the draws; 0 when exact"});
}

void add_limits(Figures& figures, const std::string& key, const std::string& label,
                const stats::Interval& limits, const std::string& note) {
  figures.add(key + "_lower", label + " from", limits.lower, note);
  figures.add(key + "_upper", label + " to", limits.upper, note);
}

std::string per_cent(double share) {
  return text::shortest(text::number(text::significant(100 * share, 6)).value()) + " %";
}

}  // namespace desk
