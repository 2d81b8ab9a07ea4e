#pragma once

#include <string>

// Defects planted in a header: each must be found through the source that includes it.
namespace fogline::planted {

inline int BadName(int value) {  // planted: readability-identifier-naming
  return value;
}

inline std::string copied(const std::string text) {  // planted: performance-unnecessary-value-param
  return text + ".";
}

}  // namespace fogline::planted
