#pragma once

#include <fogline/base/refusal.h>

#include <string>

namespace fogline {

/// The sentence for the person at the scanner: what, where, what to do. It is one line that ends
/// with a full stop, or with the question what stands in the way.
std::string sentence_of(const FileError& error);

/// The same of a refusal that was kept beside its file's name.
std::string sentence_of_refusal(const std::string& file, const Fact<Refusal>& why);

}  // namespace fogline
