#include "terminal/scan_sheet.h"

#include "terminal/text_layout.h"
#include "words/rescan_lines.h"

namespace fogline {

std::string scan_sheet_text(int width) {
  TextLayout layout(width, false);
  layout.heading("How to scan so that a scan can be measured");
  layout.paragraph(
      "Two things make a picture a measurement: light that nothing has changed between film and "
      "file, and bare light somewhere beside the film to count from.");
  layout.heading("Flatbed or film scanner");
  for (const std::string_view line : flatbed_lines()) {
    layout.item('-', line);
  }
  layout.heading("Camera over a light panel");
  for (const std::string_view line : camera_lines()) {
    layout.item('-', line);
  }
  return layout.text();
}

}  // namespace fogline
