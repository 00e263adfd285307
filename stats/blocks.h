#pragma once

#include <cstdint>
#include <thread>
#include <vector>

namespace stats {

/// Calls `work(block, thread)` for each block from 0 to `blocks` - 1, shared out over `threads` threads (1 or more), each
/// with its own number from 0. Random numbers belong to the block, never to the thread: so the result is the same for
/// every number of threads. `work` must not throw.
template <typename Work>
void for_each_block(std::int64_t blocks, int threads, const Work& work) {
  const auto share = [&](int thread) {
    for (std::int64_t block = thread; block < blocks; block += threads) work(block, thread);
  };
  std::vector<std::jthread> others;
  for (int thread = 1; thread < threads; ++thread) others.emplace_back(share, thread);
  share(0);
}

}  // namespace stats
