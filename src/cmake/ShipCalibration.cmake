# Puts the data of calibration/ into the library as text, so that the program needs no data folder.
file(GLOB calibration_files CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/calibration/*.toml)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${calibration_files})
set(rows "")
foreach(path ${calibration_files})
  get_filename_component(name ${path} NAME)
  file(READ ${path} text)
  string(APPEND rows "    {\"${name}\", R\"shipped(${text})shipped\"},\n")
endforeach()
file(CONFIGURE OUTPUT ${CMAKE_CURRENT_BINARY_DIR}/calibration_text.cc CONTENT [[
#include "tables/calibration_text.h"

#include <map>

namespace fogline {

std::string_view calibration_text(std::string_view name) {
  static const std::map<std::string_view, std::string_view> files{
@rows@  };
  return files.at(name);
}

}  // namespace fogline
]] @ONLY)
target_sources(fogline PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/calibration_text.cc)
