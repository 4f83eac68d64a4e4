#include "core/document/rose_actions.h"

#include <algorithm>
#include <utility>

#include "core/document/checks.h"

namespace fogsheet {
namespace {

// A rose takes a fifth of the sheet's smaller side on each hand and leaves the middle free; 44 mm is as large as is useful
// to a hand-held edge. Its star stands past the outer ring.
constexpr double k_new_rose_mm = 44;
constexpr double k_new_rose_share = 0.21;
constexpr double k_rose_with_star = 1.12;
constexpr double k_rose_clear_mm = 4;

Problem rose_unknown(RoseId id) { return {.fault = Fault::rose_unknown, .texts = {std::to_string(id.value)}}; }

Result<double> checked_radius(double radius_mm) {
  const Result<double> radius = checks::number("rose's radius", radius_mm, k_least_rose_radius_mm, k_most_rose_radius_mm);
  if (!radius) return radius;
  return from_parts(whole_parts(*radius, k_parts_per_mm), k_parts_per_mm);
}

Act act_of(const RoseChange& change) {
  if (change.at && !change.radius_mm && !change.own_place) return Act::move_rose;
  return Act::change_rose;
}

}  // namespace

Rose corner_rose(const Projection& projection, RoseId id) {
  const SheetRect& neat = projection.neat_line();
  const double share_mm = k_new_rose_share * std::min(neat.width_mm(), neat.height_mm());
  const double radius_mm = from_parts(whole_parts(std::min(k_new_rose_mm, share_mm), k_parts_per_mm), k_parts_per_mm);
  const double from_corner_mm = k_rose_with_star * radius_mm + k_rose_clear_mm;
  const SheetPoint centre{neat.right_mm - from_corner_mm, neat.bottom_mm - from_corner_mm};
  return {.id = id, .at = quantise(projection.to_position(centre)), .radius_mm = radius_mm};
}

Result<RoseId> add_rose(History& history, double lat_deg, double lon_deg, double radius_mm) {
  Document next = history.now();
  const Result<GridPosition> at = checks::place(next, {}, lat_deg, lon_deg);
  if (!at) return at.problem();
  const Result<double> radius = checked_radius(radius_mm);
  if (!radius) return radius.problem();
  if (!checks::has_room(next, next.roses.size(), k_most_roses)) return checks::table_full("roses", k_most_roses);
  const Rose rose{.id = {next.next_id++}, .at = *at, .radius_mm = *radius};
  next.roses = next.roses.with(rose);
  history.commit(std::move(next), {Act::add_rose, {}});
  return rose.id;
}

Result<Done> change_rose(History& history, RoseId id, const RoseChange& change) {
  Document next = history.now();
  const Rose* found = next.roses.find(id);
  if (!found) return rose_unknown(id);
  Rose rose = *found;
  if (change.at) {
    const Result<GridPosition> at = checks::place(next, {}, change.at->lat_deg, change.at->lon_deg);
    if (!at) return at.problem();
    rose.at = *at;
  }
  if (change.radius_mm) {
    const Result<double> radius = checked_radius(*change.radius_mm);
    if (!radius) return radius.problem();
    rose.radius_mm = *radius;
  }
  if (change.own_place) rose.own_place = *change.own_place;
  next.roses = next.roses.replaced(rose);
  history.commit(std::move(next), {act_of(change), {}});
  return Done{};
}

Result<Done> remove_rose(History& history, RoseId id) {
  Document next = history.now();
  if (!next.roses.find(id)) return rose_unknown(id);
  next.roses = next.roses.without(id);
  history.commit(std::move(next), {Act::remove_rose, {}});
  return Done{};
}

}  // namespace fogsheet
