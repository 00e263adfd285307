#include "protocols/catalogue.h"

#include <algorithm>

#include "protocols/abx.h"
#include "protocols/preference.h"

namespace protocols {
namespace {

const Abx abx;
const Preference preference;
const Protocol* const all[] = {&abx, &preference};

template <typename Property>
const Protocol* first_with(Property property, std::string_view wanted) {
  const auto found = std::find_if(std::begin(all), std::end(all), [&](const Protocol* protocol) {
    return (protocol->*property)() == wanted;
  });
  return found == std::end(all) ? nullptr : *found;
}

}  // namespace

std::span<const Protocol* const> catalogue() { return all; }

const Protocol* find(std::string_view name) { return first_with(&Protocol::name, name); }

const Protocol* find_rule(std::string_view order_rule) {
  return first_with(&Protocol::order_rule, order_rule);
}

}  // namespace protocols
