#include "desk/calculator/calculator_permutation.h"

namespace desk {

void add_permutation_p(Figures& figures, const stats::PermutationP& test, const std::string& against) {
  figures.figures.push_back({"p", "permutation p", test.p, against});
  figures.figures.push_back(
      {"exact", "exact", test.exact, test.exact ? "every arrangement counted" : "arrangements drawn"});
  figures.figures.push_back({"draws", "draws", test.draws});
  figures.figures.push_back(
      {"p_standard_error", "standard error of p", test.standard_error, "by the draws; 0 when exact"});
}

}  // namespace desk
