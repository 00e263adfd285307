#include "findings/correlation/outcome.h"

#include <cmath>
#include <set>

namespace findings {
namespace {

bool is_benchmark(const std::string& title, const std::vector<const ComparisonFinding*>& claims) {
  std::set<std::string> others;
  for (const ComparisonFinding* claim : claims) {
    if ((claim->first == title) == (claim->second == title)) return false;
    if (!others.insert(claim->first == title ? claim->second : claim->first).second) return false;
  }
  return true;
}

std::optional<std::string> benchmark_of(const std::vector<const ComparisonFinding*>& claims) {
  if (claims.empty()) return std::nullopt;
  for (const std::string& title : {claims.front()->first, claims.front()->second})
    if (is_benchmark(title, claims)) return title;
  return std::nullopt;
}

}  // namespace

double Outcome::share_of(const ComparisonFinding& finding) const {
  const Tally& tally = finding.primary.tally;
  const bool turned = !absolute && benchmark_is_first(finding);
  return 1.0 * (turned ? tally.answers - tally.score : tally.score) / tally.answers;
}

double Outcome::difference_of(const ComparisonFinding& finding, double second_less_first) const {
  if (absolute) return std::abs(second_less_first);
  return benchmark_is_first(finding) ? second_less_first : -second_less_first;
}

Outcome outcome_of(const plan::Plan& plan, const std::vector<const ComparisonFinding*>& claims) {
  Outcome outcome;
  outcome.benchmark = benchmark_of(claims);
  outcome.absolute = plan::protocol_of(plan).has_right_answer();
  if (outcome.absolute) {
    outcome.name = "share right";
    outcome.against = "absolute difference";
  } else if (outcome.benchmark) {
    outcome.name = "share for the cable set against " + *outcome.benchmark;
    outcome.against = "signed difference, that cable less " + *outcome.benchmark;
  } else {
    outcome.name = "share for the first cable";
    outcome.against = "signed difference, first less second";
  }
  return outcome;
}

}  // namespace findings
