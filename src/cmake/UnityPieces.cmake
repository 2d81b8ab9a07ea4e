# fogline_unity_pieces(<target> <source>...): compiles a target's sources together in few pieces,
# where FOGLINE_UNITY is on.
#
# Most of a source's time goes into reading the same headers again, so sources of one folder are
# compiled as one, as long as no two of them give inner names (of their unnamed namespaces) to
# different things. What can't be told from a line of a definition at the line's begin is taken for a
# clash, which costs a piece more and nothing else. Sources that bring in the members of an
# enumeration stay alone: all that follows would see them.

# Names that a source defines at the begin of a line, outside classes and functions.
function(fogline_names_of source names_out)
  file(READ ${source} text)
  # These would break CMake's lists.
  string(REGEX REPLACE "[][;]" "=" text "${text}")
  string(REGEX MATCHALL "\n(struct|class|enum class|enum|using) [A-Za-z_0-9]+" types "${text}")
  string(REGEX MATCHALL "\n[A-Za-z][^\n({=]*[ *&>][A-Za-z_][A-Za-z_0-9]* ?[({=]" others "${text}")
  set(names "")
  foreach(definition IN LISTS types others)
    string(REGEX MATCH "([A-Za-z_0-9]+) ?[({=]?$" found "${definition}")
    list(APPEND names ${CMAKE_MATCH_1})
  endforeach()
  list(REMOVE_DUPLICATES names)
  # Of `namespace fogline {`, and what names nothing.
  list(REMOVE_ITEM names fogline static_assert)
  set(${names_out} "${names}" PARENT_SCOPE)
endfunction()

function(fogline_unity_pieces target)
  if(NOT FOGLINE_UNITY)
    return()
  endif()
  # Pieces of this many bytes still leave every core something to do.
  set(most_bytes 60000)
  set(pieces "")
  foreach(source IN LISTS ARGN)
    file(STRINGS ${source} alone REGEX "^using (enum|namespace) " LIMIT_COUNT 1)
    if(alone)
      continue()
    endif()
    fogline_names_of(${source} names)
    file(SIZE ${source} bytes)
    cmake_path(GET source PARENT_PATH folder)
    cmake_path(RELATIVE_PATH folder BASE_DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR})
    string(REGEX MATCH "^[a-z_]+" folder "${folder}")
    set(chosen "")
    foreach(piece IN LISTS pieces)
      if(NOT piece MATCHES "^${folder}-")
        continue()
      endif()
      math(EXPR together "${bytes_${piece}} + ${bytes}")
      set(clash FALSE)
      foreach(name IN LISTS names)
        if(name IN_LIST names_${piece})
          set(clash TRUE)
          break()
        endif()
      endforeach()
      if(NOT clash AND together LESS most_bytes)
        set(chosen ${piece})
        break()
      endif()
    endforeach()
    if(NOT chosen)
      list(LENGTH pieces count)
      set(chosen ${folder}-${count})
      list(APPEND pieces ${chosen})
      set(bytes_${chosen} 0)
      set(names_${chosen} "")
    endif()
    math(EXPR bytes_${chosen} "${bytes_${chosen}} + ${bytes}")
    list(APPEND names_${chosen} ${names})
    set_source_files_properties(${source} PROPERTIES UNITY_GROUP ${chosen})
  endforeach()
  set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_MODE GROUP)
  # Warnings are for who changes sources, and those build one by one: together, an inner constant of
  # another source counts as shadowed, and GCC 12 sees overflows in strings at -O3 that there are not.
  target_compile_options(${target} PRIVATE -w)
endfunction()
