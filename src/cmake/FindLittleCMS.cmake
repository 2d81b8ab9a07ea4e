# Little CMS 2, which ships no CMake package.
find_path(LittleCMS_INCLUDE_DIR lcms2.h)
find_library(LittleCMS_LIBRARY lcms2)
include(FindPackageHandleStandardArgs)
find_package_handle_standard_args(LittleCMS REQUIRED_VARS LittleCMS_LIBRARY LittleCMS_INCLUDE_DIR)
if(LittleCMS_FOUND AND NOT TARGET LittleCMS::LittleCMS)
  add_library(LittleCMS::LittleCMS UNKNOWN IMPORTED)
  set_target_properties(LittleCMS::LittleCMS PROPERTIES
    IMPORTED_LOCATION ${LittleCMS_LIBRARY}
    INTERFACE_INCLUDE_DIRECTORIES ${LittleCMS_INCLUDE_DIR})
endif()
