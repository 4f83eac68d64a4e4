// Changes of the roses on a sheet.
#pragma once

#include <optional>

#include "core/base/result.h"
#include "core/document/history.h"

namespace fogsheet {

/// Faults: latitude/longitude_out_of_range, place_off_sheet, number_out_of_range ("rose's radius" in mm), table_full.
Result<RoseId> add_rose(History& history, double lat_deg, double lon_deg, double radius_mm);

/// What a rose is made of. Each is left as it is when not given.
struct RoseChange {
  std::optional<Position> at;  // of its centre
  std::optional<double> radius_mm;
  std::optional<bool> own_place;
};

/// Faults: rose_unknown, latitude/longitude_out_of_range, place_off_sheet, number_out_of_range.
Result<Done> change_rose(History& history, RoseId rose, const RoseChange& change);

/// A sheet may do without any. Faults: rose_unknown.
Result<Done> remove_rose(History& history, RoseId rose);

/// The rose of a new sheet: in the lower right corner, 44 mm or as a fifth of the sheet's smaller side allows.
Rose corner_rose(const Projection& projection, RoseId id);

}  // namespace fogsheet
