// What a passage comes to: for each leg the course to steer with its sum, distance, speeds, times and how wrong they may be.
// Worked out anew from the document whenever it changes, so that a mark that is moved changes all that follows from it.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "core/directions/chain.h"
#include "core/document/document.h"
#include "core/earth/rhumb.h"
#include "core/passage/leg_run.h"
#include "core/passage/passage_doubt.h"

namespace fogsheet {

/// A heading that is held for a while: all of the leg, or an hour of it.
struct HeldCourse {
  double from_s = 0;  // seconds since 1970, where the leg has times
  double to_s = 0;
  Stream stream;      // that is allowed for
  bool stream_entered = false;
  Chain chain;        // from the ground track, as far as it is known
  std::optional<TrueDirection> heading;  // unrounded, with leeway allowed for
  std::optional<CompassDirection> compass;  // unrounded; none without a card or an answer
};

/// A leg as it is run: on the way home the other way round.
struct PlannedLeg {
  std::size_t place = 0;  // among the passage's legs
  std::optional<Problem> problem;  // why what follows is not there; all below it but the ends and the rhumb line
  MarkId from;
  MarkId to;
  GridPosition from_at;
  GridPosition to_at;
  RhumbLeg rhumb;

  double speed_kn = 0;  // through the water
  std::optional<PlannedLeeway> leeway;
  StreamEntry stream = StreamEntry::not_entered;
  std::string stream_source;
  Way way = Way::one_heading;
  LegPlan plan;
  LegRun run;                       // its departure_s is nought where the passage has no times
  std::vector<HeldCourse> courses;  // in their order, at least one; one alone on one heading
  LegDoubt doubt;
  std::optional<TimeWindow> window;  // at its end
};

struct PassagePlan {
  bool homeward = false;
  bool has_times = false;  // a departure is known
  std::vector<PlannedLeg> legs;  // in the order they are run
  std::optional<Problem> problem;  // of the passage as a whole: no speed, no time, home before arrival
  double distance_nm = 0;          // of the legs that are on the sheet
  double hours = 0;
  bool complete = false;           // no leg has a problem

  /// Streams by what was entered; the legs' plans refer to them.
  std::vector<std::shared_ptr<const StreamTimetable>> timetables;
};

/// What a plan needs besides the document.
struct PlanNeeds {
  std::function<const VariationInUse&(const Leg&)> variation_of;
  const DeviationCard* card = nullptr;  // the document's
  Rounding rounding = Rounding::whole_degrees;
};

/// As entered. @param homeward  the way back, from the last leg's end to the first one's start, from its own time.
/// @param before  an earlier plan, whose rhumb lines serve where legs still lie as they did: most of the time is theirs. Or null
PassagePlan plan_of(const Document& document, const Passage& passage, const PlanNeeds& needs, bool homeward = false, const PassagePlan* before = nullptr);

/// From what the deck log has on: legs that have ended begin and end when they did, what was seen takes the doubt away.
PassagePlan plan_under_way(const Document& document, const Passage& passage, const PlanNeeds& needs);

/// When a line of the deck log was written.
Instant instant_of(const Passage& passage, const DeckEntry& entry);

}  // namespace fogsheet
