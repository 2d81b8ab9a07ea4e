#include "terminal/scan_sheet.h"

#include "terminal/text_layout.h"
#include "words/report_words.h"
#include "words/rescan_lines.h"

namespace fogline {

std::string scan_sheet_text(int width) {
  TextLayout layout(width, false);
  layout.heading(scan_sheet_words.title);
  layout.paragraph(scan_sheet_words.introduction);
  layout.heading(scan_sheet_words.flatbed);
  for (const std::string_view line : flatbed_lines()) {
    layout.item('-', line);
  }
  layout.heading(scan_sheet_words.camera);
  for (const std::string_view line : camera_lines()) {
    layout.item('-', line);
  }
  return layout.text();
}

}  // namespace fogline
