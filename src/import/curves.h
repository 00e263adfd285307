#pragma once

#include <vector>

#include "import/header.h"
#include "import/import.h"
#include "import/warnings.h"

namespace imported {

/// One row of a curve as it stands in its file: the place of its frequency and of its value.
struct CurvePlaces {
  text::Place frequency;
  text::Place value;
};

/// Refuses a curve of fewer than two rows and a frequency that does not rise, by adding problems.
void check_order(const std::vector<double>& frequency_hz, const std::vector<CurvePlaces>& places,
                 text::Problems& problems);

/// Warns of what is not likely in a curve of that kind: frequencies that look like kHz or like Hz written as
/// kHz, levels beyond +-200 dB, an impedance below 0.1 ohm or above 1 Mohm or not of a passive load, noise
/// above 1 mV/sqrtHz.
void warn_of_unlikely(const Reading& reading, const std::vector<CurvePlaces>& places, Warnings& warnings);

/// The one reading of a table of frequencies. Problems of the rows are added to the table's.
Reading curve_reading(text::Table& table, const KnownHeader& header, const Assignment& assignment,
                      Warnings& warnings);

/// A reading with the names of the assignment; a problem when the kind needs a cable or a rig and none is named.
Reading named_reading(const Kind& kind, const Assignment& assignment, text::Problems& problems);

}  // namespace imported
