# Install, configure, build, run; stops at the first step that fails. The work folder is emptied
# first, so that nothing of an earlier install can help.
cmake_minimum_required(VERSION 3.25)
file(REMOVE_RECURSE ${WORK})
execute_process(COMMAND ${CMAKE_COMMAND} --install ${BUILD} --prefix ${WORK}/prefix
                COMMAND_ERROR_IS_FATAL ANY)
foreach(file man/man1/fogline.1 man/man1/fogline-measure.1 bash-completion/completions/fogline)
  if(NOT EXISTS ${WORK}/prefix/share/${file})
    message(FATAL_ERROR "share/${file} was not installed.")
  endif()
endforeach()
execute_process(COMMAND ${CMAKE_COMMAND} -S ${PROJECT} -B ${WORK}/build -G ${GENERATOR}
                        -D CMAKE_PREFIX_PATH=${WORK}/prefix
                        -D CMAKE_CXX_COMPILER=${COMPILER}
                        -D CMAKE_BUILD_TYPE=${BUILD_TYPE}
                        -D CMAKE_CXX_FLAGS=${FLAGS}
                COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${CMAKE_COMMAND} --build ${WORK}/build COMMAND_ERROR_IS_FATAL ANY)
# A copy: the project knows nothing of the source tree.
file(COPY_FILE ${SAMPLE}.tif ${WORK}/scan.tif)
file(READ ${SAMPLE}.truth.json truth)
string(JSON base_fog GET "${truth}" strips 0 base_fog visual)
execute_process(COMMAND ${WORK}/build/consumer ${WORK}/scan.tif ${base_fog} COMMAND_ERROR_IS_FATAL ANY)
