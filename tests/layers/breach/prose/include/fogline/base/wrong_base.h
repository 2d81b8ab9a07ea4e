#pragma once

// A comment may say "what it likes here", and /* so may this one */.
/* "Nobody reads these words." */
#include <fogline/base/refusal.h>

inline const char* reason() {
  return "No film is in sight";  // breach
}
static_assert(sizeof(int) > 1, "a message to programmers only");
