#include "import/load_text.h"

#include <gtest/gtest.h>

#include "import/refusal.h"

using namespace imported;

TEST(LoadText, ReadsTheThreeKinds) {
  EXPECT_EQ(std::get<electrical::Resistor>(parse_load("8ohm")).resistance_ohm, 8);
  const auto line_input = std::get<electrical::Resistor>(parse_load("47kohm||100pF"));
  EXPECT_EQ(line_input.resistance_ohm, 47000);
  EXPECT_EQ(line_input.parallel_capacitance_farad, 100e-12);
  const auto circuit = std::get<electrical::EquivalentCircuit>(
      parse_load("3,0ohm + 0.1mH + [27ohm||475uF||21.3mH] + [0.81mH||11ohm||9.6uF]"));
  EXPECT_EQ(circuit.resistance_ohm, 3);
  EXPECT_EQ(circuit.inductance_henry, 0.1e-3);
  ASSERT_EQ(circuit.resonances.size(), 2U);
  EXPECT_EQ(circuit.resonances[1].resistance_ohm, 11);
  EXPECT_EQ(circuit.resonances[1].capacitance_farad, 9.6e-6);
  EXPECT_EQ(circuit.resonances[1].inductance_henry, 0.81e-3);
  EXPECT_EQ(
      std::get<electrical::EquivalentCircuit>(parse_load("6ohm + [40ohm||500uF||55mH]")).inductance_henry, 0);
}

TEST(LoadText, RefusesAnythingElse) {
  const std::string examples =
      "\nwrite a resistor (8ohm), a line input (47kohm||100pF) or a loudspeaker "
      "(3.0ohm + 0.1mH + [27ohm||475uF||21.3mH])";
  const auto refused = [](const std::string& typed) { return refusal([&] { parse_load(typed); }); };
  EXPECT_EQ(refused("8"), "load \"8\": \"8\" has no unit: write 8ohm" + examples);
  EXPECT_EQ(refused("0ohm"),
            "load \"0ohm\": resistance_ohm must be a finite number above 0, got 0" + examples);
  EXPECT_EQ(refused("3ohm + [27ohm||475uF]"),
            "load \"3ohm + [27ohm||475uF]\": \"[27ohm||475uF]\" is not a resistance, a capacitance and an "
            "inductance in parallel" +
                examples);
  EXPECT_EQ(refused("3ohm + [27ohm||475uF||2mH"),
            "load \"3ohm + [27ohm||475uF||2mH\": \"[27ohm||475uF||2mH\" is not closed by \"]\"" + examples);
  EXPECT_EQ(refused("3ohm + 1mH + 2mH"),
            "load \"3ohm + 1mH + 2mH\": \"2mH\" is not a resonance in square brackets" + examples);
}
