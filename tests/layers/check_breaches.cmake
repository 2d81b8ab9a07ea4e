# Proves that check_layers.cmake sees what it should: runs it over the tree in breach/, where each
# line that breaks a rule ends with `// breach`, and asks for exactly those lines in the answer.
# Run as: cmake -P check_breaches.cmake
cmake_minimum_required(VERSION 3.25)
set(tree ${CMAKE_CURRENT_LIST_DIR}/breach)

execute_process(COMMAND ${CMAKE_COMMAND} -D ROOT=${tree}
                        -P ${CMAKE_CURRENT_LIST_DIR}/check_layers.cmake
                RESULT_VARIABLE status OUTPUT_VARIABLE answer ERROR_VARIABLE complaints)
if(status EQUAL 0)
  message(FATAL_ERROR "The check passed a tree full of breaches:\n${answer}${complaints}")
endif()
string(REGEX MATCHALL "(include|src)/[^\n]*[.](h|cc):[0-9]+: " found "${complaints}")
list(TRANSFORM found REPLACE ": $" "")

set(planted "")
file(GLOB_RECURSE files RELATIVE ${tree} ${tree}/include/*.h ${tree}/src/*.h ${tree}/src/*.cc)
foreach(file IN LISTS files)
  file(READ ${tree}/${file} lines)
  string(REGEX REPLACE "[][;\\\\]" " " lines "${lines}")
  string(REPLACE "\n" ";" lines "${lines}")
  set(line_number 0)
  foreach(line IN LISTS lines)
    math(EXPR line_number "${line_number} + 1")
    if(line MATCHES "// breach$")
      list(APPEND planted "${file}:${line_number}")
    endif()
  endforeach()
endforeach()

set(missed ${planted})
list(REMOVE_ITEM missed ${found})
set(invented ${found})
list(REMOVE_ITEM invented ${planted})
if(missed OR invented OR NOT planted)
  message(FATAL_ERROR "Planted but not seen: ${missed}\nSeen but not planted: ${invented}")
endif()
list(LENGTH planted count)
message(STATUS "All ${count} planted breaches were seen, and nothing else.")
