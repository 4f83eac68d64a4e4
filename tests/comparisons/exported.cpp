// Seeded sheets in each format of other programs, as files in a folder: exported FOLDER COUNT.
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>

#include "core/exchange/exchange.h"
#include "tests/core/random_acts.h"

int main(int count, char** arguments) {
  using namespace fogsheet;
  if (count != 3) return 1;
  for (int seed = 1; seed <= std::atoi(arguments[2]); ++seed) {
    Random random(static_cast<std::uint64_t>(seed));
    const MarksAndLines all = marks_and_lines_of(random_document(random, 60));
    for (const char* format : {"gpx", "geojson", "csv"}) std::ofstream(std::string(arguments[1]) + "/" + std::to_string(seed) + "." + format, std::ios::binary) << file_of(all, format);
    std::printf("%zu %zu\n", all.marks.size(), all.lines.size());
  }
}
