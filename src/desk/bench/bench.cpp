#include "desk/bench/bench.h"

#include <algorithm>

#include "desk/shelf/built.h"
#include "desk/shelf/circuit.h"
#include "desk/shelf/measurement.h"
#include "report/bench/bench_report.h"
#include "report/html/page.h"
#include "report/text_report.h"
#include "text/number.h"

namespace desk {
namespace {

std::vector<findings::BenchCable> bench_cables(const store::Campaign& campaign) {
  std::vector<findings::BenchCable> cables;
  for (const store::Cable& cable : campaign.cables()) {
    const Built parts = built(cable);
    findings::BenchCable known{cable.name, std::nullopt, "copper",
                               cable_evidence(campaign, cable.name, "").line};
    if (parts.shape == CableShape::round_pair && parts.material != nullptr) {
      known.conductor_area_m2 = parts.metal_area_m2;
      known.material = std::string(parts.material->name);
    }
    cables.push_back(std::move(known));
  }
  return cables;
}

std::vector<findings::BenchRig> bench_rigs(const store::Campaign& campaign) {
  std::vector<findings::BenchRig> rigs;
  for (const store::Rig& rig : campaign.rigs()) {
    const findings::RigEvidence evidence = rig_evidence(campaign, rig.name);
    rigs.push_back({rig.name, text::number(rig.rated_impedance_ohm), evidence.source, evidence.load});
  }
  return rigs;
}

findings::Coverage coverage_in(const store::Campaign& campaign,
                               const std::vector<findings::Measurement>& measurements) {
  std::vector<std::string> cables;
  for (const store::Cable& cable : campaign.cables()) cables.push_back(cable.name);
  std::vector<findings::CoveredRig> rigs;
  for (const store::Rig& rig : campaign.rigs()) rigs.push_back({rig.name, !rig.load.empty()});
  return findings::coverage_of(cables, rigs, measurements);
}

std::string printed(const report::Document& document, BenchForm form) {
  return form == BenchForm::html ? report::html_page(document, BLINDSWAP_VERSION) : report::text_of(document);
}

}  // namespace

findings::BenchFindings bench_findings(const store::Campaign& campaign) {
  std::vector<findings::Measurement> measurements;
  for (const store::NumberedReading& each : campaign.readings({.superseded_too = true}))
    measurements.push_back(measurement_of(each));
  findings::BenchFindings bench{
      campaign.title(), campaign.baseline(), coverage_in(campaign, measurements), {}, {}, {}};
  const auto cables = bench_cables(campaign);
  bench.doubts = findings::line_doubts(measurements, cables);
  const auto more = findings::curve_doubts(measurements, cables, bench_rigs(campaign));
  bench.doubts.insert(bench.doubts.end(), more.begin(), more.end());
  bench.comparisons = findings::compare_with_baseline(measurements, bench.baseline);
  bench.features = findings::feature_tests(measurements);
  return bench;
}

std::string coverage_report(const Path& file, BenchForm form) {
  const auto bench = bench_findings(store::Campaign::open(file));
  return form == BenchForm::json ? report::coverage_json(bench)
                                 : printed(report::coverage_document(bench), form);
}

std::string examination_report(const Path& file, BenchForm form) {
  const auto bench = bench_findings(store::Campaign::open(file));
  return form == BenchForm::json ? report::examination_json(bench)
                                 : printed(report::examination_document(bench), form);
}

std::size_t number_of_doubts(const Path& file) {
  return bench_findings(store::Campaign::open(file)).doubts.size();
}

}  // namespace desk
