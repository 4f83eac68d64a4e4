#include "core/passage/danger_pass.h"

#include <algorithm>
#include <optional>

namespace fogsheet {
namespace {

constexpr double k_within_reach = 3;

DangerPass pass_of(const Document& document, const PassagePlan& plan, std::size_t index, const Mark& danger) {
  const PlannedLeg& leg = plan.legs[index];
  const RhumbLeg to = rhumb_inverse(place_of(document, leg.from), unquantise(danger.at));
  const PlaneVector line = along(leg.rhumb.course), there = along(to.course, to.distance_nm);
  const double run_nm = leg.rhumb.distance_nm;
  DangerPass pass{.danger = danger.id, .leg = index, .along_nm = std::clamp(dot(line, there), 0.0, run_nm)};
  const double across = to_starboard(line, there);
  pass.side = across < 0 ? Side::port : Side::starboard;
  pass.off_nm = length_of(there - pass.along_nm * line);
  pass.clear_nm = pass.off_nm - danger.radius_nm;
  const double at_start = leg.doubt.at_start.across_nm, at_end = leg.doubt.sd.across_nm;
  pass.doubt_nm = k_sds_for_19_in_20 * (at_start + (at_end - at_start) * pass.along_nm / run_nm);
  return pass;
}

}  // namespace

std::vector<DangerPass> danger_passes(const Document& document, const PassagePlan& plan) {
  std::vector<DangerPass> passes;
  for (const Mark& danger : document.marks) {
    if (danger.kind != MarkKind::danger) continue;
    std::optional<DangerPass> nearest;
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
      if (plan.legs[i].problem || plan.legs[i].speed_kn == 0) continue;
      const DangerPass pass = pass_of(document, plan, i, danger);
      if (!nearest || pass.clear_nm / pass.doubt_nm < nearest->clear_nm / nearest->doubt_nm) nearest = pass;
    }
    if (nearest && nearest->clear_nm < k_within_reach * nearest->doubt_nm) passes.push_back(*nearest);
  }
  std::stable_sort(passes.begin(), passes.end(), [](const DangerPass& a, const DangerPass& b) { return a.clear_nm / a.doubt_nm < b.clear_nm / b.doubt_nm; });
  return passes;
}

}  // namespace fogsheet
