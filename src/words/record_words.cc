#include "words/record_words.h"

namespace fogline {

std::string no_card_sentence() {
  return "No roll card was given.";
}

std::string no_advice_sentence() {
  return "No scan could be read, so nothing can be advised.";
}

std::string silent_roll_sentence() {
  return "What is known of this roll doesn't tell.";
}

}  // namespace fogline
