// Indices of blinding against the papers' formulas in R.
#include "reference/draws.h"
#include "stats/blinding/blinding_index.h"

namespace reference {
namespace {

using Blinding = AgainstR;

Numbers limits_of(const std::optional<stats::BlindingIndex>& found) {
  if (!found) return Numbers(6, kNothing);
  return {found->index,           found->standard_error, found->two_sided.lower,
          found->two_sided.upper, found->lower,          found->upper};
}

/// Three counts, each often 0, at least one subject in all.
Numbers drawn_guesses(Draws& draws) {
  Numbers counts;
  for (int i = 0; i < 3; ++i) counts.push_back(draws.one_in(4) ? 0 : draws.size(300));
  if (counts == Numbers(3, 0)) counts[static_cast<std::size_t>(draws.whole(0, 2))] = 1;
  return counts;
}

TEST_F(Blinding, BangsIndexIsThatOfThePaper) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) -> std::vector<Numbers> {
    const Numbers guesses = drawn_guesses(draws);
    return {{guesses[0]}, {guesses[1]}, {guesses[2]}, {draws.confidence()}};
  });
  const auto ours = [](const Call& call) {
    return limits_of(stats::bang_index(call.whole(0), call.whole(1), call.whole(2), call.number(3)));
  };
  // Limits near 0 are differences of numbers near 1.
  expect_alike({"blinding.R", "bang", "right,wrong,dont_know,confidence"}, calls, ours, {1e-11, 1e-13});
}

TEST_F(Blinding, JamesIndexIsThatOfThePaperWithTheDeltaMethod) {
  const auto calls = drawn(300, 10'000, [](Draws& draws) -> std::vector<Numbers> {
    Numbers first = drawn_guesses(draws);
    return {first, drawn_guesses(draws), {draws.confidence()}};
  });
  const auto ours = [](const Call& call) {
    const auto first = call.wholes(0), second = call.wholes(1);
    return limits_of(stats::james_index({first[0], first[1], first[2]}, {second[0], second[1], second[2]},
                                        call.number(2)));
  };
  // Where every answer is the same the error is 0; ours is then the root of a rounding, some 1e-9.
  expect_alike({"blinding.R", "james", "first,second,confidence"}, calls, ours, {1e-11, 1e-8});
}

}  // namespace
}  // namespace reference
