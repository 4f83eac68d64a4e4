# Finds Emscripten (Debian's package, or an emsdk whose em++ is on the path or in $EMSDK) and hands over to its own
# toolchain file.
if(DEFINED ENV{EMSDK})
  set(emscripten_roots "$ENV{EMSDK}/upstream/emscripten")
else()
  find_program(FOGSHEET_EMXX em++ PATHS /usr/share/emscripten)
  file(REAL_PATH "${FOGSHEET_EMXX}" emxx)
  cmake_path(GET emxx PARENT_PATH emxx_folder)
  set(emscripten_roots "${emxx_folder}" /usr/share/emscripten)
endif()
foreach(root ${emscripten_roots})
  if(EXISTS "${root}/cmake/Modules/Platform/Emscripten.cmake")
    include("${root}/cmake/Modules/Platform/Emscripten.cmake")
    break()
  endif()
endforeach()
if(NOT EMSCRIPTEN)
  message(FATAL_ERROR "Emscripten was not found: install the package emscripten, or set EMSDK to an emsdk folder")
endif()

# Debian's em++ asks node for acorn when it links; a node that is not Debian's own looks for it in the wrong place.
if(EXISTS /usr/share/nodejs/acorn AND NOT CMAKE_CXX_LINKER_LAUNCHER)
  set(CMAKE_CXX_LINKER_LAUNCHER "${CMAKE_COMMAND};-E;env;NODE_PATH=/usr/share/nodejs")
endif()
