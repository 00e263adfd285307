#include <benchmark/benchmark.h>

#include <chrono>
#include <cmath>
#include <nlohmann/json.hpp>
#include <thread>

#include "desk/bench/bench.h"
#include "desk/plans/planning.h"
#include "desk/reports/reports.h"
#include "desk/shelf/shelf.h"
#include "desk/shelf/shelf_prediction.h"
#include "plan/sample_plan.h"
#include "seal/canonical_json.h"
#include "sitting/simulated/rehearsal.h"
#include "store/campaign.h"
#include "text/number.h"
#include "whole/program.h"

// Whole parts of the job against their budgets (absolute, on the machine of the run).
namespace {

std::string cable_name(int i) { return "cable-" + std::to_string(i); }

/// 32 cables, read once each by an LCR meter and by repeated responses: 500 readings in all.
std::vector<desk::Path> write_readings(const Folder& folder) {
  std::string table = "cable,length_m,resistance_mohm,inductance_uH,capacitance_pF\n";
  std::string manifest = "file,cable,rig,repeat\n";
  int readings = 32;
  for (int i = 0; i < 32; ++i) table += cable_name(i) + ",3," + std::to_string(30 + 15 * i) + ",1.9,150\n";
  for (int repeat = 1; readings < 500; ++repeat)
    for (int i = 0; i < 32 && readings < 500; ++i, ++readings) {
      std::string response = "frequency_Hz,level_dB\n";
      for (int at = 0; at <= 200; ++at)
        response += text::fixed(20 * std::pow(1000, at / 200.0), 2) + "," +
                    text::fixed(-0.01 * i - 0.001 * (at % 7), 4) + "\n";
      const std::string name = cable_name(i) + "-" + std::to_string(repeat) + ".csv";
      folder.write(name, response);
      manifest += name + "," + cable_name(i) + ",hall," + std::to_string(repeat) + "\n";
    }
  return {folder.write("cables.csv", table), folder.write("manifest.csv", manifest)};
}

void import_all(const Folder& folder, const desk::Path& file) {
  const auto files = write_readings(folder);
  desk::start_campaign(file, "bench");
  desk::import_files(file, {files[0]}, {});
  desk::add_rig(file, {.name = "hall",
                       .source = "0.1ohm",
                       .source_inductance = "",
                       .load = "3.5ohm + 0.13mH + [31ohm||430uF||23mH]",
                       .rated_impedance = "4ohm",
                       .volume_step = "0.5dB",
                       .level_note = "",
                       .programme_note = ""});
  desk::import_manifest(file, files[1]);
}

/// Budget: 2 s.
void import_of_500_readings(benchmark::State& state) {
  for (auto _ : state) {
    const Folder folder;
    import_all(folder, folder / "campaign.blindswap");
  }
}

/// Budget: 2 s with the import: what can hardly be, differences beside repeatability, features.
void examination_of_500_readings(benchmark::State& state) {
  const Folder folder;
  const desk::Path file = folder / "campaign.blindswap";
  import_all(folder, file);
  for (auto _ : state) benchmark::DoNotOptimize(desk::examination_report(file, desk::BenchForm::text));
}

/// 31 swaps on one rig, each with residual and auditory bands.
void prediction_of_a_shelf(benchmark::State& state) {
  const Folder folder;
  const desk::Path file = folder / "campaign.blindswap";
  import_all(folder, file);
  desk::set_baseline(file, cable_name(0));
  for (auto _ : state) benchmark::DoNotOptimize(desk::predict_shelf(file, "", ""));
}

/// Budget: 1 s, 200 MB: 32 cables, 12 listeners, 500 readings, 31 comparisons of 16 trials, 5,952 answers.
void report_of_a_large_campaign(benchmark::State& state) {
  const Folder folder;
  const desk::Path file = folder / "campaign.blindswap";
  import_all(folder, file);
  desk::set_baseline(file, cable_name(0));
  desk::PlanTyped typed;
  typed.name = "large";
  typed.rig = "hall";
  typed.all_against_baseline = true;
  typed.sittings = 8;
  for (int i = 0; i < 12; ++i) typed.listeners.push_back("listener-" + std::to_string(i));
  const desk::SealedNow now = desk::seal_plan(file, typed, std::chrono::system_clock::now);
  std::vector<sitting::Guesser> guessers;
  for (int i = 0; i < 12; ++i) guessers.emplace_back(static_cast<std::uint64_t>(i));
  sitting::Company company;
  for (sitting::Guesser& guesser : guessers) company.push_back(&guesser);
  {
    store::Campaign campaign = store::Campaign::open(file);
    const auto log = campaign.log("large");
    sitting::HandClock clock;
    campaign.all_or_none([&] {
      for (int number = 1; number <= 8; ++number) {
        sitting::Sitting held(now.plan, now.sealed, number, *log, clock.reading());
        sitting::rehearse(held, now.sealed, company, clock);
      }
    });
  }
  desk::unseal_plan(file, "large", std::chrono::system_clock::now);
  for (auto _ : state) benchmark::DoNotOptimize(desk::report_on(file, "large", desk::ReportForm::html));
}

/// Budget: 5 s: 2,000 whole sittings of 3 listeners and 64 trials through the engine, two threads.
void dry_run_of_2000_sittings(benchmark::State& state) {
  const plan::Plan plan = sample_plan("abx", 4, 16, 3);
  const auto run = [&plan](int first) {
    for (int i = first; i < first + 1000; ++i) {
      sitting::Guesser one(1), two(2), three(3);
      sitting::MemoryLog log;
      seal::Digest seed{};
      seed[0] = static_cast<unsigned char>(i);
      seed[1] = static_cast<unsigned char>(i >> 8);
      sitting::rehearse_plan(log, plan, sitting::sealed_with(plan, seed), {&one, &two, &three});
    }
  };
  for (auto _ : state) {
    std::thread other(run, 1000);
    run(0);
    other.join();
  }
}

/// Budget: 10 ms.
void start_of_the_program(benchmark::State& state) {
  const Folder folder;
  for (auto _ : state) run_program(folder, {"--version"});
}

BENCHMARK(import_of_500_readings)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(3);
BENCHMARK(examination_of_500_readings)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(prediction_of_a_shelf)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(report_of_a_large_campaign)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(3);
BENCHMARK(dry_run_of_2000_sittings)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(2);
BENCHMARK(start_of_the_program)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
