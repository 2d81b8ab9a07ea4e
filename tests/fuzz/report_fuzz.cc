// Feeds any bytes to the reader of reports. Only FileError may come out; what is read must be read
// again from what is written of it.

#include <fogline/base/refusal.h>
#include <fogline/record/record_json.h>

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
  const std::string text(bytes, bytes + count);
  try {
    const fogline::RollRecord record = fogline::record_from_json(text, "fuzzed.json");
    if (fogline::record_from_json(fogline::json_from_record(record), "again.json") != record) {
      std::abort();
    }
  } catch (const fogline::FileError&) {
  }
  return 0;
}
