#include <gtest/gtest.h>

#include "desk/calculated.h"
#include "text/number.h"

namespace desk {
namespace {

/// Half a unit of the tenth decimal, to which most check values are printed.
constexpr double tenth_decimal = 5.1e-11;

double number(const Figures& figures, const std::string& key) { return std::get<double>(figures.at(key)); }
long long count(const Figures& figures, const std::string& key) {
  return std::get<long long>(figures.at(key));
}
bool yes(const Figures& figures, const std::string& key) { return std::get<bool>(figures.at(key)); }
bool nothing(const Figures& figures, const std::string& key) {
  return std::holds_alternative<std::monostate>(figures.at(key));
}

void expect_near(const std::vector<double>& found, const std::vector<double>& expected, double tolerance) {
  ASSERT_EQ(found.size(), expected.size());
  for (std::size_t i = 0; i < found.size(); ++i) EXPECT_NEAR(found[i], expected[i], tolerance) << "at " << i;
}

// BIN-4, recomputed: pbinom(x - 1, n, .5, lower.tail = FALSE) in R.
TEST(CalculateRight, HasTheExactTail) {
  for (const auto& [counts, p] : std::map<std::string, double>{{"5 5", .03125},
                                                               {"7 8", .03515625},
                                                               {"9 10", .0107421875},
                                                               {"12 16", 2517.0 / 65536},
                                                               {"14 20", .057659149170},
                                                               {"18 25", .02164262533},
                                                               {"61 100", .01760010011}})
    EXPECT_NEAR(number(calculated("right " + counts), "p_one_sided"), p, tenth_decimal) << counts;
}

// BIN-4, recomputed: binom.test(12, 16) and binom.test(7, 20, .3) in R; Mendel, 682 of 925 (Conover, in the
// help page of binom.test).
TEST(CalculateRight, HasTheTwoSidedPAtAnyChance) {
  EXPECT_NEAR(number(calculated("right 12 16"), "p_two_sided"), .07681274414, tenth_decimal);
  EXPECT_NEAR(number(calculated("right 7 20 --chance 0,3"), "p_two_sided"), .6294979667, tenth_decimal);
  const Figures mendel = calculated("right 682 925 --chance 3/4");
  EXPECT_NEAR(number(mendel, "p_two_sided"), .3824916, 5.1e-8);
  EXPECT_NEAR(number(mendel, "clopper_pearson_lower"), .7076682641, tenth_decimal);
  EXPECT_NEAR(number(mendel, "clopper_pearson_upper"), .7654065582, tenth_decimal);
}

// CI-2, recomputed: qbeta and prop.test(correct = FALSE) in R; one-sided qbeta(.05, 12, 5).
TEST(CalculateRight, HasEveryInterval) {
  const Figures figures = calculated("right 12 16");
  EXPECT_NEAR(number(figures, "lower_limit"), .515603578906, 5.1e-13);
  EXPECT_NEAR(number(figures, "clopper_pearson_lower"), .47622918, 5.1e-9);
  EXPECT_NEAR(number(figures, "clopper_pearson_upper"), .92733796, 5.1e-9);
  EXPECT_NEAR(number(figures, "wilson_lower"), .50501683, 5.1e-9);
  EXPECT_NEAR(number(figures, "wilson_upper"), .89817933, 5.1e-9);
}

// The minimum is that of BIN-2 (GOST ISO 10399-2015 table A.1, read in a secondary copy). The share
// caught is held against the definition: there, the probability of that minimum is 0.8.
TEST(CalculateRight, SaysWhatTheDesignNeedsAndWouldHaveCaught) {
  const Figures figures = calculated("right 12 16");
  EXPECT_TRUE(yes(figures, "reaches_level"));
  EXPECT_FALSE(yes(calculated("right 11 16"), "reaches_level"));
  EXPECT_EQ(count(figures, "minimum_correct"), 12);
  EXPECT_EQ(count(calculated("right 12 16 --level 0.01"), "minimum_correct"), 14);
  const double caught = number(figures, "share_caught");
  const std::string typed = text::shortest(caught);
  EXPECT_NEAR(number(calculated("power 16 --share " + typed), "power"), 0.8, 1e-12);
  EXPECT_DOUBLE_EQ(number(figures, "heard_when_caught"), 2 * caught - 1);
  EXPECT_EQ(number(calculated("right 0 16"), "share_caught"), caught) << "depends on the design alone";
}

TEST(CalculateRight, IsNothingWhereTheTestCannotSucceed) {
  const Figures figures = calculated("right 4 4");
  EXPECT_TRUE(nothing(figures, "minimum_correct"));
  EXPECT_TRUE(nothing(figures, "share_caught"));
  EXPECT_TRUE(nothing(figures, "heard_when_caught"));
}

// Recomputed, pbinom in R: 16 trials need 12 alone, 14 at the first of 7 Holm steps, 15 at the first of 31.
// Triangle, 18 trials: FAO sensory guide, appendix A (BIN-1). Two-sided, 20 trials: BIN-3, recomputed.
TEST(CalculateNeed, AgreesWithTheTables) {
  const Figures seven = calculated("need 16 --comparisons 7");
  EXPECT_EQ(count(seven, "minimum_correct"), 12);
  EXPECT_EQ(count(seven, "minimum_correct_first_step"), 14);
  EXPECT_NEAR(number(seven, "p_first_step"), .002090454102, 5.1e-13);  // BIN-4
  EXPECT_EQ(count(calculated("need 16 --comparisons 31"), "minimum_correct_first_step"), 15);
  EXPECT_EQ(count(calculated("need 18 --chance 1/3 --level 0.001"), "minimum_correct"), 13);
  const Figures two_sided = calculated("need 20 --chance 1/2 --level .01 --two-sided");
  EXPECT_EQ(count(two_sided, "minimum_correct"), 17);
  EXPECT_LE(number(two_sided, "p"), 0.01);
}

TEST(CalculateNeed, SaysWhenItIsImpossible) {
  const Figures figures = calculated("need 5 --comparisons 2");
  EXPECT_EQ(count(figures, "minimum_correct"), 5);
  EXPECT_TRUE(nothing(figures, "minimum_correct_first_step"));
  EXPECT_TRUE(nothing(figures, "p_first_step"));
  EXPECT_NE(figures_text(figures).find("right needed, first step  none     impossible: not even 5 of 5\n"),
            std::string::npos)
      << figures_text(figures);
}

// PW-1, recomputed: qbinom and pbinom in R, level 0.05 but for the last.
TEST(CalculateSize, AgreesWithRecomputedTrials) {
  const Figures seventy = calculated("size --share 0.7");
  EXPECT_EQ(count(seventy, "trials_first"), 37);
  EXPECT_EQ(count(seventy, "minimum_correct_first"), 24);
  EXPECT_NEAR(number(seventy, "power_first"), .8070956917, tenth_decimal);
  EXPECT_NEAR(number(seventy, "size_first"), .0494358748, tenth_decimal);
  EXPECT_EQ(count(seventy, "trials_stable"), 42);
  EXPECT_EQ(count(seventy, "minimum_correct_stable"), 27);
  const Figures sixty = calculated("size --share 0,60 --power 0,90");
  EXPECT_EQ(count(sixty, "trials_first"), 213);
  EXPECT_EQ(count(sixty, "trials_stable"), 224);
  const Figures strict = calculated("size --share 0.7 --power 0.8 --level 0.01");
  EXPECT_EQ(count(strict, "trials_first"), 64);
  EXPECT_EQ(count(strict, "minimum_correct_first"), 42);
}

// Level 0.05 shared by 5 comparisons is 0.01 at the first step: PW-1 again.
TEST(CalculateSize, DividesTheLevelByTheComparisons) {
  const Figures family = calculated("size --share 0.7 --power 0.8 --comparisons 5");
  EXPECT_EQ(count(family, "trials_first"), 64);
}

TEST(CalculateSize, IsNothingForAShareAtChance) {
  const Figures figures = calculated("size --share 0.5");
  EXPECT_TRUE(nothing(figures, "trials_first"));
  EXPECT_TRUE(nothing(figures, "power_stable"));
  EXPECT_EQ(number(figures, "share_heard"), 0);
}

// PW-2 and LEV-3, recomputed: pbinom in R.
TEST(CalculatePower, ShowsTheSawTooth) {
  const Figures eighteen = calculated("power 18 --share 0.7"), twenty = calculated("power 20 --share 0.7");
  EXPECT_NEAR(number(eighteen, "power"), .5343800978, tenth_decimal);
  EXPECT_NEAR(number(eighteen, "size"), .0481262207, tenth_decimal);
  EXPECT_NEAR(number(twenty, "power"), .4163708294, tenth_decimal);
  EXPECT_NEAR(number(calculated("power 16 --share 0.9"), "missed"), .01700399828, tenth_decimal);
}

// Three answers always alike, 36 of 48 right, are 12 of 16: the binomial tail 2517/65536 (BIN-4). One answer
// a trial is the binomial itself.
TEST(CalculateRedraw, IsTheBinomialWhereAnswersAreAlike) {
  std::string alike_trials, alone_trials;
  for (int i = 0; i < 16; ++i) {
    alike_trials += i % 3 == 0 ? " 0:3" : " 3:0";
    alone_trials += " 1:0";
  }
  const Figures alike = calculated("redraw" + alike_trials + " --observed 36");
  const Figures alone = calculated("redraw" + alone_trials + " --observed 12");
  EXPECT_DOUBLE_EQ(number(alike, "p_one_sided"), 2517.0 / 65536);
  EXPECT_DOUBLE_EQ(number(alike, "p_two_sided"), 2 * 2517.0 / 65536);
  EXPECT_DOUBLE_EQ(number(alone, "p_one_sided"), 2517.0 / 65536);
  EXPECT_EQ(count(alike, "minimum_total"), 36);
  EXPECT_EQ(count(alike, "answers"), 48);
}

// By hand: 3:0, 2:1 and 0:3 total 8 or 7 when both outer coins fall well, each with probability 1/8.
TEST(CalculateRedraw, AgreesWithACountByHand) {
  const Figures figures = calculated("redraw 3:0 2:1 0:3 --observed 7");
  EXPECT_EQ(number(figures, "p_one_sided"), 0.25);
  EXPECT_EQ(number(figures, "p_two_sided"), 0.5);
  EXPECT_TRUE(nothing(figures, "minimum_total"));
}

// CO-5: Benjamini and Hochberg, J. R. Stat. Soc. B 57 (1995) 289, section 4; adjusted values recomputed:
// p.adjust in R.
TEST(CalculateAdjust, AgreesWithBenjaminiAndHochbergsExample) {
  const Figures figures = calculated(
      "adjust .0001,.0004,.0019,.0095,.0201,.0278,.0298,.0344,.0459,.3240,.4262,.5719,.6528,.7590,1");
  expect_near(series(figures, "benjamini_hochberg"),
              {.0015, .003, .0095, .035625, .0603, .0638571429, .0638571429, .0645, .0765, .486, .5811818182,
               .714875, .7532307692, .8132142857, 1},
              tenth_decimal);
  expect_near(series(figures, "holm"),
              {.0015, .0056, .0247, .114, .2211, .278, .278, .278, .3213, 1, 1, 1, 1, 1, 1}, tenth_decimal);
  EXPECT_EQ(count(figures, "benjamini_hochberg_supported"), 4);
  EXPECT_EQ(count(figures, "holm_supported"), 3);
  EXPECT_EQ(count(figures, "bonferroni_supported"), 3);
}

// AG-1: J. Cohen, Educ. Psychol. Meas. 20 (1960) 37, table 1 as counts (memory); standard errors recomputed,
// the first also by vcd::Kappa in R.
TEST(CalculateKappa, AgreesWithCohensTable) {
  for (const std::string rows : {"88,10,2;14,40,6;18,10,12", "'88 10 2' '14, 40, 6; 18 10 12'"}) {
    const Figures figures = calculated("kappa " + rows);
    EXPECT_NEAR(number(figures, "kappa"), .4915254237, tenth_decimal);
    EXPECT_NEAR(number(figures, "observed_agreement"), .70, 1e-15);
    EXPECT_NEAR(number(figures, "expected_agreement"), .41, 1e-15);
    EXPECT_NEAR(number(figures, "standard_error"), .05100181558, tenth_decimal);
    EXPECT_NEAR(number(figures, "null_standard_error"), .05197893636, tenth_decimal);
    EXPECT_NEAR(number(figures, "z"), 9.456242436, 5.1e-10);
    EXPECT_EQ(count(figures, "things"), 200);
  }
}

// AG-3: J. L. Fleiss, Psychol. Bull. 76 (1971) 378 (data confirmed: R package irr, diagnoses; kappa printed
// .430); null standard error after Fleiss, Nee and Landis (1979), recomputed.
TEST(CalculateFleiss, AgreesWithFleissTable) {
  const Figures figures = calculated(
      "fleiss '0,0,0,6,0; 0,3,0,0,3; 0,1,4,0,1; 0,0,0,0,6; 0,3,0,3,0; 2,0,4,0,0; 0,0,4,0,2' '2,0,3,1,0; "
      "2,0,0,4,0; 0,0,0,0,6; 1,0,0,5,0; 1,1,0,4,0; 0,3,3,0,0; 1,0,0,5,0' '0,2,0,3,1; 0,0,5,0,1; 3,0,0,1,2; "
      "5,1,0,0,0; 0,2,0,4,0; 1,0,2,0,3; 0,0,0,0,6' '0,1,0,5,0; 0,2,0,1,3; 2,0,0,4,0; 1,0,0,4,1; 0,5,0,1,0; "
      "4,0,0,0,2; 0,2,0,4,0' '1,0,5,0,0; 0,0,0,0,6'");
  EXPECT_EQ(count(figures, "subjects"), 30);
  EXPECT_EQ(count(figures, "raters"), 6);
  EXPECT_NEAR(number(figures, "kappa"), .4302445201, tenth_decimal);
  EXPECT_NEAR(number(figures, "observed_agreement"), .5555555556, tenth_decimal);
  EXPECT_NEAR(number(figures, "expected_agreement"), .2199382716, tenth_decimal);
  EXPECT_NEAR(number(figures, "null_standard_error"), .0243739321, tenth_decimal);
}

// BIN-8, Fisher's tea tasting (1935, memory; recomputed): four of eight right by both, on the same four
// trials 1/70, on three of the four 17/70.
TEST(CalculateAgree, IsFishersExactTestForTwoListeners) {
  const Figures same = calculated("agree 11110000 11110000");
  EXPECT_NEAR(number(same, "p"), 1.0 / 70, 1e-15);
  EXPECT_EQ(number(same, "raw_agreement"), 1);
  const Figures three = calculated("agree 11110000 11101000");
  EXPECT_NEAR(number(three, "p"), 17.0 / 70, 1e-14);
  EXPECT_EQ(number(three, "raw_agreement"), 0.75);
  EXPECT_TRUE(yes(three, "exact"));
}

TEST(CalculateAgree, LeavesMissingMarksOut) {
  const Figures figures = calculated("agree 1101 1011 1-0.");
  EXPECT_EQ(count(figures, "pairs"), 8);
  EXPECT_EQ(count(figures, "agreeing"), 5);
  EXPECT_EQ(number(figures, "raw_agreement"), 0.625);
  EXPECT_EQ(series(figures, "answered"), (std::vector<double>{4, 4, 2}));
  EXPECT_EQ(series(figures, "right"), (std::vector<double>{3, 3, 1}));
  EXPECT_TRUE(nothing(calculated("agree 1- -1"), "raw_agreement"));
}

// CO-3: tuna, Hollander and Wolfe in the help page of cor.test in R (confirmed; recomputed).
TEST(CalculateCorrelate, AgreesWithHollanderAndWolfesTuna) {
  const Figures figures = calculated(
      "correlate --x 44.4,45.9,41.9,53.3,44.7,44.1,50.7,45.2,60.1 --y 2,6 3,1 2,5 5,0 3,6 4,0 5,2 2,8 3,8");
  EXPECT_NEAR(number(figures, "rho"), .6, 1e-14);
  EXPECT_NEAR(number(figures, "p"), .09679784, 5.1e-9);
  EXPECT_TRUE(yes(figures, "exact"));
  EXPECT_NEAR(number(figures, "smallest_rho"), .700, 5.1e-4);  // CO-1: n = 9, one-tailed .025 (Zar, memory)
}

// Four untied pairs: 24 pairings, two of them extreme. CO-1: no critical value at one-tailed .025.
TEST(CalculateCorrelate, SaysWhenNoOutcomeReachesTheLevel) {
  const Figures figures = calculated("correlate --x 1,2,3,4 --y 2,1,3,4");
  EXPECT_NEAR(number(figures, "smallest_attainable_p"), 2.0 / 24, 1e-15);
  EXPECT_TRUE(nothing(figures, "smallest_rho"));
  EXPECT_NEAR(number(calculated("correlate --x 1,2,3,4 --y 1,2,3,4 --alternative greater"), "p"), 1.0 / 24,
              1e-15);
}

TEST(CalculateCorrelate, DrawsTheSameForTheSameSeed) {
  const std::string x = "correlate --x 1 2 3 4 5 6 7 8 9 10 11 12 13 14 --draws 999",
                    near = x + " --y 2 1 4 3 6 5 14 7 10 9 12 11 8 13 --seed 7",
                    far = x + " --y 8 1 14 3 6 5 4 13 10 9 12 11 2 7 --seed ";
  const Figures once = calculated(near), again = calculated(near);
  EXPECT_FALSE(yes(once, "exact"));
  EXPECT_EQ(count(once, "draws"), 999);
  EXPECT_GT(number(once, "p_standard_error"), 0);
  EXPECT_EQ(number(once, "p"), number(again, "p"));
  EXPECT_NE(number(calculated(far + "8"), "p"), number(calculated(far + "9"), "p"));
}

// CO-7, by complete separation: 2 of C(7, 3) = 35, and 1 of C(6, 3) = 20. Interval recomputed: Welch's
// formula with scipy.stats.t.ppf.
TEST(CalculateDiffer, AgreesWithKnownPermutationTests) {
  const Figures figures = calculated("differ --x 12;15;18;20 --y '21, 25, 28'");
  EXPECT_NEAR(number(figures, "p"), 2.0 / 35, 1e-15);
  EXPECT_NEAR(number(figures, "welch_lower"), -15.568323744087257, 1e-11);
  EXPECT_NEAR(number(figures, "welch_upper"), -1.2650095892460786, 1e-11);
  EXPECT_DOUBLE_EQ(number(figures, "mean_difference"), 65.0 / 4 - 74.0 / 3);
  EXPECT_NEAR(number(calculated("differ --x 121,118,110 --y 34,12,22 --alternative greater"), "p"), .05,
              1e-15);
  EXPECT_TRUE(nothing(calculated("differ --x 1 --y '2 3'"), "welch_lower"));
}

TEST(CalculatedLists, TakeDecimalCommasBetweenSpacesOrSemicolons) {
  const std::vector<double> expected{0.5, 0.7};
  for (const std::string words :
       {"0.5,0.7", "'0,5; 0,7'", "0,5;0,7", "0,5 0,7", "'0.5 0.7'", "'0.5, 0.7'", "'0,5, 0,7'", ".5 0.7"})
    EXPECT_EQ(series(calculated("adjust " + words), "p"), expected) << words;
  EXPECT_EQ(series(calculated("adjust 1,1,0"), "p"), (std::vector<double>{1, 1, 0}));
}

}  // namespace
}  // namespace desk
