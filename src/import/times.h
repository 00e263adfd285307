#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"
#include "text/time.h"

namespace imported {

/// When a presentation began, written by the helper on paper and keyed in.
struct KeyedTime {
  int trial = 0;
  int presentation = 0;                             ///< from 1 within the trial
  std::string as_typed;                             ///< as it stands in the table
  std::optional<text::TimePoint> moment;            ///< when the sheet has date and offset (RFC 3339)
  std::optional<std::chrono::seconds> time_of_day;  ///< when it has a clock time only, since midnight
  text::Place trial_place;
  text::Place started_place;
};

struct KeyedTimes {
  std::vector<KeyedTime> times;
  text::Problems problems;  ///< none yet: for what the sitting finds about a time
};

/// Reads the helper's times: columns `trial`, `presentation`, `started` (HH:MM:SS or RFC 3339, the same
/// throughout). A row whose time is empty was not written down and is left out.
/// @throws BadInput  with everything wrong, a presentation given twice included.
KeyedTimes parse_times(std::string_view content, const std::string& name);

/// A trial withdrawn, as it stands on the helper's sheet.
struct KeyedSpoiling {
  int trial = 0;
  std::string by;      ///< spelled as in `people`
  std::string reason;  ///< spelled as in `reasons`
  std::string words;
  text::Place trial_place;
  text::Place reason_place;
};

struct KeyedSpoilings {
  std::vector<KeyedSpoiling> spoilings;
  text::Problems problems;  ///< none yet: for what the sitting finds about a trial
};

/// Reads spoiled trials: columns `trial`, `by`, `reason` and where wanted `words`.
/// @param people  who may have spoiled it; empty: any name.
/// @param reasons  the closed list of reasons, "other" among them needs words.
/// @throws BadInput  with everything wrong, a trial given twice included.
KeyedSpoilings parse_spoilings(std::string_view content, const std::string& name,
                               const std::vector<std::string>& people,
                               const std::vector<std::string>& reasons);

}  // namespace imported
