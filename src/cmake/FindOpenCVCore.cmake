# OpenCV's core and imgproc alone. Debian's small packages carry no OpenCVConfig.cmake (only the
# full development package does, with a hundred libraries behind it), so look for the files.
find_package(OpenCV QUIET COMPONENTS core imgproc)
if(NOT OpenCV_FOUND)
  find_path(OpenCVCore_INCLUDE_DIR opencv2/core.hpp PATH_SUFFIXES opencv4)
  foreach(part core imgproc)
    find_library(OpenCVCore_${part}_LIBRARY opencv_${part})
    if(NOT TARGET opencv_${part} AND OpenCVCore_${part}_LIBRARY)
      add_library(opencv_${part} UNKNOWN IMPORTED)
      set_target_properties(opencv_${part} PROPERTIES
        IMPORTED_LOCATION ${OpenCVCore_${part}_LIBRARY}
        INTERFACE_INCLUDE_DIRECTORIES ${OpenCVCore_INCLUDE_DIR})
    endif()
  endforeach()
endif()
include(FindPackageHandleStandardArgs)
if(TARGET opencv_core AND TARGET opencv_imgproc)
  set(OpenCVCore_TARGETS opencv_imgproc opencv_core)
endif()
find_package_handle_standard_args(OpenCVCore REQUIRED_VARS OpenCVCore_TARGETS)
