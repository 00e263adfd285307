#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "desk/shelf/prediction.h"

// What the prediction of one swap and that of a whole shelf have in common.
namespace desk {

/// The published thresholds as a table, and what they do not say.
std::string thresholds_text();

/// [{"concerns": "level" or "response", "size_dB", "what", "source"}, ...]
nlohmann::json thresholds_json();

/// minimum_dB, maximum_dB, rms_dB, frequency_of_largest_Hz
nlohmann::json residual_json(const hearing::Residual& residual);

/// largest_dB, frequency_of_largest_Hz, rms_dB
nlohmann::json smoothed_json(const hearing::AuditoryDifference& smoothed);

/// unknown, and for level difference and residuals the least and the greatest
nlohmann::json open_json(const LeftOpen& open);

/// Words in lines of at most 100 characters.
std::string paragraph(const std::string& words, std::string_view indent = "");

}  // namespace desk
