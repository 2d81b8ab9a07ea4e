# What every target of the project shares: language level, warnings, compiler cache.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE Release)
endif()

find_program(FOGLINE_CCACHE ccache)
if(FOGLINE_CCACHE)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${FOGLINE_CCACHE})
endif()

# For who builds once; whoever changes sources waits longer with it.
option(FOGLINE_UNITY "Compile sources of a folder together" OFF)
include(UnityPieces)

add_library(fogline_warnings INTERFACE)
target_compile_options(fogline_warnings INTERFACE -Wall -Wextra -Wpedantic -Wshadow -Wconversion
                                                  -Wold-style-cast -Wnon-virtual-dtor)
# Instrumented code upsets GCC's flow analysis: inside <regex> it then reports members that are set
# (its manual says of -fsanitize that false warnings may come of it). Without sanitizers it stays on.
if(CMAKE_CXX_COMPILER_ID STREQUAL GNU AND CMAKE_CXX_FLAGS MATCHES "-fsanitize")
  target_compile_options(fogline_warnings INTERFACE -Wno-maybe-uninitialized)
endif()
if(FOGLINE_WARNINGS_AS_ERRORS)
  target_compile_options(fogline_warnings INTERFACE -Werror)
endif()

# Headers of the language that nearly every source includes: parsed once a target. Sources include
# what they use all the same.
option(FOGLINE_PRECOMPILED "Precompile the language's own headers" ON)
set(fogline_precompiled <algorithm> <array> <cmath> <cstdint> <functional> <map> <memory> <optional>
                        <string> <string_view> <utility> <vector>)
