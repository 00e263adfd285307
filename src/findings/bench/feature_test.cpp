#include "findings/bench/feature_test.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "text/utf8.h"

namespace findings {
namespace {

/// What two states have in common.
using Names = std::tuple<std::string, std::string, std::string, std::string, std::string, std::string,
                         std::string, std::optional<double>>;
using Curves = std::vector<std::vector<double>>;

Names names_of(const Measurement& one) {
  const bool has_one_row = one.kind == "cable-lcr" || one.kind == "phase";
  return {one.cable, one.feature,   one.kind,       one.rig,
          one.piece, one.condition, one.instrument, has_one_row ? one.single("frequency_hz") : std::nullopt};
}

/// The quantities that every reading has, in the order of the first.
std::vector<std::string> common_quantities(const std::vector<const Measurement*>& all) {
  std::vector<std::string> common;
  for (const Quantity& quantity : quantities_of(*all.front())) common.push_back(quantity.name);
  for (const Measurement* one : all) {
    const auto own = quantities_of(*one);
    std::erase_if(common, [&](const std::string& name) {
      return std::none_of(own.begin(), own.end(), [&](const Quantity& each) { return each.name == name; });
    });
  }
  return common;
}

Curves curves_of(const std::vector<const Measurement*>& readings,
                 const std::vector<std::string>& quantities) {
  Curves curves;
  for (const Measurement* one : readings) {
    const auto own = quantities_of(*one);
    auto& curve = curves.emplace_back();
    for (const std::string& name : quantities)
      curve.push_back(std::find_if(own.begin(), own.end(), [&](const Quantity& each) {
                        return each.name == name;
                      })->value);
  }
  return curves;
}

FeatureTest test_of(const Names& names, const std::string& first_state,
                    const std::vector<const Measurement*>& first, const std::string& second_state,
                    const std::vector<const Measurement*>& second) {
  FeatureTest test{std::get<0>(names),
                   std::get<1>(names),
                   std::get<2>(names),
                   std::get<3>(names),
                   first_state,
                   second_state,
                   static_cast<int>(first.size()),
                   static_cast<int>(second.size()),
                   {},
                   false,
                   {},
                   {}};
  std::vector<const Measurement*> all = first;
  all.insert(all.end(), second.begin(), second.end());
  test.quantities = common_quantities(all);
  if (test.quantities.empty()) return test;
  test.is_relative = quantities_of(*all.front()).front().is_logarithm;
  const Curves one = curves_of(first, test.quantities), other = curves_of(second, test.quantities);
  if (all.size() >= 3) {
    test.tested = stats::max_difference_test(one, other, stats::Alternative::two_sided);
    test.difference = test.tested->difference;
    return test;
  }
  for (std::size_t i = 0; i < test.quantities.size(); ++i)
    test.difference.push_back(one.front()[i] - other.front()[i]);
  return test;
}

bool means_on(const std::string& state) {
  const std::string word = text::lower_case(state);
  return word == "on" || word == "yes" || word == "connected";
}

}  // namespace

std::vector<FeatureTest> feature_tests(const std::vector<Measurement>& measurements) {
  std::map<Names, std::vector<std::pair<std::string, std::vector<const Measurement*>>>> states;
  std::vector<Names> order;
  for (const Measurement& one : measurements) {
    if (one.superseded || one.feature.empty()) continue;
    auto& of_names = states[names_of(one)];
    if (of_names.empty()) order.push_back(names_of(one));
    const auto state = std::find_if(of_names.begin(), of_names.end(),
                                    [&](const auto& each) { return each.first == one.state; });
    if (state == of_names.end())
      of_names.push_back({one.state, {&one}});
    else
      state->second.push_back(&one);
  }
  std::vector<FeatureTest> tests;
  for (const Names& names : order) {
    auto& of_names = states[names];
    std::stable_sort(of_names.begin(), of_names.end(),
                     [](const auto& a, const auto& b) { return means_on(a.first) > means_on(b.first); });
    for (std::size_t i = 0; i < of_names.size(); ++i)
      for (std::size_t j = i + 1; j < of_names.size(); ++j)
        tests.push_back(
            test_of(names, of_names[i].first, of_names[i].second, of_names[j].first, of_names[j].second));
  }
  return tests;
}

}  // namespace findings
