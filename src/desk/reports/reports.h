#pragma once

#include <string>
#include <vector>

#include "desk/shelf/shelf.h"

namespace desk {

enum class ReportForm { text, json, html };

/// The report on a plan. @throws text::NotNow while the plan is sealed.
std::string report_on(const Path& campaign, const std::string& plan, ReportForm form);

/// What every key of the JSON report means.
std::string report_dictionary();

/// What a check of a campaign found.
struct Checked {
  std::string plan;
  std::string commitment_hex;
  int sittings = 0, events = 0;
  std::vector<std::string> heads_hex;  ///< of the sittings' chains, to hold against those given away
  bool unsealed = false;
  std::vector<std::string> faults;  ///< empty when everything fits
};

/// Checks that every imported file fits its checksum. @return  their number.
/// @throws text::BadInput for one that does not.
int check_sources(const Path& campaign);

/// Checks every plan of a campaign anew: commitments, hash chains, and, where unsealed, that the tags recorded are those
/// of the order derived from the seed.
std::vector<Checked> check_campaign(const Path& campaign);

}  // namespace desk
