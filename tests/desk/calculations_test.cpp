// The statistics beyond counts of right answers, as the calculator shows them. Values: see the tests of stats/ for their
// sources; here one of each calculation.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>

#include "desk/calculated.h"
#include "refusal.h"

namespace desk {
namespace {

double figure(const std::string& line, const std::string& key) {
  return std::get<double>(calculated(line).at(key));
}

TEST(Calculations, SayWhatIsMissing) {
  int asked = 0;
  for (const Topic& topic : topics())
    for (const Calculation& calculation : topic.calculations) {
      const auto& arguments = calculation.arguments;
      if (std::none_of(arguments.begin(), arguments.end(),
                       [](const Argument& one) { return one.is_required(); }))
        continue;
      ++asked;
      EXPECT_NE(refusal([&] {
                  calculated(calculation.name);
                }).find("is missing\nsee blindswap calc " + calculation.name + " --help"),
                std::string::npos)
          << calculation.name;
    }
  EXPECT_GT(asked, 30);
}

// CI-1 and CI-2, recomputed: qbeta(.025, x + .5, n - x + .5) and uniroot in R.
TEST(CalculateRight, HasJeffreysAndMidP) {
  EXPECT_NEAR(figure("right 12 16", "jeffreys_lower"), .50927101, 5.1e-9);
  EXPECT_NEAR(figure("right 12 16", "jeffreys_upper"), .90917180, 5.1e-9);
  EXPECT_NEAR(figure("right 12 16", "mid_p_lower"), .50106968, 5.1e-9);
}

// CI-3, recomputed: exact sums over x.
TEST(CalculateCoverage, IsExact) {
  EXPECT_NEAR(figure("coverage 50 --share 0.2", "wilson"), .950701, 5.1e-7);
  EXPECT_NEAR(figure("coverage 16 --share 0.5", "clopper_pearson"), .978729, 5.1e-7);
}

// PC-1 and PC-3, recomputed: 4 items with one ranking, 24 of 64 tournaments; 3 listeners of one mind on 3 items, 1/64.
TEST(CalculatePreferences, AreExact) {
  EXPECT_DOUBLE_EQ(figure("triads '0,1,1,1; 0,0,1,1; 0,0,0,1; 0,0,0,0'", "p"), 24.0 / 64);
  EXPECT_DOUBLE_EQ(figure("alike '0,3,3; 0,0,3; 0,0,0'", "p"), 1.0 / 64);
  EXPECT_DOUBLE_EQ(figure("alike '0,3,3; 0,0,3; 0,0,0'", "u"), 1);
  EXPECT_EQ(refusal([] { calculated("alike '0,3; 0'"); }),
            "rows must have equally many counts: row 1 has 2, row 2 has 1");
}

// PF-1, recomputed (tests/stats/psychometric).
TEST(CalculateThreshold, SaysWhetherThereIsOne) {
  const std::string levels =
      "threshold --levels -2,-1,0,1,2,3 --right 21,22,26,33,37,40 --trials 40 --link probit";
  EXPECT_NEAR(figure(levels, "threshold"), .6015645589, 2e-9);
  EXPECT_NEAR(figure(levels, "slope_error_expected"), .2031458806, 5e-9);
  EXPECT_NEAR(figure(levels, "slope_error_observed"), .2145054495, 5e-9);
  EXPECT_LT(figure(levels + " --at 0.6", "threshold"), 0);
  const auto flat = calculated("threshold --levels 1,2,3 --right 10,9,9 --trials 20");
  EXPECT_EQ(std::get<std::string>(flat.at("state")), "none: the share right may be the same at all levels");
  EXPECT_ANY_THROW(flat.at("threshold"));
  const auto step = calculated("threshold --levels 1,2,3 --right 10,9,20 --trials 20,20,20");
  EXPECT_EQ(std::get<double>(step.at("jump_lower")), 2);
  EXPECT_EQ(refusal([] { calculated("threshold --levels 1,2,3 --right 1;2 --trials 4"); }),
            "right must be as many as levels, got 2 and 3 levels");
  EXPECT_NEAR(figure("threshold --levels 1,2,3,1,2,3 --right 6,8,10,8,10,10 --trials 10 --listeners "
                     "1,1,1,2,2,2 --lapse 0.02",
                     "listener_spread"),
              0.5, 0.5);
}

// CO-7, and a factor that varies only with another.
TEST(CalculateFactors, ComparesWithinTheOthers) {
  EXPECT_DOUBLE_EQ(
      figure("contrast --values 12,15,18,20,21,25,28 --levels 0,0,0,0,1,1,1 --weights '1 -1'", "p"), 2 / 35.);
  EXPECT_DOUBLE_EQ(figure("rank-sum --x 12,15,18,20 --y 21,25,28", "p"), 2 / 35.);
  const auto factors = calculated("factors --values 1,3,5,7 --factors '0 1 0 1; 0 0 1 1; 0 0 1 1'");
  EXPECT_EQ(series(factors, "p").at(0), 0.5);
  EXPECT_TRUE(std::isnan(series(factors, "p").at(1)));
  EXPECT_EQ(refusal([] { calculated("factors --values 1;3 --factors '0 1 0'"); }),
            "levels of factor 1 must be as many as values, got 3 and 2 values");
  EXPECT_EQ(
      refusal([] { calculated("contrast --values 1,3,4 --levels 0,1,1 --weights '1 -1' --blocks 1,2,2"); }),
      "no block has all the levels with weights and values that differ: there is nothing to compare");
}

// BIN-8 (tea tasting) and R's metafor (tests/stats/effects).
TEST(CalculateCampaigns, ComparesThem) {
  EXPECT_NEAR(figure("two-shares 0 4 4 4", "p"), 2 / 70., 1e-15);
  EXPECT_NEAR(figure("effects --estimates 1.0,0.2 --errors 0.3,0.4", "between_variance"), .195, 1e-12);
  EXPECT_NEAR(figure("effects --estimates 1.0,0.2 --errors 0.3,0.4", "difference_p"), .109598583399, 5.1e-13);
  EXPECT_EQ(refusal([] { calculated("effects --estimates 1,2,3 --errors 1;2"); }),
            "estimates and errors must be equally many, got 3 and 2");
}

TEST(CalculateAssociation, PermutesByItemAndTakesAway) {
  const std::string pairs =
      "item-pairs --values 0.048,0.075,0.2,0.9 --first 1,1,1,2 --second 2,3,4,4 --outcomes 0.5,0.6,0.9,0.8";
  EXPECT_DOUBLE_EQ(figure(pairs, "p"), 1 / 24.);
  EXPECT_DOUBLE_EQ(figure(pairs, "smallest_attainable_p"), 1 / 24.);
  EXPECT_NEAR(figure("partial --x 1,2,3,4,5,6 --y 2,1,4,3,6,5 --controls '1 1 2 2 3 3'", "rho"), -1, 1e-12);
  const auto boot = calculated("correlate --x 1,2,3,4,7,9 --y 2,1,3,4,5,9 --bootstrap 999");
  EXPECT_LE(std::get<double>(boot.at("rho_lower")), std::get<double>(boot.at("rho")));
  EXPECT_DOUBLE_EQ(std::get<double>(boot.at("tau_smallest_p")), 2 / 720.);
  EXPECT_EQ(refusal([] { calculated("partial --x 1,2,3,4 --y 2,1,4,3 --controls '1 1 2'"); }),
            "each of controls must have as many values as x, got 3 and 4");
}

// CO-3, Hollander and Wolfe (R ?cor.test, confirmed).
TEST(CalculateCorrelate, HasKendallsTau) {
  const std::string line =
      "correlate --x 44.4,45.9,41.9,53.3,44.7,44.1,50.7,45.2,60.1 --y 2.6,3.1,2.5,5.0,3.6,4.0,5.2,2.8,3.8 "
      "--alternative greater";
  EXPECT_NEAR(figure(line, "tau_b"), .4444444444, 5.1e-11);
  EXPECT_NEAR(figure(line, "tau_p"), .05971947, 5.1e-9);
}

// CO-8, Hollander and Wolfe (memory; recomputed), and what the headers give: 2/16, 1/36, 1/216.
TEST(CalculateSamples, HasLinesPairsAndItems) {
  EXPECT_NEAR(figure("line --x 1,2,3,4,5 --y 1.26,1.27,1.12,1.16,1.03", "slope"), -.05625, 1e-14);
  EXPECT_NEAR(figure("line --x 1,2,3,4,5 --y 1.26,1.27,1.12,1.16,1.03", "slope_upper"), .04, 1e-14);
  EXPECT_EQ(figure("paired 1.1 2.2 0.3 -0.1 --alternative greater", "p"), 2.0 / 16);
  EXPECT_NEAR(figure("items '1 2 3; 4 5 9; 0 1 2'", "p"), 1.0 / 36, 1e-15);
  EXPECT_NEAR(figure("items '1 2 3; 4 5 9; 0 1 2'", "page_p"), 1.0 / 216, 1e-15);
  EXPECT_EQ(refusal([] { calculated("items '1 2 3; 4 - 9'"); }),
            "every listener must rate every item; one of listener 2 is missing");
}

// PC-9, David (1988) p. 116 (data confirmed; recomputed), and what cannot be estimated.
// PC-5, PC-7 and PC-9 (tests/stats/worth has the sources).
TEST(CalculateWorths, HasPairsFitAndRowMeans) {
  const std::string taste = "'0,3,2,2; 12,0,11,3; 13,4,0,5; 13,12,10,0'";
  const Figures worths = calculated("worths " + taste);
  EXPECT_NEAR(std::get<double>(worths.at("fit_chi_square_p")), .236698, 5.1e-7);  // R: pchisq(4.239895446, 3)
  EXPECT_EQ(series(worths, "quasi_error").size(), 4u);
  EXPECT_NEAR(series(calculated("row-means " + taste), "scale").at(3), 1.361571154, 5.1e-10);
  const Figures pairs = calculated("pairwise " + taste);
  EXPECT_EQ(series(pairs, "second").at(5), 4);
  EXPECT_NEAR(series(pairs, "difference").at(0), -1.613042600, 5.1e-10);
  EXPECT_NEAR(series(pairs, "p_adjusted").at(0), 5 * series(pairs, "p").at(0), 1e-15);
  EXPECT_NE(refusal([] { calculated("row-means '0,3; 0,0'"); }).find("answered alike by all"),
            std::string::npos);
  const std::string ties = "'1,2,3,4,0' --pairs";
  EXPECT_NE(refusal([&] { calculated("worths " + ties); }).find("infinite"), std::string::npos);
  EXPECT_NEAR(series(calculated("worths " + ties + " --ties-as-halves"), "worth").at(1), std::log(2 / 5.),
              1e-9);
}

TEST(CalculateWorths, FitsAndSaysWhatIsInfinite) {
  const std::string taste = "worths '0,3,2,2; 12,0,11,3; 13,4,0,5; 13,12,10,0'";
  EXPECT_NEAR(series(calculated(taste), "worth").at(3), 2.357115851, 5.1e-10);
  EXPECT_NEAR(figure(taste + " --model normal", "deviance"), 4.532664696, 5.1e-10);
  EXPECT_NEAR(figure("worths '1,2,8,0,2; 2,1,5,0,5' --pairs --order --reference 2", "order_effect"),
              std::log(4) / 2, 1e-10);
  EXPECT_NEAR(figure("worths '1,2,9,6,4' --pairs", "tie_weight"), 1, 1e-10);
  const auto refitted = calculated(taste + " --bootstrap 200");
  EXPECT_LT(series(refitted, "worth_lower").at(3), 2);
  EXPECT_GT(series(refitted, "worth_upper").at(3), 2.7);
  EXPECT_EQ(refusal([&] { calculated(taste + " --bootstrap 9 --model normal"); }),
            "--bootstrap refits the logistic model by maximum likelihood, ties as ties; leave out --model, "
            "--bias-reduced and --ties-as-halves");
  EXPECT_EQ(refusal([] { calculated("worths '1,2,9,6' --pairs"); }),
            "a row of --pairs must be first item, second item (from 1), preferences for the first, ties, "
            "preferences for "
            "the second; row 1 is not");
  EXPECT_EQ(refusal([] { calculated("worths '1,3,2,0,1; 2,4,1,0,1' --pairs"); }),
            "the items fall into groups that were never compared with each other: 1, 3; 2, 4\n"
            "compare at least one item of each with one of another");
  EXPECT_EQ(refusal([] { calculated("worths '0,3,3; 0,0,2; 0,1,0'"); }),
            "some worths, ties or the order effect would be infinite: preferences do not go round among all "
            "items (those "
            "that they go round: 1; 2, 3)\n--bias-reduced gives finite ones; more answers may, too");
  EXPECT_GT(series(calculated("worths '0,3,3; 0,0,2; 0,1,0' --bias-reduced --reference 3"), "worth").at(0),
            1);
}

// BIN-6, ISO 4120 table A.2 form (recomputed): n = 18, heard 0.3, beta .05: 5 at most.
TEST(CalculateSimilar, AgreesWithTheTable) {
  const std::string line = "similar 5 18 --heard 0.3 --chance 1/3";
  EXPECT_EQ(std::get<long long>(calculated(line).at("most_correct")), 5);
  EXPECT_TRUE(std::get<bool>(calculated(line).at("similar")));
}

// DP-2 and DP-3, recomputed: psyphy, uniroot.
TEST(CalculateDPrime, AgreesWithTheTables) {
  EXPECT_NEAR(figure("dprime 12 16 --model abx", "d_prime"), 2.02003919, 5.1e-6);
  EXPECT_NEAR(figure("dprime 12 16 --model abx-independent", "d_prime"), 1.79043429, 5.1e-6);
  EXPECT_NEAR(figure("dprime 12 16 --model triangle", "d_prime"), 2.7974495, 5.1e-5);
  EXPECT_NEAR(
      figure("hits --hits 75 --signals 100 --false-alarms 30 --noises 100 --model same-different", "d_prime"),
      2.405887, 3e-5);
  EXPECT_EQ(calculated("dprime 16 16").figures[5].note, "infinite: every answer was right");
  EXPECT_NE(figures_json(calculated("dprime 16 16")).find("\"d_prime\": \"infinite\""), std::string::npos);
}

// SEQ-2 and SEQ-5, recomputed: exact recursion.
TEST(CalculateStopping, HasTheTrueRates) {
  EXPECT_NEAR(figure("peeking 16", "false_alarms"), .0875549316, 5.1e-11);
  EXPECT_NEAR(figure("sprt --share 0.75 --trials 2000", "false_alarms"), .0432414655, 5.1e-11);
  EXPECT_NEAR(figure("sprt --share 0.75 --trials 2000", "expected_trials_guessing"), 16.22581976, 5.1e-9);
  EXPECT_LE(figure("looks 8 16 24 --spending pocock", "false_alarms"), 0.05);
  EXPECT_NEAR(figure("boundary 5", "pocock_constant"), 2.41318, 5.1e-6);
  EXPECT_EQ(figure("looks 8,16", "false_alarms"), figure("looks 8 16", "false_alarms"));
}

// SEQ-6 to SEQ-9, recomputed.
TEST(CalculateEvidence, AgreesWithTheFormulas) {
  EXPECT_NEAR(figure("evidence 12 16", "e_likelihood_ratio"), 8.109146118, 5.1e-10);
  EXPECT_NEAR(figure("evidence 12 16", "e_upper_mixture"), 4.1324499030, 5.1e-11);
  EXPECT_NEAR(figure("evidence 12 16", "share_lower"), .3875720766, 5.1e-11);
  EXPECT_NEAR(figure("betting 1 1 0 1 1 1 0 1 1 1 1 0 1 1 0 1", "e_hedged"), 4.00542678, 5.1e-9);
  EXPECT_NEAR(figure("strength 0.01", "least_bayes_factor"), .125181504335, 5.1e-13);
  EXPECT_NEAR(figure("shared 1:0 1:0 0:1", "e_fixed_now"), 1.5 * 1.5 * 0.5, 1e-12);  // bets by hand
}

// AG-1, AG-4 to AG-7 (confirmed or recomputed).
TEST(CalculateAgreement, AgreesWithPublishedExamples) {
  EXPECT_NEAR(figure("kappa '88 10 2; 14 40 6; 18 10 12' --weights linear", "kappa"), .4736842105, 5.1e-11);
  EXPECT_NEAR(figure("kappa '88 10 2; 14 40 6; 18 10 12'", "largest_kappa"), .8305084746, 5.1e-11);
  EXPECT_NEAR(figure("gwet '118 5; 2 0' --two-raters", "coefficient"), .9407763376, 5.1e-11);
  EXPECT_NEAR(figure("alpha '0 1 0 0 0 0 0 0 1 0; 1 1 1 0 0 1 0 0 0 0'", "alpha"), .0952380952, 5.1e-11);
  EXPECT_NEAR(figure("concord '1 6 3 2 5 4; 1 5 6 4 2 3; 6 3 2 5 4 1'", "w"), .1619047619, 5.1e-11);
  const std::string judges = "'9 6 8 7 10 6; 2 1 4 1 5 2; 5 3 6 2 6 4; 8 2 8 6 9 7'";
  EXPECT_NEAR(figure("icc " + judges, "icc_2_1"), .2897638, 5.1e-8);
}

// AG-9, BL-1, OD-1, CO-6 (confirmed or recomputed).
TEST(CalculateListeners, AgreesWithPublishedExamples) {
  const std::string ten = "spread 3/10 4/10 5/10 5/10 5/10 6/10 6/10 6/10 7/10 8/10 9/10 10/10";
  EXPECT_NEAR(figure(ten, "tarone_z"), 1.57467948, 5.1e-9);
  EXPECT_NEAR(figure("blinding '82 25 170; 27 29 83'", "james"), .7479275375, 5.1e-11);
  EXPECT_NEAR(figure("blinding '82 25 170; 27 29 83'", "bang_first"), .2057761733, 5.1e-11);
  EXPECT_NEAR(figure("combine .01 .2 .3", "fisher_p"), .02156175132, 5.1e-12);
  EXPECT_NEAR(figure("combine .01 .2 .3", "stouffer_p"), .01651203261, 5.1e-12);
  EXPECT_DOUBLE_EQ(figure("trend 001011", "p"), 0.2);  // by hand: 1 of 20 larger, 1 as large, and both ways
  EXPECT_NEAR(figure("cochran '1 1 0; 1 0 0; 1 1 0'", "q"), 14.0 / 3,
              1e-12);  // by hand: 2 (3 (9 + 4 + 0) - 25) / (15 - 9)
}

// BIN-8, Fisher's tea tasting (memory; recomputed), and triangles by the binomial at 1/3.
TEST(CalculateRedraw, TakesFixedNumbersAndMoreLayouts) {
  const std::string cups = "redraw 1:0 1:0 1:0 1:0 0:1 0:1 0:1 0:1 --fixed 4 --observed ";
  EXPECT_NEAR(figure(cups + "8", "p_one_sided"), 1.0 / 70, 1e-15);
  EXPECT_NEAR(figure(cups + "6", "p_one_sided"), 17.0 / 70, 1e-15);
  EXPECT_NEAR(figure("redraw 1:0:0 1:0:0 0:1:0 --observed 2", "p_one_sided"), 7.0 / 27, 1e-15);
  EXPECT_NEAR(figure("mixed 1@1/2 2@1/3 --correct 3", "p_one_sided"), 1.0 / 18, 1e-15);
}

TEST(CalculatedTables, GiveListsRowsAndRaters) {
  const std::string file = testing::TempDir() + "calculated.csv";
  std::ofstream(file) << "share;level_db;ann;bob\n0,5;0,1;1;0\n0,7;0,4;1;1\n0,8;0,9;0;-\n";
  EXPECT_DOUBLE_EQ(figure("correlate --csv " + file + " --x level_db --y share", "rho"), 1);
  EXPECT_EQ(std::get<long long>(calculated("agree --csv " + file + " ann bob").at("pairs")), 2);
  EXPECT_EQ(std::get<long long>(calculated("alpha --csv " + file + " ann bob").at("answers")), 5);
  EXPECT_EQ(refusal([&] { calculated("correlate --csv " + file + " --x level --y share"); }),
            file + " has no column \"level\" for x");
  EXPECT_EQ(refusal([&] { calculated("correlate --csv " + file + " --x bob --y share"); }),
            "x must be numbers, got \"-\" at place 3");
}

}  // namespace
}  // namespace desk
