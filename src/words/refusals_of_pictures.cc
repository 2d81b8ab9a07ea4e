#include "words/refusal_tables.h"

#include <array>

namespace fogline {

namespace {

using enum Refusal;

constexpr std::array<FactWords<Refusal>, 33> words{{
    {no_picture,
     "{file} is not a TIFF, PNG or JPEG picture; save the scan as TIFF with 16 bits a channel."},
    {no_pixels, "{file} states a picture without pixels; save it again."},
    {too_many_pixels,
     "{file} claims {width_px:0} by {height_px:0} pixels, more than any scan has; scan fewer "
     "strips at a time."},
    {larger_than_file,
     "{file} claims a larger picture than its {file_bytes:0} bytes can hold, so it breaks off or "
     "is damaged; copy or scan it again."},
    {no_own_tone_curve, "{file} has no tone curve of its own; name linear, srgb or a power."},
    {tiff_without_size, "{file} states no picture size; save it again as a plain TIFF."},
    {rare_colour_difference,
     "{file} stores colour as brightness and colour difference in a rare way; save it as RGB or "
     "grey with 16 bits a channel."},
    {palette, "{file} holds a palette picture; save it as RGB or grey with 16 bits a channel."},
    {cmyk,
     "{file} holds a CMYK picture, mixed for printing inks; save it as RGB or grey with 16 bits a "
     "channel."},
    {cielab, "{file} holds a CIELab picture; save it as RGB or grey with 16 bits a channel."},
    {mask_only, "{file} holds only a mask; save it as RGB or grey with 16 bits a channel."},
    {raw_mosaic,
     "{file} holds a raw mosaic of a camera that is not yet a picture; save it as RGB or grey with "
     "16 bits a channel."},
    {not_grey_or_rgb,
     "{file} stores its samples in a way that is not grey or RGB; save it as RGB or grey with 16 "
     "bits a channel."},
    {one_bit,
     "{file} holds a picture of one bit a sample, black or white only; save it as RGB or grey with "
     "16 bits a channel."},
    {odd_sample_bits,
     "{file} stores samples that are neither 8, 16 or 32 bits nor 16- or 32-bit float; save it as "
     "RGB or grey with 16 bits a channel."},
    {odd_sample_count,
     "{file} states a number of samples a pixel that can't be grey or RGB; save it as RGB or grey "
     "with 16 bits a channel."},
    {few_bits,
     "{file} holds a picture of less than 8 bits a sample; save it as RGB or grey with 16 bits a "
     "channel."},
    {unknown_compression,
     "{file} is compressed in a way that can't be read here (TIFF compression "
     "{tiff_compression:0}); save it uncompressed or with deflate."},
    {compressed_whole,
     "{file} is compressed in one huge piece, in a way that can't be read in part; save it with "
     "deflate or uncompressed."},
    {strips_without_size,
     "{file} states strips or tiles without size; save it again as a plain TIFF."},
    {tiles_beyond_reason, "{file} states tiles beyond reason; save it again as a plain TIFF."},
    {rows_beyond_reason, "{file} states rows beyond reason; save it again as a plain TIFF."},
    {too_many_huge_tiles,
     "{file} has too many huge tiles side by side; save it in strips or small tiles."},
    {huge_strip, "{file} has a strip too large for this computer; save it in tiles."},
    {strip_missing,
     "{file} is damaged or breaks off (a strip or tile is missing); copy, scan or save it again."},
    {strip_rows_unfit,
     "{file} is damaged or breaks off (rows of a strip don't fit its width); copy, scan or save it "
     "again."},
    {strip_size_unfit,
     "{file} is damaged or breaks off (the size of a strip or tile doesn't fit its picture); copy, "
     "scan or save it again."},
    {ends_too_soon,
     "{file} is damaged or breaks off (the file ends too soon); copy, scan or save it again."},
    {too_many_scans,
     "{file} is damaged or breaks off (too many scans); copy, scan or save it again."},
    {animation, "{file} is an animation; save the one picture that is the scan."},
    {huge_interlaced,
     "{file} is interlaced and too large to be held whole; save it without interlacing."},
    {no_memory, "{file} can't be read for want of memory; close other programs."},
    {inks, "{file} holds a picture mixed for printing inks; save it as RGB or grey."},
}};

}  // namespace

std::span<const FactWords<Refusal>> refusals_of_pictures() {
  return words;
}

}  // namespace fogline
