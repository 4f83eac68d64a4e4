#include "core/base/units.h"

namespace fogsheet {

namespace {

enum class UnitKind { length, speed, angle };

struct Unit {
  std::string_view name;
  std::string_view symbol;
  UnitKind kind;
  double size;  // in metres, metres per second, degrees
};

// Sources: BIPM SI Brochure (9th ed., 2019), tables of non-SI units; agreement on the yard and pound, 1959; the US cable of
// 720 ft, the fathom of 6 ft, the UK nautical mile of 6080 ft: common usage.
constexpr Unit k_units[] = {
    {"metre", "m", UnitKind::length, 1},
    {"nautical mile", "nm", UnitKind::length, k_metres_per_nm},
    {"UK nautical mile (old)", "", UnitKind::length, 6080 * k_metres_per_foot},
    {"statute mile", "mi", UnitKind::length, 5280 * k_metres_per_foot},
    {"cable (international usage)", "cable", UnitKind::length, k_metres_per_cable},
    {"cable (US customary)", "", UnitKind::length, 720 * k_metres_per_foot},
    {"fathom", "fm", UnitKind::length, 6 * k_metres_per_foot},
    {"foot", "ft", UnitKind::length, k_metres_per_foot},
    {"metre per second", "m/s", UnitKind::speed, 1},
    {"knot", "kn", UnitKind::speed, k_metres_per_second_per_knot},
    {"degree", "deg", UnitKind::angle, 1},
    {"point of the compass", "point", UnitKind::angle, 360.0 / 32},
};

const Unit* find_unit(std::string_view name) {
  if (name.empty()) return nullptr;
  for (const Unit& unit : k_units)
    if (unit.name == name || unit.symbol == name) return &unit;
  return nullptr;
}

}  // namespace

std::optional<double> unit_in(std::string_view unit, std::string_view in) {
  const Unit* const from = find_unit(unit);
  const Unit* const to = find_unit(in);
  if (from == nullptr || to == nullptr || from->kind != to->kind) return std::nullopt;
  return from->size / to->size;
}

}  // namespace fogsheet
