#include "words/rescan_lines.h"

namespace fogline {

std::vector<std::string_view> flatbed_lines() {
  return {
      "Scan as a transparent positive, never as a negative: a negative setting stretches every "
      "frame by itself.",
      "Colour, 16 bits a channel, even for black-and-white film: the tint of clear film is told "
      "from the three channels.",
      "Switch off everything automatic: exposure, levels, sharpening, grain reduction, dust "
      "removal "
      "by infrared (silver blocks infrared, so it eats the picture).",
      "Choose a linear tone curve, or keep the curve's profile in the file, or note which curve it "
      "was and say it with --transfer.",
      "Keep one fixed exposure for all strips and rolls, so that the bare window reads 80 to 95 % "
      "of full scale and nowhere the top.",
      "Let light through bare glass beside the strip: some millimetres of empty window, or the "
      "perforations free of the holder. Density zero is read there. Keep the window free by which "
      "the scanner measures itself.",
      "A bit of opaque black tape, two layers, on the holder (never on film) shows how much stray "
      "light there is.",
      "300 pixels an inch are enough for tone; 1200 for marks, 2400 for pinholes.",
      "If you have a step wedge, scan it beside a strip now and then.",
      "Lay the smooth base side away from glass; flatten curled film under a book overnight.",
      "Save as TIFF, unchanged afterwards.",
  };
}

std::vector<std::string_view> camera_lines() {
  return {
      "Raw, developed to a linear 16-bit TIFF, base sensitivity, f/5.6 to f/8.",
      "Manual exposure and fixed white balance, the same for all frames.",
      "Expose for the panel, not for the film: the bare panel just below full scale.",
      "Mask the panel down to the frame and its perforations, and darken the room: light beside "
      "the "
      "film thins its dense parts.",
      "A panel larger than the film by 100 mm all round, 30 to 80 mm below it, warmed up for five "
      "minutes, at full brightness, 1/30 s or longer (dimmed panels flicker).",
      "Leave some perforations, or a strip of bare panel, in the picture: density zero is read "
      "there.",
      "Take one picture of the bare panel and one with the lens capped at the same settings, and "
      "keep them.",
      "Two pictures of an evenly lit wall on each roll, five stops apart, and one blank frame tell "
      "more of light and development than all others.",
  };
}

}  // namespace fogline
