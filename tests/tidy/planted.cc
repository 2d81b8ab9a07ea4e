// Defects planted on purpose, a family each; nothing here is compiled into anything. `.ci/tidy`
// demands each of them from clang-tidy.
#include "tidy/planted.h"

#include <cstdint>
#include <memory>
#include <vector>

namespace fogline::planted {

int of_null(const int* number) {
  if (number != nullptr) {
    return 0;
  }
  return *number;  // planted: clang-analyzer-core.NullDereference
}

std::size_t after_move() {
  std::vector<int> first{1, 2};
  const std::vector<int> second = std::move(first);
  return first.size() + second.size();  // planted: bugprone-use-after-move
}

int narrowed(double value) {
  const int whole = value;  // planted: cppcoreguidelines-narrowing-conversions
  return whole;
}

void* old_null() {
  return 0;  // planted: modernize-use-nullptr
}

bool wordy(bool flag) {
  return flag == true;  // planted: readability-simplify-boolean-expr
}

}  // namespace fogline::planted
