#include <string>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/effects/heterogeneity.h"
#include "stats/effects/two_shares.h"
#include "text/error.h"

namespace desk {
namespace {

Figures two_shares_figures(const Given& given) {
  const double confidence = 1 - given.level("level");
  const auto number = [&](const std::string& name) { return given.count(name, 0, 1'000'000); };
  const auto found = stats::compare_shares(number("right-1"), number("trials-1"), number("right-2"),
                                           number("trials-2"), confidence);
  Figures figures{"two shares, as of two campaigns",
                  {{"difference", "difference", found.difference,
                    "second less first; all answers treated as independent"}}};
  add_limits(figures, "difference", "difference", found.difference_interval,
             per_cent(confidence) + ", Newcombe's approximation");
  figures.add("p", "p of equal shares", found.p, "Fisher's exact test, two-sided");
  figures.add("odds_ratio", "odds ratio", known(found.odds_ratio), "second against first, given both sums");
  if (found.odds_ratio_interval)
    add_limits(figures, "odds_ratio", "odds ratio", *found.odds_ratio_interval,
               "exact, at least " + per_cent(confidence));
  return figures;
}

Figures effects_figures(const Given& given) {
  const auto estimates = given.list("estimates"), errors = given.list("errors");
  if (estimates.size() != errors.size())
    throw text::BadInput("estimates and errors must be equally many, got " +
                         std::to_string(estimates.size()) + " and " + std::to_string(errors.size()));
  const double confidence = 1 - given.level("level");
  std::vector<stats::Effect> effects;
  for (std::size_t i = 0; i < estimates.size(); ++i) effects.push_back({estimates[i], errors[i]});
  const auto found = stats::heterogeneity(effects, confidence);
  Figures figures{"effects of several campaigns", {{"campaigns", "campaigns", std::ssize(effects)}}};
  if (effects.size() == 2) {
    const auto difference = stats::effect_difference(effects[0], effects[1], confidence);
    figures.add("difference", "difference", difference.difference, "second less first");
    add_limits(figures, "difference", "difference", difference.interval,
               per_cent(confidence) + ", normal approximation");
    figures.add("difference_p", "p of equal effects", difference.p, "two-sided, likewise");
  }
  figures.add("q", "Cochran's Q", found.q, "squared distances to the common effect, in standard errors");
  figures.add("degrees_of_freedom", "degrees of freedom", static_cast<long long>(found.degrees_of_freedom));
  figures.add("q_p", "p of Q", found.p,
              effects.size() <= 3 ? "by chi-square; with so few, a large p is no licence to take them as one"
                                  : "by chi-square");
  figures.add("inconsistent_share", "I squared", found.inconsistent_share,
              "share of Q beyond its degrees of freedom");
  figures.add("between_variance", "tau squared", found.between_variance,
              "variance of true effects, Paule and Mandel's");
  figures.add("common", "common effect", found.common.estimate,
              "by precision, if the true effect is the same in all");
  add_limits(figures, "common", "common effect", found.common_interval, per_cent(confidence));
  figures.add("average", "average effect", found.average.estimate, "if true effects vary");
  add_limits(figures, "average", "average effect", found.average_interval,
             per_cent(confidence) + ", Hartung and Knapp's");
  return figures;
}

}  // namespace

Topic campaigns_topic() {
  return {"Two campaigns or more",
          {{"two-shares",
            "Whether two shares right differ, and how far",
            "36 48 24 48",
            {{"right-1", "Right answers of the first"},
             {"trials-1", "Of so many"},
             {"right-2", "Right answers of the second"},
             {"trials-2", "Of so many"},
             level_argument()},
            two_shares_figures},
           {"effects",
            "How far effects of two campaigns or more differ, and what they say together",
            "--estimates 1.0,0.2 --errors 0.3,0.4",
            {{"--estimates", "An effect of each: a difference of worths, a d-prime, a log odds ratio",
              Argument::required, Shape::list},
             {"--errors", "Its standard error", Argument::required, Shape::list},
             level_argument()},
            effects_figures}}};
}

}  // namespace desk
