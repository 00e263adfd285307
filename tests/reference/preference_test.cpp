// Consistency and agreement of preferences against every tournament and every table counted in Python.
#include "reference/draws.h"
#include "stats/preference/circular_triads.h"
#include "stats/preference/preference_agreement.h"

namespace reference {
namespace {

using PreferencePython = AgainstPython;

/// @param wins  for the first of each pair of items, pair after pair, out of `each`.
stats::PreferenceTable table_of(int items, int each, const Numbers& wins) {
  const auto n = static_cast<std::size_t>(items);
  stats::PreferenceTable table(n, std::vector<int>(n));
  auto win = wins.begin();
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j, ++win) {
      table[i][j] = static_cast<int>(*win);
      table[j][i] = each - table[i][j];
    }
  return table;
}

TEST_F(PreferencePython, CircularTriadsAreThoseOfEveryTournament) {
  const auto calls = drawn(40, 2'000, [](Draws& draws) -> std::vector<Numbers> {
    const int items = draws.whole(3, 7);
    return {draws.wholes(items * (items - 1) / 2, draws.one_in(10) ? 1 : 0, 1), {double(items)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found = stats::circular_triads(table_of(call.whole(1), 1, call.list(0)));
    return {double(found.triads), double(found.most), found.zeta, found.test.p};
  };
  expect_alike({"preference.py", "triads", "outcomes,items"}, calls, ours, {1e-13, 1e-16});
}

TEST_F(PreferencePython, AgreementIsThatOfEveryTable) {
  const auto calls = drawn(60, 3'000, [](Draws& draws) -> std::vector<Numbers> {
    const int items = draws.whole(2, 6), listeners = draws.whole(2, 12);
    Numbers wins;
    const double share = draws.closed_share();
    for (int pair = 0; pair < items * (items - 1) / 2; ++pair)
      wins.push_back(draws.binomial(listeners, share));
    return {wins, {double(items), double(listeners)}};
  });
  const auto ours = [](const Call& call) -> Numbers {
    const auto found =
        stats::preference_agreement(table_of(call.wholes(1)[0], call.wholes(1)[1], call.list(0)));
    return {double(found.agreements), found.u, found.test.p};
  };
  expect_alike({"preference.py", "agreement", "wins,shape"}, calls, ours, {1e-12, 1e-15});
}

}  // namespace
}  // namespace reference
