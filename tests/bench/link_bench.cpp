// Routes and their texts, for link.bench.mjs: for each route a line "MARKS CHARACTERS LEAST_CHARACTERS GPX_BYTES", then its GPX.
#include <cstdio>

#include "core/exchange/gpx_writer.h"
#include "core/formats/document_text.h"
#include "core/formats/marks_and_lines.h"
#include "tests/bench/link_routes.h"

int main() {
  constexpr int k_routes_a_size = 20;
  for (const int marks : {5, 10, 20, 50})
    for (std::uint64_t seed = 1; seed <= k_routes_a_size; ++seed) {
      const fogsheet::Document route = fogsheet::seeded_route(seed, marks);
      const std::string gpx = fogsheet::gpx_text(fogsheet::marks_and_lines_of(route));
      std::printf("%d %zu %.2f %zu\n%s", marks, fogsheet::encode_document(route).size(), fogsheet::least_characters(route), gpx.size(), gpx.c_str());
    }
}
