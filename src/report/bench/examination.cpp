#include <algorithm>
#include <cmath>

#include "report/bench/bench_report.h"
#include "report/content/words.h"
#include "text/number.h"

namespace report {
namespace {

using findings::BenchComparison;
using findings::BenchDifference;
using findings::FeatureTest;

std::string kind_words(const std::string& kind, const std::string& rig) {
  return (kind == "cable-lcr" ? "totals of the cable" : kind) + (rig.empty() ? "" : " on rig " + rig);
}

/// A difference of logarithms in per cent.
double shown_size(double value, bool is_relative) { return is_relative ? 100 * std::expm1(value) : value; }

int usual_decimals(bool is_relative) { return is_relative ? 1 : 2; }

std::string with_unit(const std::string& number, bool is_relative, const std::string& kind) {
  return number + (is_relative ? " %" : kind == "phase" ? " deg" : " dB");
}

/// With its sign; `shown` as shown_size gives it.
std::string signed_words(double shown, int decimals, bool is_relative, const std::string& kind) {
  return (shown > 0 ? "+" : "") + with_unit(number_words(shown, decimals), is_relative, kind);
}

/// A number of per cent would mean nothing: a repeat must be mistaken.
bool is_too_far_apart(double spread, bool is_relative) { return is_relative && spread > std::log(10.0); }

/// How far repeats lie apart.
std::string spread_size_words(double value, bool is_relative, const std::string& kind) {
  if (is_too_far_apart(value, is_relative)) return "more than ten times";
  return with_unit(number_words(shown_size(value, is_relative), usual_decimals(is_relative)), is_relative,
                   kind);
}

Section doubts_section(const findings::BenchFindings& bench) {
  Section section{2, "doubts", "What can hardly be", {}};
  if (bench.doubts.empty()) {
    section.blocks.push_back(
        Paragraph{"Nothing: no reading disagrees with light, copper, the standard, its repeats or the "
                  "prediction from its own totals."});
    return section;
  }
  Points points{{}, true};
  for (const findings::Doubt& doubt : bench.doubts)
    points.points.push_back((doubt.cable.empty() ? "" : doubt.cable + ", ") + doubt.what +
                            ". What would explain it: " + doubt.explanation + ".");
  section.blocks.push_back(std::move(points));
  section.blocks.push_back(
      Paragraph{"A mistaken reading is measured again, imported under another repeat and superseded by it; "
                "both are kept."});
  return section;
}

std::string spread_words(const BenchComparison& comparison) {
  if (std::none_of(comparison.repeatability.begin(), comparison.repeatability.end(),
                   [](const auto& each) { return each.within.standard_deviation.has_value(); }))
    return "Nothing was measured twice, so that nothing is known of the repeatability.";
  std::string words = "One standard deviation of repeats: ";
  if (comparison.repeatability.size() > 4) {
    const auto largest = std::max_element(
        comparison.repeatability.begin(), comparison.repeatability.end(), [](const auto& a, const auto& b) {
          return a.within.standard_deviation.value_or(0) < b.within.standard_deviation.value_or(0);
        });
    return words + "at most " +
           spread_size_words(*largest->within.standard_deviation, largest->is_relative, comparison.kind) +
           " (" + largest->quantity + ", " + std::to_string(largest->within.degrees_of_freedom) +
           " degrees of freedom).";
  }
  bool first = true;
  for (const auto& each : comparison.repeatability) {
    if (!each.within.standard_deviation) continue;
    words += (first ? "" : ", ") + each.quantity + " " +
             spread_size_words(*each.within.standard_deviation, each.is_relative, comparison.kind) + " (" +
             std::to_string(each.within.degrees_of_freedom) + " degrees of freedom)";
    first = false;
  }
  return words + ".";
}

/// As many decimals as tell two numbers apart that are not the same.
int telling_decimals(double one, double other, int usual) {
  constexpr int kMost = 6;
  int decimals = usual;
  while (decimals < kMost && text::fixed(one, decimals) == text::fixed(other, decimals)) ++decimals;
  return decimals == kMost ? usual : decimals;
}

/// "+52.6 %, beyond repeatability 0.9 %" or "0.04 dB, within repeatability 0.06 dB": the limit on the side of
/// the difference, as a third less is as far from the same as half as much again.
std::string difference_words(const BenchDifference& one, const std::string& kind) {
  const double size = shown_size(one.difference, one.is_relative);
  const auto size_words = [&](int decimals) { return signed_words(size, decimals, one.is_relative, kind); };
  const int usual = usual_decimals(one.is_relative);
  if (!one.repeatability_limit) return size_words(usual) + ", repeatability not known";
  const std::string side = one.is_beyond() ? ", beyond repeatability " : ", within repeatability ";
  if (is_too_far_apart(*one.repeatability_limit, one.is_relative))
    return size_words(usual) + side + "more than ten times";
  const double limit =
      std::abs(shown_size(std::copysign(*one.repeatability_limit, one.difference), one.is_relative));
  const int decimals = telling_decimals(std::abs(size), limit, usual);
  return size_words(decimals) + side + with_unit(number_words(limit, decimals), one.is_relative, kind);
}

std::string row_words(const BenchComparison::Row& row, const std::string& kind) {
  constexpr std::size_t kFew = 4;
  if (row.differences.size() <= kFew) {
    std::string words;
    for (const BenchDifference& one : row.differences)
      words += (words.empty() ? "" : "; ") + one.quantity + " " + difference_words(one, kind);
    return words;
  }
  const auto largest = std::max_element(
      row.differences.begin(), row.differences.end(),
      [](const auto& a, const auto& b) { return std::abs(a.difference) < std::abs(b.difference); });
  const auto beyond = std::count_if(row.differences.begin(), row.differences.end(),
                                    [](const BenchDifference& one) { return one.is_beyond(); });
  return "most at " + largest->quantity.substr(largest->quantity.find("at ") + 3) + ": " +
         difference_words(*largest, kind) + "; beyond repeatability in " + std::to_string(beyond) + " of " +
         std::to_string(row.differences.size()) + " bands";
}

Section comparison_section(const BenchComparison& comparison, const std::string& baseline,
                           std::size_t place) {
  Section section{3, "comparison-" + std::to_string(place), kind_words(comparison.kind, comparison.rig), {}};
  section.blocks.push_back(Paragraph{spread_words(comparison)});
  Table table{"Against " + baseline + ", mean of the repeats.",
              {{"cable"}, {"readings", true}, {"difference"}},
              {},
              {}};
  for (const BenchComparison::Row& row : comparison.rows) {
    std::string name = row.cable;
    for (const std::string* part : {&row.piece, &row.condition})
      if (!part->empty()) name += ", " + *part;
    if (!row.feature.empty()) name += ", " + row.feature + " " + row.state;
    if (row.cable == baseline)
      table.rows.push_back({name, std::to_string(row.readings), "the baseline"});
    else
      table.rows.push_back({name, std::to_string(row.readings),
                            row.differences.empty()
                                ? "the baseline has no reading under the same circumstances"
                                : row_words(row, comparison.kind)});
  }
  section.blocks.push_back(std::move(table));
  return section;
}

std::string feature_words(const FeatureTest& test) {
  std::string words = test.cable + ", " + kind_words(test.kind, test.rig) + ": " + test.feature + " " +
                      test.first_state + " less " + test.second_state + " (" +
                      std::to_string(test.first_readings) + " against " +
                      std::to_string(test.second_readings) + " readings)";
  if (test.difference.empty()) return words + ": the readings share no quantity";
  const std::size_t place =
      test.tested ? test.tested->place
                  : static_cast<std::size_t>(
                        std::max_element(test.difference.begin(), test.difference.end(),
                                         [](double a, double b) { return std::abs(a) < std::abs(b); }) -
                        test.difference.begin());
  words += ": " + test.quantities[place] + " " +
           signed_words(shown_size(test.difference[place], test.is_relative),
                        usual_decimals(test.is_relative), test.is_relative, test.kind);
  if (!test.tested) return words + "; not tested: that needs three readings in all, and more to say anything";
  words += ", p " + text::significant(test.tested->test.p, 3) + " over " +
           std::to_string(test.quantities.size()) +
           (test.quantities.size() == 1 ? " quantity" : " quantities") +
           " by permuting whole readings; so few readings cannot go below " +
           text::significant(test.tested->smallest_p, 3);
  if (test.tested->smallest_p > 0.05)
    words += ", so that no difference can be supported at 0.05: measure more often";
  return words;
}

Section features_section(const findings::BenchFindings& bench) {
  Points points;
  for (const FeatureTest& test : bench.features) points.points.push_back(feature_words(test) + ".");
  return {2, "features", "Features in two states", {std::move(points)}};
}

}  // namespace

Document examination_document(const findings::BenchFindings& bench) {
  Document document{bench.title, "What the readings are worth", {doubts_section(bench)}, "Readings"};
  document.sections.push_back(
      {2,
       "repeatability",
       "Differences beside repeatability",
       {Paragraph{bench.baseline.empty()
                      ? "No baseline is named yet, so nothing is compared: blindswap baseline CABLE."
                      : "A limit is what repeats alone would stay below in 95 of 100 comparisons; where many "
                        "quantities are "
                        "looked at, about one in twenty is beyond it by chance."}}});
  for (std::size_t i = 0; i < bench.comparisons.size(); ++i)
    if (!bench.baseline.empty())
      document.sections.push_back(comparison_section(bench.comparisons[i], bench.baseline, i + 1));
  if (!bench.features.empty()) document.sections.push_back(features_section(bench));
  return document;
}

}  // namespace report
