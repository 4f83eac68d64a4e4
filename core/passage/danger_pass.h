// How near a leg passes to the dangers that are marked, against how far out the boat may be by then.
#pragma once

#include <vector>

#include "core/passage/pass_mark.h"
#include "core/passage/passage_plan.h"

namespace fogsheet {

struct DangerPass {
  MarkId danger;
  std::size_t leg = 0;      // in the plan's order
  Side side = Side::port;   // on which it lies
  double off_nm = 0;        // of its middle from the line, where it is nearest
  double clear_nm = 0;      // of its ring; below 0 where the line cuts it
  double along_nm = 0;      // from the leg's start
  double doubt_nm = 0;      // how far to either side the boat may be there, 19 in 20
  bool in_doubt() const { return clear_nm < doubt_nm; }
};

/// For each danger the leg that passes nearest to it for the doubt there, nearest first; those within reach: clear by less than
/// three times the doubt. Flat about the leg. Legs with a problem, and without a speed, pass nothing.
std::vector<DangerPass> danger_passes(const Document& document, const PassagePlan& plan);

}  // namespace fogsheet
