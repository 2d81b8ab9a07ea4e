# find_package(fogline) for downstream projects: the target fogline::fogline and the libraries that
# a static library needs at link time. Headers name none of them, so nothing more is needed.
include(CMakeFindDependencyMacro)
list(PREPEND CMAKE_MODULE_PATH ${CMAKE_CURRENT_LIST_DIR})
find_dependency(OpenCVCore)
find_dependency(TIFF)
find_dependency(PNG)
find_dependency(JPEG)
find_dependency(LittleCMS)
find_dependency(Threads)
list(POP_FRONT CMAKE_MODULE_PATH)
include(${CMAKE_CURRENT_LIST_DIR}/fogline-targets.cmake)
