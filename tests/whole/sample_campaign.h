#pragma once

#include "whole/program.h"

inline const char* const sample_cables =
    "cable,length_m,resistance_mohm,inductance_uH,capacitance_pF,frequency_Hz\n"
    "thick-pair,3,34,1.85,155,1000\n"
    "bell-wire,3,580,2.22,126,1000\n";

/// A campaign with two cables and a rig.
inline void make_campaign(const Folder& folder) {
  expect_done(folder, {"new", "--title", "sample"});
  folder.write("cables.csv", sample_cables);
  expect_done(folder, {"import", "cables.csv"});
  expect_done(folder, {"baseline", "thick-pair"});
  expect_done(folder,
              {"rig", "hall", "--source", "0.1ohm", "--load", "3.5ohm + 0.13mH + [31ohm||430uF||23mH]",
               "--rated", "4ohm", "--volume-step", "0.5dB"});
}

/// The same with a sealed plan of sixteen trials and sitting 1 begun.
inline void begin_sitting(const Folder& folder, const std::vector<std::string>& listeners,
                          const std::string& protocol = "abx") {
  make_campaign(folder);
  std::vector<std::string> words = {"plan", "first",     "--protocol",           protocol,   "--rig",
                                    "hall", "--compare", "thick-pair/bell-wire", "--trials", "16"};
  for (const std::string& listener : listeners) words.insert(words.end(), {"--listener", listener});
  expect_done(folder, words);
  expect_done(folder, {"sitting", "open", "1"});
  for (const std::string& listener : listeners)
    expect_done(folder, {"sitting", "characters", "1", "--listener", listener, "--add", "x7"});
  expect_done(folder, {"sitting", "begin", "1"});
}
