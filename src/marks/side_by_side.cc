#include "marks/side_by_side.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <thread>
#include <vector>

namespace fogline {

void run_side_by_side(std::size_t count, const std::function<void(std::size_t)>& task) {
  constexpr std::size_t most_threads = 2;
  const auto processors = static_cast<std::size_t>(std::thread::hardware_concurrency());
  const std::size_t workers = std::min({count, most_threads, std::max(processors, std::size_t{1})});
  std::atomic<std::size_t> next = 0;
  std::vector<std::exception_ptr> failures(workers);
  const auto work = [&](std::size_t worker) {
    try {
      for (std::size_t i = next++; i < count; i = next++) {
        task(i);
      }
    } catch (...) {
      failures[worker] = std::current_exception();
      next = count;
    }
  };
  std::vector<std::thread> threads;
  for (std::size_t worker = 1; worker < workers; ++worker) {
    threads.emplace_back(work, worker);
  }
  if (workers > 0) {
    work(0);
  }
  for (std::thread& thread : threads) {
    thread.join();
  }
  for (const std::exception_ptr& failure : failures) {
    if (failure) {
      std::rethrow_exception(failure);
    }
  }
}

}  // namespace fogline
