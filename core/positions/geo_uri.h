// Positions as `geo:` links: geo:50.205667,-4.946333;u=40 . Source: RFC 5870.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/positions/position.h"

namespace fogsheet {

struct GeoUri {
  struct Parameter {
    std::string name;   // in small letters
    std::string value;  // with %-signs resolved; empty where there is none
    bool has_value = false;

    bool operator==(const Parameter&) const = default;
  };

  Position position;  // in wgs84 latitude [-90, 90], longitude [-180, 180]; in other systems whatever they mean
  std::optional<double> altitude_m;
  std::optional<double> uncertainty_m;
  std::string system = "wgs84";       // the label of the reference system, in small letters
  std::vector<Parameter> parameters;  // others than crs and u

  bool is_wgs84() const { return system == "wgs84"; }
};

/// Exactly the grammar of section 3.3, with the ranges of WGS 84 where that is the system. Faults: entry_empty,
/// entry_unreadable, entry_part_missing, latitude_out_of_range, longitude_out_of_range.
Result<GeoUri> parse_geo_uri(std::string_view text);

/// The equality of section 6.4, within one system: numbers by value, longitude of no meaning at a pole, 180 equal to -180, parameters in any
/// order, their values compared letter by letter. An altitude or uncertainty given equals only one given.
bool equal(const GeoUri& a, const GeoUri& b);

/// With six decimals, about 0.1 m, which is enough to find the same GridPosition again.
std::string print_geo_uri(GridPosition position);

}  // namespace fogsheet
