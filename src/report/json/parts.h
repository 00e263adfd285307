#pragma once

#include <nlohmann/json.hpp>
#include <optional>

#include "findings/evidence.h"
#include "findings/finding.h"

namespace report {

/// A value, or null.
template <typename Value>
nlohmann::json or_null(const std::optional<Value>& value) {
  return value ? nlohmann::json(*value) : nlohmann::json(nullptr);
}

nlohmann::json comparison_json(const findings::Evidence& evidence,
                               const findings::ComparisonFinding& finding);
nlohmann::json answer_share_json(const plan::Plan& plan, const findings::AnswerShare& share);
nlohmann::json exploration_json(const plan::Plan& plan, const findings::Exploration& exploration);
nlohmann::json sitting_json(const findings::Evidence& evidence, const findings::SittingEvidence& sitting);
nlohmann::json cable_json(const std::string& name, const findings::CableEvidence& cable);
nlohmann::json rig_json(const findings::RigEvidence& rig);
nlohmann::json pace_json(const findings::Pace& pace);
nlohmann::json scale_json(const std::optional<findings::PreferenceScale>& scale);
nlohmann::json correlation_json(const findings::Correlation& correlation);

}  // namespace report
