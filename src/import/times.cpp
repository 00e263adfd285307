#include "import/times.h"

#include <map>
#include <utility>

#include "import/form.h"
#include "text/number.h"

namespace imported {
namespace {

/// HH:MM:SS within a day.
std::optional<std::chrono::seconds> clock_time(std::string_view text) {
  const auto midnight = text::parse_rfc3339("2000-01-01T00:00:00Z").value();
  if (text.size() != 8) return std::nullopt;
  const auto moment = text::parse_rfc3339("2000-01-01T" + std::string(text) + "Z");
  if (!moment) return std::nullopt;
  return std::chrono::duration_cast<std::chrono::seconds>(*moment - midnight);
}

void take_started(KeyedTime& time, Form& form, const text::Row& row) {
  const std::string started = form.text(row, "started");
  time.as_typed = started;
  time.moment = text::parse_rfc3339(started);
  time.time_of_day = clock_time(started);
  if (!time.moment && !time.time_of_day)
    form.problems().add(time.started_place, "started must be a time, got \"" + started + "\"",
                        "write HH:MM:SS, or date and time such as 2031-05-01T19:30:00Z");
}

/// Times of one trial must not run backwards from one presentation to the next.
void refuse_backwards(const std::vector<KeyedTime>& times, text::Problems& problems) {
  for (std::size_t i = 1; i < times.size(); ++i) {
    const KeyedTime &before = times[i - 1], &now = times[i];
    const bool next = now.trial == before.trial && now.presentation == before.presentation + 1;
    if (next &&
        (now.moment < before.moment || (now.time_of_day < before.time_of_day &&
                                        *before.time_of_day - *now.time_of_day < std::chrono::hours(12))))
      problems.add(now.started_place,
                   "presentation " + std::to_string(now.presentation) + " of trial " +
                       std::to_string(now.trial) + " began before the one before it",
                   "look at the helper's sheet again");
  }
}

void refuse_mixture(const std::vector<KeyedTime>& times, text::Problems& problems) {
  for (const KeyedTime& time : times) {
    if (time.moment.has_value() == times.front().moment.has_value()) continue;
    problems.add(time.started_place, "times with and without a date in one table",
                 "write all of them the same way");
    return;
  }
}

}  // namespace

KeyedTimes parse_times(std::string_view content, const std::string& name) {
  Form form(text::parse_table(content, name), {"trial", "presentation", "started"}, {});
  std::vector<KeyedTime> times;
  std::map<std::pair<int, int>, int> first_lines;
  for (const text::Row& row : form.rows()) {
    KeyedTime time;
    time.trial_place = form.place(row, "trial");
    time.started_place = form.place(row, "started");
    const auto trial = form.count(row, "trial");
    const auto presentation = form.count(row, "presentation");
    if (form.text(row, "started").empty()) continue;
    take_started(time, form, row);
    if (!trial || !presentation) continue;
    time.trial = *trial;
    time.presentation = *presentation;
    const auto [first, added] = first_lines.emplace(std::pair(*trial, *presentation), row.line);
    if (!added)
      form.problems().add(time.trial_place,
                          "presentation " + std::to_string(*presentation) + " of trial " +
                              std::to_string(*trial) + " stands twice",
                          "first in line " + std::to_string(first->second));
    times.push_back(time);
  }
  form.problems().refuse_if_any();
  refuse_mixture(times, form.problems());
  form.problems().refuse_if_any();
  refuse_backwards(times, form.problems());
  form.problems().refuse_if_any();
  return {std::move(times), form.problems()};
}

KeyedSpoilings parse_spoilings(std::string_view content, const std::string& name,
                               const std::vector<std::string>& people,
                               const std::vector<std::string>& reasons) {
  Form form(text::parse_table(content, name), {"trial", "by", "reason"}, {"words"});
  std::vector<KeyedSpoiling> spoilings;
  std::map<int, int> first_lines;
  for (const text::Row& row : form.rows()) {
    KeyedSpoiling spoiling;
    spoiling.trial_place = form.place(row, "trial");
    spoiling.reason_place = form.place(row, "reason");
    const auto trial = form.count(row, "trial");
    spoiling.by = people.empty() ? form.name(row, "by") : form.choice(row, "by", people).value_or("");
    spoiling.reason = form.choice(row, "reason", reasons).value_or("");
    spoiling.words = form.text(row, "words");
    if (spoiling.reason == "other" && spoiling.words.empty())
      form.problems().add(spoiling.reason_place, "the reason \"other\" needs words",
                          "say in the column words what it was");
    if (!trial) continue;
    spoiling.trial = *trial;
    const auto [first, added] = first_lines.emplace(*trial, row.line);
    if (!added)
      form.problems().add(spoiling.trial_place, "trial " + std::to_string(*trial) + " stands twice",
                          "first in line " + std::to_string(first->second));
    spoilings.push_back(std::move(spoiling));
  }
  form.problems().refuse_if_any();
  return {std::move(spoilings), form.problems()};
}

}  // namespace imported
