// Positions typed or pasted: whatever the text, a position on the earth or a reason; what is printed of a position is read
// back as it.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "core/base/entry_tokens.h"
#include "core/positions/position_text.h"
#include "tests/fuzz/checks.h"

using namespace fogsheet;

namespace {

void check_position(std::string_view text) {
  const Result<Position> position = parse_position(text);
  check_problem(position, text, parse_position);
  if (!position.ok()) return;
  must(std::abs(position->lat_deg) <= 90);
  must(position->lon_deg >= -180 && position->lon_deg < 180);
  if (std::abs(position->lat_deg) > k_max_sheet_latitude_deg) return;
  const GridPosition grid = quantise(*position);
  for (const PositionForm form : {PositionForm::degrees_minutes, PositionForm::degrees_minutes_seconds, PositionForm::decimal_degrees,
                                  PositionForm::iso6709, PositionForm::geo_uri}) {
    const Result<Position> again = parse_position(print_position(grid, form));
    must(again.ok() && quantise(*again) == grid);
  }
}

}  // namespace

// The first byte says which reader an input is for.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0 || size > k_longest_entry + 20) return 0;  // longer ones are refused for their length alone
  const std::string_view text(reinterpret_cast<const char*>(data + 1), size - 1);
  switch (data[0] % 4) {
    case 0: {
      const Result<double> lat_deg = parse_latitude_deg(text);
      check_problem(lat_deg, text, parse_latitude_deg);
      must(!lat_deg.ok() || std::abs(*lat_deg) <= 90);
      break;
    }
    case 1: {
      const Result<double> lon_deg = parse_longitude_deg(text);
      check_problem(lon_deg, text, parse_longitude_deg);
      must(!lon_deg.ok() || (*lon_deg >= -180 && *lon_deg < 180));
      break;
    }
    default:
      check_position(text);
  }
  return 0;
}
