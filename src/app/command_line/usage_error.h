#pragma once

#include <stdexcept>

namespace fogline {

/// Wrong use of the command line: the message is one sentence, without the program's name.
class UsageError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace fogline
