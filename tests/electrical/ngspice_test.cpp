#include <gtest/gtest.h>

#include "electrical/golden_cases.h"
#include "electrical/ngspice_run.h"
#include "electrical/response.h"

// recomputed: ngspice's lossy line (LTRA, which has no conductance) on the netlists in data/netlists.
TEST(Ngspice, AgreesOnLevelAndPhaseOfEveryNetlist) {
  if (!has_ngspice()) GTEST_SKIP() << "ngspice is not on the PATH: netlists not run";
  for (const char* name : {"A1", "B1", "C1", "C3", "D2h", "D3h"}) {
    const NgspiceRun run("electrical/data/netlists/n_" + std::string(name) + "_ltra.cir");
    const auto frequency_hz = run.frequency_hz();
    const auto real = run.printed("real(v(b))");
    const auto imaginary = run.printed("imag(v(b))");
    ASSERT_GE(frequency_hz.size(), 11u) << name;
    ASSERT_EQ(real.size(), frequency_hz.size()) << name;
    ASSERT_EQ(imaginary.size(), frequency_hz.size()) << name;
    const auto& [source, cable, load] = golden_cases().at(name);
    for (std::size_t i = 0; i < frequency_hz.size(); ++i) {
      const auto ours = electrical::response(source, cable, load, frequency_hz[i]);
      const std::complex<double> theirs(real[i], imaginary[i]);
      // ngspice prints 12 digits of each part: 1e-11 dB, 1e-10 degrees.
      EXPECT_NEAR(electrical::level_db(ours), electrical::level_db(theirs), 1e-10) << name << frequency_hz[i];
      EXPECT_NEAR(electrical::phase_deg(ours), electrical::phase_deg(theirs), 1e-9)
          << name << frequency_hz[i];
    }
  }
}
