#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "electrical/cable.h"
#include "report/content/document.h"

namespace report {

/// A cable with its loop values per metre: nothing where it has no readings, 0 where one was not read.
struct ShelfCable {
  std::string name;
  std::optional<electrical::Cable> line{};
};

/// Whether inductance and capacitance are known, so that it has a characteristic impedance, a speed and a place.
bool has_place(const ShelfCable& cable);

/// Inductance per metre across and capacitance per metre up, both logarithmic, a mark for each cable that has a place: its
/// shape says the class of the loop resistance. Lines of equal characteristic impedance and of equal speed; what would be
/// faster than light is marked in words. Names stand beside the marks; where they are many or long, numbers in the order of
/// the characteristic impedance, with a list.
/// @throws std::domain_error  when no cable has a place.
Figure tradeoff_figure(const std::vector<ShelfCable>& cables);

/// One row a cable.
Table tradeoff_table(const std::vector<ShelfCable>& cables);

/// What has to be known beside table and picture, cables without a place and impossible ones first.
std::vector<std::string> tradeoff_notes(const std::vector<ShelfCable>& cables);

std::string tradeoff_text(const std::string& campaign_title, const std::vector<ShelfCable>& cables);

/// One HTML file that needs nothing else, in the style of the report.
/// @throws std::domain_error  as `tradeoff_figure`.
std::string tradeoff_page(const std::string& campaign_title, const std::vector<ShelfCable>& cables,
                          std::string_view version);

/// {"schema": 1, "cables": [...]}; null where something is not known.
std::string tradeoff_json(const std::vector<ShelfCable>& cables);

}  // namespace report
