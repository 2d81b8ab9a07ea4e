#include "measured_process.h"

#include <fogline/record/record_json.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <csignal>
#include <exception>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <thread>

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

namespace bench {

namespace {

constexpr double longest_s = 180.0;

pid_t start(const std::string& program, const std::string& scan, const std::string& json) {
  std::array<std::string, 7> words{program, "measure", scan, "--html", "none", "--json", json};
  std::array<char*, words.size() + 1> arguments{};
  for (std::size_t i = 0; i < words.size(); ++i) {
    arguments[i] = words[i].data();
  }
  posix_spawn_file_actions_t quiet;
  posix_spawn_file_actions_init(&quiet);
  for (const int stream : {STDOUT_FILENO, STDERR_FILENO}) {
    posix_spawn_file_actions_addopen(&quiet, stream, "/dev/null", O_WRONLY, 0);
  }
  pid_t child = 0;
  const int failed =
      posix_spawn(&child, program.c_str(), &quiet, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&quiet);
  if (failed != 0) {
    throw std::runtime_error("can't start " + program);
  }
  return child;
}

/// Greatest resident memory so far, or 0 where the process has ended. What the system tells when a
/// child has ended counts the memory of the bench too, from which it was started.
double peak_mb_of(pid_t child) {
  constexpr double kib_per_mb = 1000.0 / 1.024;
  const std::string label = "VmHWM:";
  std::ifstream status("/proc/" + std::to_string(child) + "/status");
  for (std::string word; status >> word;) {
    double kib = 0.0;
    if (word == label && status >> kib) {
      return kib / kib_per_mb;
    }
  }
  return 0.0;
}

/// Status of the ended child.
int wait_for(pid_t child, std::chrono::steady_clock::time_point begin, double& peak_mb) {
  constexpr std::chrono::milliseconds look_again{5};
  int status = 0;
  while (waitpid(child, &status, WNOHANG) == 0) {
    peak_mb = std::max(peak_mb, peak_mb_of(child));
    const std::chrono::duration<double> passed = std::chrono::steady_clock::now() - begin;
    if (passed.count() > longest_s) {
      kill(child, SIGKILL);
      waitpid(child, &status, 0);
      break;
    }
    std::this_thread::sleep_for(look_again);
  }
  return status;
}

void read_report(const std::string& json, MeasuredProcess& result) {
  std::ifstream file(json);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  if (text.empty()) {
    result.trouble = "no report was written";
    return;
  }
  fogline::RollMeasurement roll = fogline::record_from_json(text, json).measurement;
  if (roll.scans.empty()) {
    result.trouble = "the file wasn't read";
    return;
  }
  result.roll = std::move(roll);
}

}  // namespace

MeasuredProcess measure_in_process(const std::string& program, const std::string& scan,
                                   const std::string& json) {
  MeasuredProcess result;
  const auto begin = std::chrono::steady_clock::now();
  const pid_t child = start(program, scan, json);
  const int status = wait_for(child, begin, result.peak_mb);
  result.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  if (WIFSIGNALED(status)) {
    result.trouble = result.seconds > longest_s
                         ? "took too long"
                         : "ended by signal " + std::to_string(WTERMSIG(status));
    return result;
  }
  try {
    read_report(json, result);
  } catch (const std::exception& error) {
    result.trouble = error.what();
  }
  return result;
}

}  // namespace bench
