#include "files/small_text_file.h"

#include "files/input_file.h"

namespace fogline {

std::string read_small_text(const std::string& path, std::size_t most_bytes, Refusal too_large) {
  const InputFile file(path);
  if (file.size() > most_bytes) {
    refuse(path, too_large);
  }
  std::string text(static_cast<std::size_t>(file.size()), '\0');
  file.read_exactly(0, text.data(), text.size());
  return text;
}

}  // namespace fogline
