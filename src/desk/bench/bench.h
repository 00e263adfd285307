#pragma once

#include <string>

#include "desk/shelf/shelf.h"
#include "findings/bench/bench.h"
#include "store/campaign.h"

namespace desk {

/// Everything that can be said of the campaign's readings before anybody listens.
findings::BenchFindings bench_findings(const store::Campaign& campaign);

enum class BenchForm { text, json, html };

/// Cables by kinds of reading: how many, what is missing, what is stale.
std::string coverage_report(const Path& campaign, BenchForm form);

/// What can hardly be, differences beside repeatability, features tested.
std::string examination_report(const Path& campaign, BenchForm form);

/// How many doubts there are about the campaign's readings.
std::size_t number_of_doubts(const Path& campaign);

}  // namespace desk
