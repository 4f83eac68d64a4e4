# Turns the official coefficient files into comma-separated rows for core/magnetic/coefficients.cpp.
# cmake -DWMM=wmm2025.cof -DIGRF=igrf14coeffs.txt -DOUT=FOLDER -P tabulate.cmake
# A row is {degree, order, numbers ...}; of IGRF there is one list of g rows and one of h rows, as in the file.

function(write_rows out rows)
  list(JOIN rows ",\n" text)
  file(WRITE "${out}" "${text}\n")
endfunction()

# "  1  0  -29351.8  0.0  12.0  0.0" -> {1, 0, -29351.8, 0.0, 12.0, 0.0}; the two lines of 9s end the file.
file(STRINGS "${WMM}" lines REGEX "^ +[0-9]+ +[0-9]+ +-?[0-9]+\\.[0-9]+ ")
set(rows "")
foreach(line IN LISTS lines)
  string(STRIP "${line}" line)
  string(REGEX REPLACE " +" ", " line "${line}")
  list(APPEND rows "{${line}}")
endforeach()
list(LENGTH rows count)
if(NOT count EQUAL 90)
  message(FATAL_ERROR "${WMM}: ${count} coefficient rows, 90 expected")
endif()
write_rows("${OUT}/wmm2025.inc" "${rows}")

# "g  1  0 -31543 ... 12.6" -> {1, 0, -31543, ..., 12.6}
foreach(kind g h)
  file(STRINGS "${IGRF}" lines REGEX "^${kind} ")
  set(rows "")
  foreach(line IN LISTS lines)
    string(SUBSTRING "${line}" 1 -1 line)
    string(STRIP "${line}" line)
    string(REGEX REPLACE "[ \t\r]+" ", " line "${line}")
    list(APPEND rows "{${line}}")
  endforeach()
  list(LENGTH rows count)
  if((kind STREQUAL "g" AND NOT count EQUAL 104) OR (kind STREQUAL "h" AND NOT count EQUAL 91))
    message(FATAL_ERROR "${IGRF}: ${count} rows of ${kind}, 104 of g and 91 of h expected")
  endif()
  write_rows("${OUT}/igrf14_${kind}.inc" "${rows}")
endforeach()
