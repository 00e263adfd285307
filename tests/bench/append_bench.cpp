#include <benchmark/benchmark.h>
#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "seal/chain.h"
#include "seal/commitment.h"
#include "store/campaign.h"

namespace {

using Microseconds = std::chrono::duration<double, std::micro>;

/// The least that makes a text durable: append to a file, then fdatasync.
class GrowingFile {
 public:
  explicit GrowingFile(const std::filesystem::path& file)
      : descriptor_(open(file.c_str(), O_WRONLY | O_CREAT | O_APPEND, 0600)) {}
  ~GrowingFile() { close(descriptor_); }
  GrowingFile(const GrowingFile&) = delete;
  GrowingFile& operator=(const GrowingFile&) = delete;

  void append(const std::string& text) {
    if (write(descriptor_, text.data(), text.size()) != static_cast<ssize_t>(text.size()) ||
        fdatasync(descriptor_) != 0)
      throw std::runtime_error("the growing file cannot be written");
  }

 private:
  int descriptor_;
};

/// A campaign on a real disk, and the growing file beside it.
class Scene {
 public:
  Scene() {
    std::string name = (std::filesystem::temp_directory_path() / "append-XXXXXX").string();
    folder_ = mkdtemp(name.data());
  }
  ~Scene() { std::filesystem::remove_all(folder_); }
  Scene(const Scene&) = delete;
  Scene& operator=(const Scene&) = delete;

  std::filesystem::path operator/(const char* name) const { return folder_ / name; }

 private:
  std::filesystem::path folder_;
};

plan::SealedPlan sealed_plan() {
  plan::SealedPlan plan{"spring", R"({"name":"spring"})", seal::sha256("seed"), {}};
  plan.commitment = seal::commitment(plan.text, plan.seed);
  return plan;
}

/// An answer as long as those of a sitting.
std::string answer(int number) {
  return R"({"listener":"Listener 1","number":)" + std::to_string(number) +
         R"(,"time":"2031-05-01T19:30:00.250Z","trial":7,"type":"answered","word":"A"})";
}

template <class Work>
double microseconds(const Work& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return Microseconds(std::chrono::steady_clock::now() - start).count();
}

double median(std::vector<double> times) {
  const auto middle = times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2);
  std::nth_element(times.begin(), middle, times.end());
  return *middle;
}

/// Workload W7: one event made durable against the growing file, in turns; `ratio` is at most 2.
void AppendAnEvent(benchmark::State& state) {
  const Scene scene;
  store::Campaign campaign = store::Campaign::create(scene / "a.campaign", "bench");
  const plan::SealedPlan plan = sealed_plan();
  campaign.add_plan(plan);
  const auto log = campaign.log("spring");
  GrowingFile file(scene / "growing");
  seal::Digest head = seal::chain_start(plan.commitment, 1);
  std::vector<double> of_log, of_file;
  int number = 0;
  for (auto _ : state) {
    const std::string text = answer(++number);
    head = seal::chain_next(head, text);
    const std::string head_hex = seal::to_hex(head);
    of_log.push_back(microseconds([&] { log->append(1, number, {text, head_hex}); }));
    of_file.push_back(microseconds([&] { file.append(text + head_hex + "\n"); }));
  }
  state.counters["log_us"] = median(of_log);
  state.counters["file_us"] = median(of_file);
  state.counters["ratio"] = median(of_log) / median(of_file);
}
BENCHMARK(AppendAnEvent)->Iterations(500)->Repetitions(3)->UseRealTime()->Unit(benchmark::kMicrosecond);

/// Opening and closing a campaign of 5,000 events: part of the start of every command.
void OpenACampaign(benchmark::State& state) {
  const Scene scene;
  {
    store::Campaign campaign = store::Campaign::create(scene / "a.campaign", "bench");
    campaign.add_plan(sealed_plan());
    const auto log = campaign.log("spring");
    campaign.all_or_none([&] {
      for (int number = 1; number <= 5000; ++number)
        log->append(1, number, {answer(number), std::string(64, '0')});
    });
  }
  for (auto _ : state) benchmark::DoNotOptimize(store::Campaign::open(scene / "a.campaign").title());
}
BENCHMARK(OpenACampaign)->UseRealTime()->Unit(benchmark::kMicrosecond);

}  // namespace
