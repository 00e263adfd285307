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

/// The same with a second rig, "booth", whose load is a measured impedance.
inline void make_campaign_with_booth(const Folder& folder) {
  make_campaign(folder);
  folder.write("impedance.csv",
               "frequency_Hz,magnitude_ohm,phase_deg\n10,4,10\n100,8,-20\n1000,5,5\n30000,12,40\n");
  expect_done(folder, {"rig", "booth", "--source", "0.1ohm", "--rated", "4ohm", "--volume-step", "0.5dB"});
  expect_done(folder, {"import", "impedance.csv", "--rig", "booth"});
}

/// The JSON report of the unsealed plan "first", after a plain Python program has computed it again from the campaign.
inline std::string confirmed_report(const Folder& folder) {
  expect_done(folder, {"report", "--json", "-o", "report.json"});
  const auto quoted = [&folder](const char* name) { return " '" + (folder / name).string() + "'"; };
  const std::string check = PYTHON3 " " SOURCE_FOLDER "/tests/independent/check_report.py" +
                            quoted("campaign.blindswap") + " first" + quoted("report.json") + " >" +
                            quoted("check") + " 2>&1";
  EXPECT_EQ(std::system(check.c_str()), 0) << content_of(folder / "check");
  return content_of(folder / "report.json");
}

/// The first with a sealed plan of sixteen trials and sitting 1 begun.
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
