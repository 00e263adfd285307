#pragma once

#include <array>
#include <complex>
#include <cstddef>

namespace electrical {

/// So many frequencies are worked on at a time: what one cable needs of them stays in the fastest cache.
constexpr std::size_t kBlock = 256;

using BlockOfReals = std::array<double, kBlock>;

/// Complex numbers with their parts apart, as vector instructions want them.
struct BlockOfComplex {
  void put(std::size_t i, std::complex<double> value) {
    real[i] = value.real();
    imag[i] = value.imag();
  }

  BlockOfReals real, imag;
};

/// A cable's chain parameters at each frequency.
struct BlockOfChains {
  BlockOfComplex a, b_ohm, c_siemens, d;
};

/// A rig at each frequency.
struct BlockOfEnds {
  BlockOfComplex source_ohm, load_siemens;
};

/// The chain parameters of lines with total series impedance z and total shunt admittance y, then a resistor at the load
/// end, by the power series of `two_port` with enough terms for |z y| up to 1.
/// @return  false, and chains that are not to be used, if |z y| is above 1 anywhere.
bool fill_chains(const BlockOfComplex& series_ohm, const BlockOfComplex& shunt_siemens,
                 double load_end_resistance_ohm, BlockOfChains& chains);

/// 20 log10 |H| with 1/H = (A + Zs C) + (B + Zs D)/ZL.
/// @return  false, and levels that are not to be used, if one is beyond 2900 dB or none: |H|^2 is then no normal double.
bool fill_levels_db(const BlockOfChains& chains, const BlockOfEnds& ends, BlockOfReals& levels_db);

}  // namespace electrical
