#include <algorithm>

#include "desk/calculator/given.h"
#include "desk/calculator/topics/topics.h"
#include "stats/arguments.h"
#include "stats/discrimination/answer_bias.h"
#include "stats/discrimination/d_prime.h"
#include "stats/discrimination/hits_interval.h"
#include "stats/discrimination/roc.h"
#include "stats/discrimination/share_right.h"
#include "text/error.h"

namespace desk {
namespace {

/// How links and models are typed.
constexpr std::pair<const char*, stats::Link> links[] = {
    {"abx", stats::Link::abx_differencing},
    {"abx-independent", stats::Link::abx_independent},
    {"same-different-independent", stats::Link::same_different_independent},
    {"triangle", stats::Link::triangle},
    {"duo-trio", stats::Link::duo_trio},
    {"2-afc", stats::Link::two_afc},
    {"3-afc", stats::Link::three_afc},
    {"4-afc", stats::Link::four_afc},
    {"5-afc", stats::Link::five_afc},
};
constexpr std::pair<const char*, stats::HitModel> hit_models[] = {
    {"a-not-a", stats::HitModel::yes_no},
    {"same-different", stats::HitModel::same_different_differencing},
    {"same-different-independent", stats::HitModel::same_different_independent},
    {"abx", stats::HitModel::abx_differencing},
    {"abx-independent", stats::HitModel::abx_independent},
};

template <typename Named>
std::vector<std::string> words_of(const Named& named) {
  std::vector<std::string> words;
  for (const auto& [word, value] : named) words.emplace_back(word);
  return words;
}

template <typename Named>
auto chosen(const Given& given, const std::string& name, const Named& named) {
  const std::string& word = given.one_of(name, words_of(named));
  return std::find_if(std::begin(named), std::end(named), [&](const auto& one) { return one.first == word; })
      ->second;
}

template <typename Named>
std::string list_of(const Named& named) {
  std::string all;
  for (const std::string& word : words_of(named)) all += (all.empty() ? "" : ", ") + word;
  return all;
}

Figures dprime_figures(const Given& given) {
  const int trials = given.count("trials", 1, stats::kMostTrials);
  const int correct = given.count("correct", 0, trials);
  const stats::Link link = chosen(given, "model", links);
  const double confidence = 1 - given.level("level");
  const stats::DPrimeEstimate estimate = stats::estimate_d_prime(link, correct, trials, confidence);
  Figures figures{
      "d-prime of " + given.word("correct") + " of " + given.word("trials") + " right",
      {{"model", "model", std::string(stats::link_name(link))},
       {"correct", "right", correct},
       {"trials", "trials", trials},
       {"chance", "chance", stats::link_chance(link), "share right at d' = 0"},
       {"share_right", "share right", double(correct) / trials},
       {"d_prime", "d'", estimate.d_prime, std::string(stats::d_prime_remark(estimate))},
       {"standard_error", "standard error", known(estimate.standard_error), "by the delta method"}}};
  add_limits(figures, "d_prime", "d'", estimate.limits,
             "two-sided " + per_cent(confidence) + " likelihood interval, approximation");
  return figures;
}

Figures hits_figures(const Given& given) {
  const int signals = given.count("signals", 1, stats::kMostTrials),
            noises = given.count("noises", 1, stats::kMostTrials);
  const stats::HitCounts counts{given.count("hits", 0, signals), signals,
                                given.count("false-alarms", 0, noises), noises};
  const stats::HitModel model = chosen(given, "model", hit_models);
  const double confidence = 1 - given.level("level");
  const stats::HitRates seen = stats::hit_rates(counts);
  const stats::HitRates rates = given.has("log-linear") ? stats::log_linear_rates(counts) : seen;
  const std::string which =
      given.has("log-linear") ? "1/2 added to each count (log-linear correction)" : "as counted";
  Figures figures{"hits and false alarms",
                  {{"model", "model", given.word("model")},
                   {"hit_rate", "hit rate", rates.hit, which},
                   {"false_alarm_rate", "false-alarm rate", rates.false_alarm, which},
                   {"d_prime", "d'", known(stats::d_prime_of_rates(model, rates)), which}}};
  add_limits(figures, "d_prime", "d'", stats::estimate_d_prime_of_hits(model, counts, confidence).limits,
             "two-sided " + per_cent(confidence) + " profile likelihood of the counts, approximation");
  if (model == stats::HitModel::yes_no) {
    figures.add("criterion", "criterion c", known(stats::criterion_c(rates)),
                "above 0: the answer is given too rarely");
    figures.add("ln_beta", "ln beta", known(stats::ln_beta(rates)), "c d'");
  }
  return figures;
}

Figures bias_figures(const Given& given) {
  const int answers = given.count("answers", 1, stats::kMostTrials);
  const int one = given.count("answers-a", 0, answers);
  const double confidence = 1 - given.level("level");
  const stats::AnswerBias bias = stats::answer_bias(one, answers, confidence);
  Figures figures{"does one answer come too often?",
                  {{"answers_a", "answers \"A\"", one},
                   {"answers", "answers", answers},
                   {"share", "share of \"A\"", bias.share},
                   {"p_two_sided", "two-sided p", bias.p, "exact, against 1/2"}}};
  add_limits(figures, "share", "share", bias.limits,
             "two-sided " + per_cent(confidence) + ", exact (Clopper-Pearson)");
  return figures;
}

Figures sureness_figures(const Given& given) {
  const stats::CountTable rows = given.count_rows("counts");
  if (rows.size() != 2)
    throw text::BadInput("counts must be two rows: sureness where A was presented, and where B was; got " +
                         std::to_string(rows.size()));
  const stats::RatedAnswers answers{rows[0], rows[1]};
  const stats::RocArea area = stats::roc_area(answers);
  Figures figures{
      "receiver operating characteristic of rated answers",
      {{"area", "area", area.area, "probability that A is rated surer \"A\" than B; 1/2 is chance"},
       {"standard_error", "standard error", known(area.standard_error), "DeLong"},
       {"d_prime", "d' of that area", stats::d_prime_at(stats::Link::two_afc, area.area),
        "if both spread alike and normally"}},
      {{"false_alarm_rate", "false-alarm rate", {}}, {"hit_rate", "hit rate", {}}}};
  add_permutation_p(figures, stats::roc_test(answers, given.alternative(), given.draws()),
                    "of the area against 1/2, by permutation");
  for (const stats::HitRates& point : stats::roc_points(answers)) {
    figures.series[0].values.push_back(point.false_alarm);
    figures.series[1].values.push_back(point.hit);
  }
  return figures;
}

}  // namespace

Topic discrimination_topic() {
  return {
      "Discrimination",
      {{"dprime",
        "d-prime of a number right, with a likelihood interval",
        "12 16 --model abx",
        {{"correct", "Right answers"},
         {"trials", "Trials"},
         {"--model", list_of(links), "abx"},
         level_argument()},
        dprime_figures},
       {"hits",
        "d-prime and criterion from hits and false alarms",
        "--hits 15 --signals 20 --false-alarms 6 --noises 20",
        {{"--hits", "Answers \"A\" (or \"different\") where that was presented"},
         {"--signals", "Trials that presented it"},
         {"--false-alarms", "The same answer where it was not presented"},
         {"--noises", "Trials that did not present it"},
         {"--model", list_of(hit_models), "a-not-a"},
         {"--log-linear", "Add 1/2 to each count, so that nothing is infinite; draws d' towards 0", "",
          Shape::flag},
         level_argument()},
        hits_figures},
       {"bias",
        "Whether one answer comes more often than the other",
        "12 16",
        {{"answers-a", "Answers \"A\""}, {"answers", "Answers in all"}, level_argument()},
        bias_figures},
       {"sureness",
        "ROC of rated answers: its area, d-prime and p",
        "\"9 6 3 2; 2 4 5 9\"",
        {{"counts", "From surest \"A\" to surest \"B\": counts where A was presented; semicolon; where B was",
          Argument::required, Shape::rows},
         alternative_argument(),
         seed_argument(),
         draws_argument()},
        sureness_figures}}};
}

}  // namespace desk
