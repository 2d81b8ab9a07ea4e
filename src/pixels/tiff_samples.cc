#include "pixels/tiff_samples.h"

#include <cmath>
#include <cstring>
#include <limits>

namespace fogline {

namespace {

template <typename Sample>
Sample load(const std::uint8_t* bytes, std::size_t index) {
  Sample sample{};
  std::memcpy(&sample, bytes + index * sizeof(Sample), sizeof(Sample));
  return sample;
}

template <typename Sample, typename Convert>
void convert_all(const std::uint8_t* bytes, std::vector<float>& floats, const Convert& convert) {
  for (std::size_t i = 0; i < floats.size(); ++i) {
    floats[i] = convert(load<Sample>(bytes, i));
  }
}

}  // namespace

float float_from_half(std::uint16_t half) {
  const unsigned exponent = (half >> 10U) & 0x1FU;
  const auto fraction = static_cast<float>(half & 0x3FFU);
  float magnitude = 0.0F;
  if (exponent == 0) {
    magnitude = std::ldexp(fraction, -24);
  } else if (exponent == 31) {
    magnitude = fraction == 0.0F ? std::numeric_limits<float>::infinity()
                                 : std::numeric_limits<float>::quiet_NaN();
  } else {
    magnitude = std::ldexp(1024.0F + fraction, static_cast<int>(exponent) - 25);
  }
  return (half & 0x8000U) != 0 ? -magnitude : magnitude;
}

void to_host_order(const TiffPage& page, bool swapped, std::uint8_t* bytes, std::size_t count) {
  const auto size = static_cast<tmsize_t>(count);
  if (page.fill_order == FILLORDER_LSB2MSB) {
    TIFFReverseBits(bytes, size);
  }
  if (!swapped) {
    return;
  }
  // The buffers come from the allocator, so they are aligned for any sample.
  if (page.bits == 16) {
    TIFFSwabArrayOfShort(reinterpret_cast<std::uint16_t*>(bytes), size / 2);
  } else if (page.bits == 32) {
    TIFFSwabArrayOfLong(reinterpret_cast<std::uint32_t*>(bytes), size / 4);
  }
}

const void* ready_samples(const TiffPage& page, std::uint8_t* bytes, std::size_t count,
                          std::vector<float>& floats) {
  const bool inverted = page.photometric == PHOTOMETRIC_MINISWHITE;
  if (page.sample_type() != SampleType::f32) {
    if (inverted) {
      // Bit by bit this is full code less code, for either width.
      for (std::size_t i = 0; i < count; ++i) {
        bytes[i] = static_cast<std::uint8_t>(~bytes[i]);
      }
    }
    return bytes;
  }
  floats.resize(count / (page.bits / 8U));
  const auto scale = static_cast<float>(1.0 / page.float_scale);
  if (!page.is_float()) {
    constexpr double full = 4294967295.0;  // 2^32 - 1
    convert_all<std::uint32_t>(bytes, floats, [](std::uint32_t code) {
      return static_cast<float>(static_cast<double>(code) / full);
    });
  } else if (page.bits == 16) {
    convert_all<std::uint16_t>(bytes, floats,
                               [&](std::uint16_t half) { return float_from_half(half) * scale; });
  } else {
    convert_all<float>(bytes, floats, [&](float sample) { return sample * scale; });
  }
  if (inverted) {
    for (float& sample : floats) {
      sample = 1.0F - sample;
    }
  }
  return floats.data();
}

}  // namespace fogline
