#include "words/refusal_tables.h"

#include <array>

namespace fogline {

namespace {

using enum Refusal;

constexpr std::array<FactWords<Refusal>, 15> words{{
    {cant_open, "{file} can't be opened ({system}); check the name and its rights."},
    {is_folder, "{file} is a folder; name the picture in it."},
    {is_no_file, "{file} is not a file that can be read in part; copy the scan to disk first."},
    {is_empty, "{file} is empty; scan or copy it again."},
    {cant_read_on,
     "{file} can't be read to its end ({system}); copy it to another disk and try again."},
    {cant_write,
     "{file} can't be written ({system}); check the folder, its rights and the space left."},
    {breaks_off, "{file} breaks off before its picture ends; copy or scan it again."},
    {damaged, "{file} is damaged or breaks off; copy, scan or save it again."},
    {undecodable, "{file} is damaged or breaks off ({decoder}); copy, scan or save it again."},
    {scan_is_folder, "{file} is a folder: name the scans in it."},
    {page_is_folder, "{file} is a folder, so the page wasn't written: name a file with --html."},
    {foreign_page,
     "{file} wasn't written by fogline and is left as it is: move it, or name another page with "
     "--html."},
    {output_is_folder, "{file} is a folder: name a file with --output."},
    {foreign_scanner_file,
     "{file} is no scanner file of fogline's and is left as it is: move it, or name another file "
     "with --output."},
    {output_stopped, "{file} can't be written: is its disk full?"},
}};

}  // namespace

std::span<const FactWords<Refusal>> refusals_of_files() {
  return words;
}

}  // namespace fogline
