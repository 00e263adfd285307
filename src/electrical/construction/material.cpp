#include "electrical/construction/material.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <string>

#include "electrical/argument.h"

namespace electrical {
namespace {

constexpr Material kMaterials[] = {
    {"copper", 1e-6 / 58, 0.00393, "IEC 60028, annealed copper, 58 MS/m (from memory)"},
    {"silver", 1.587e-8, 0.0038, "handbook value of pure silver (from memory)"},
    {"aluminium", 2.8264e-8, 0.00403, "IEC 60889, hard-drawn aluminium wire (from memory)"},
};

}  // namespace

std::span<const Material> materials() { return kMaterials; }

const Material& material_named(std::string_view name) {
  const auto* found = std::find_if(std::begin(kMaterials), std::end(kMaterials),
                                   [&](const Material& material) { return material.name == name; });
  if (found != std::end(kMaterials)) return *found;
  std::string names;
  for (const Material& material : kMaterials) names.append(names.empty() ? "" : ", ").append(material.name);
  throw std::domain_error("material must be one of " + names + ", got \"" + std::string(name) + "\"");
}

double resistivity_ohm_m(const Material& material, double temperature_celsius) {
  require_within("temperature_celsius", temperature_celsius, -60, 200);
  return material.resistivity_ohm_m *
         (1 + material.temperature_coefficient_per_k * (temperature_celsius - 20));
}

}  // namespace electrical
