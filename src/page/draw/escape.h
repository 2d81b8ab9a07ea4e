#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// Text safe inside HTML elements and quoted attributes.
std::string html_escaped(std::string_view text);

/// Base64 of RFC 4648, padded, without line breaks, for data addresses.
std::string base64_from_bytes(const std::vector<std::uint8_t>& bytes);

}  // namespace fogline
