# How a program of tests is built and run.

# A test program costs more to optimise than its own code ever runs: what takes the time is the
# library under test, which is optimised. But for those that draw millions of pixels or thousands of
# records themselves.
set(busy_programs pixels record)
set(test_program_options -O1)
set(instrumented FALSE)
if(CMAKE_CXX_FLAGS MATCHES "-fsanitize")
  set(instrumented TRUE)
  set(test_program_options -O0)
endif()

# GoogleTest's headers cost more than most tests: parsed once for all programs.
if(FOGLINE_PRECOMPILED)
  file(CONFIGURE OUTPUT ${CMAKE_CURRENT_BINARY_DIR}/test_headers.cc CONTENT "")
  add_library(test_headers OBJECT ${CMAKE_CURRENT_BINARY_DIR}/test_headers.cc)
  target_compile_options(test_headers PRIVATE ${test_program_options})
  target_link_libraries(test_headers PRIVATE fogline_warnings GTest::gtest_main GTest::gmock)
  target_precompile_headers(test_headers PRIVATE ${fogline_precompiled} <gmock/gmock.h>
                                                 <gtest/gtest.h>)
endif()

# add_test_program(<name> <source>...): the program <name>_test with GoogleTest's own main. Each of
# its cases is a test by itself; where a start alone costs a tenth of a second (instrumented), they
# run as the shards of one program instead.
function(add_test_program name)
  set(program ${name}_test)
  add_executable(${program} ${ARGN})
  target_link_libraries(${program} PRIVATE fogline_warnings GTest::gtest_main GTest::gmock)
  fogline_unity_pieces(${program} ${ARGN})
  if(NOT name IN_LIST busy_programs)
    target_compile_options(${program} PRIVATE ${test_program_options})
    if(FOGLINE_PRECOMPILED)
      target_precompile_headers(${program} REUSE_FROM test_headers)
    endif()
  endif()
  if(instrumented)
    set(shards 4)
    math(EXPR last "${shards} - 1")
    foreach(shard RANGE ${last})
      add_test(NAME ${name}.${shard} COMMAND ${program})
      set_tests_properties(${name}.${shard} PROPERTIES TIMEOUT 900 ENVIRONMENT
                           "GTEST_TOTAL_SHARDS=${shards};GTEST_SHARD_INDEX=${shard}")
    endforeach()
  else()
    gtest_discover_tests(${program} TEST_PREFIX ${name}. DISCOVERY_TIMEOUT 120
                         PROPERTIES TIMEOUT 600)
  endif()
endfunction()
