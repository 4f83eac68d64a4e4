#include "core/passage/passage_plan.h"

#include <algorithm>
#include <utility>

namespace fogsheet {
namespace {

TidalStreams streams_of(const Passage& passage, const PlannedStream& stream) {
  TidalStreams streams;
  if (stream.entered() == StreamEntry::steady) {
    streams.kind = TidalStreams::Kind::steady;
    streams.steady = stream.steady;
  } else if (stream.entered() == StreamEntry::by_hour) {
    streams.kind = TidalStreams::Kind::by_hours;
    streams.hours = stream.hours;
    for (const Tide& tide : passage.tides)
      if (tide.is_high) streams.high_waters.push_back(instant_of(tide.date, tide.time, passage.zone));
  }
  return streams;
}

class Planner {
 public:
  Planner(const Document& document, const Passage& passage, const PlanNeeds& needs, bool homeward, const PassagePlan* before) : document_(document), passage_(passage), needs_(needs), before_(before) {
    plan_.homeward = homeward;
    lay_off();
  }

  PassagePlan run(bool by_deck_log) {
    set_departure();
    double at_s = departure_s_;
    for (PlannedLeg& leg : plan_.legs) {
      if (by_deck_log) at_s = begun_s(leg, at_s);
      if (!leg.problem && !plan_.has_times && leg.stream == StreamEntry::by_hour) leg.problem = Problem{.fault = entered_time() ? Fault::time_not_worked_out : Fault::time_not_entered};
      if (!leg.problem) sail(leg, at_s);
      if (by_deck_log && !leg.problem) end_as_logged(leg);
      if (leg.problem) plan_.has_times = false;  // nor after it
      else at_s = leg.run.arrival_s;
    }
    add_up();
    work_out_doubt(by_deck_log);
    return std::move(plan_);
  }

 private:
  // -- the legs as they lie

  void lay_off() {
    if (!passage_.speed_kn && std::any_of(passage_.legs.begin(), passage_.legs.end(), [](const PassageLeg& leg) { return !leg.speed_kn; })) plan_.problem = Problem{.fault = Fault::speed_not_entered};
    plan_.legs.resize(passage_.legs.size());
    drawn_.resize(passage_.legs.size());
    const Mark* at = nullptr;  // where the leg before ends
    for (std::size_t i = 0; i < plan_.legs.size(); ++i) {
      plan_.legs[i].place = plan_.homeward ? plan_.legs.size() - 1 - i : i;
      at = lay_off(plan_.legs[i], at, before_ && i < before_->legs.size() ? &before_->legs[i] : nullptr);
    }
  }

  /// Gives the mark it ends at; none for a leg that was taken off the sheet.
  const Mark* lay_off(PlannedLeg& leg, const Mark* at, const PlannedLeg* before) {
    const PassageLeg& entered = passage_.legs[leg.place];
    const double number = static_cast<double>(leg.place) + 1;
    const Leg* drawn = document_.legs.find(entered.leg);
    if (!drawn) {
      leg.problem = Problem{.fault = Fault::passage_leg_gone, .texts = {entered.name}, .numbers = {number}};
      return nullptr;
    }
    drawn_[leg.place] = drawn;
    leg.from = plan_.homeward ? drawn->to : drawn->from;
    leg.to = plan_.homeward ? drawn->from : drawn->to;
    const Mark& from = at && at->id == leg.from ? *at : *document_.marks.find(leg.from);
    const Mark& to = *document_.marks.find(leg.to);
    leg.from_at = from.at;
    leg.to_at = to.at;
    const bool lies_as_before = before && before->from_at == leg.from_at && before->to_at == leg.to_at;
    leg.rhumb = lies_as_before ? before->rhumb : rhumb_inverse(unquantise(leg.from_at), unquantise(leg.to_at));
    if (at && at->id != leg.from) leg.problem = Problem{.fault = Fault::passage_legs_apart, .texts = {at->name, from.name}, .numbers = {number}};
    leg.leeway = entered.leeway ? entered.leeway : passage_.leeway;
    leg.way = entered.way.value_or(passage_.way);
    const PlannedStream& stream = entered.stream ? *entered.stream : passage_.stream;
    leg.stream = stream.entered();
    leg.stream_source = stream.source;
    const std::optional<double> speed = entered.speed_kn ? entered.speed_kn : passage_.speed_kn;
    leg.speed_kn = speed.value_or(0);
    if (!leg.problem && !speed && leg.stream != StreamEntry::not_entered) leg.problem = Problem{.fault = Fault::speed_not_entered};
    leg.plan = {.track = leg.rhumb.course, .distance_nm = leg.rhumb.distance_nm, .speed_kn = leg.speed_kn, .way = leg.way, .streams = timetable(stream, leg)};
    return &to;
  }

  /// Made once for the passage's stream, and once for each leg that has its own.
  const StreamTimetable* timetable(const PlannedStream& stream, PlannedLeg& leg) {
    if (&stream == &passage_.stream && of_passage_) return of_passage_;
    TidalStreams streams = streams_of(passage_, stream);
    if (const std::optional<Problem> fault = fault_of(streams)) {
      if (!leg.problem) leg.problem = *fault;
      return nullptr;
    }
    plan_.timetables.push_back(std::make_shared<const StreamTimetable>(streams));
    const StreamTimetable* made = plan_.timetables.back().get();
    if (&stream == &passage_.stream) of_passage_ = made;
    return made;
  }

  // -- times

  const std::optional<ClockTime>& entered_time() const { return plan_.homeward ? passage_.home_time : passage_.time; }

  void set_departure() {
    if (!entered_time()) return;
    const Date date = plan_.homeward ? passage_.home_date.value_or(passage_.date) : passage_.date;
    departure_s_ = static_cast<double>(instant_of(date, *entered_time(), passage_.zone).seconds);
    plan_.has_times = true;
    if (plan_.homeward || !passage_.is_arrival) return;
    if (const std::optional<double> departure_s = departure_for_arrival(departure_s_)) {
      departure_s_ = *departure_s;
    } else {
      departure_s_ = 0;
      plan_.has_times = false;
    }
  }

  /// None where a leg has no end: it says why.
  std::optional<double> departure_for_arrival(double arrival_s) {
    std::vector<LegPlan> legs;
    for (const PlannedLeg& leg : plan_.legs) {
      if (leg.problem) return std::nullopt;
      legs.push_back(leg.plan);
    }
    const Result<double> departure = departure_for(legs, arrival_s);
    if (departure) return *departure;
    if (!plan_.problem) plan_.problem = departure.problem();
    return std::nullopt;
  }

  void sail(PlannedLeg& leg, double departure_s) {
    if (leg.speed_kn == 0) return steer_only(leg);
    Result<LegRun> run = run_leg(leg.plan, departure_s);
    if (!run) {
      leg.problem = run.problem();
      return;
    }
    leg.run = std::move(run).value();
    if (leg.way == Way::one_heading || leg.run.pieces.size() == 1) {
      leg.courses.push_back(held(leg, leg.run.departure_s, leg.run.arrival_s, leg.run.water_track, leg.run.net_stream));
      return;
    }
    for (const RunPiece& piece : leg.run.pieces) leg.courses.push_back(held(leg, piece.from_s, piece.to_s, piece.water_track, stream_of(piece.stream_kn)));
  }

  /// Without a speed there is a course where there is no stream.
  void steer_only(PlannedLeg& leg) {
    leg.run = {};
    leg.courses.push_back(held(leg, 0, 0, leg.rhumb.course, {}));
  }

  HeldCourse held(const PlannedLeg& leg, double from_s, double to_s, TrueDirection water_track, Stream stream) {
    HeldCourse course{.from_s = from_s, .to_s = to_s, .stream = stream, .stream_entered = leg.stream != StreamEntry::not_entered};
    ChainCorrections corrections{.card = needs_.card};
    if (course.stream_entered) corrections.stream_deg = reduce_difference_deg(leg.rhumb.course.deg() - water_track.deg());
    if (leg.leeway) corrections.leeway = leeway_from_wind(water_track, TrueDirection(leg.leeway->wind_from_deg), leg.leeway->angle_deg);
    course.heading = leg.leeway ? heading_for(water_track, *corrections.leeway) : water_track;
    const VariationInUse& variation = needs_.variation_of(*drawn_[leg.place]);
    if (!variation.used) return course;
    corrections.variation = *variation.used;
    course.chain = chain_to_compass(leg.rhumb.course, corrections, needs_.rounding);
    if (const ChainRow* compass = row_of(course.chain, ChainTerm::compass_direction)) course.compass = CompassDirection(compass->exact_deg);
    return course;
  }

  // -- by the deck log

  double begun_s(const PlannedLeg& leg, double planned_s) {
    const DeckEntry* entry = turn_entry(passage_, leg.place);
    if (!entry) return planned_s;
    plan_.has_times = true;
    return static_cast<double>(instant_of(passage_, *entry).seconds);
  }

  void end_as_logged(PlannedLeg& leg) {
    if (const DeckEntry* entry = turn_entry(passage_, leg.place + 1)) leg.run.arrival_s = static_cast<double>(instant_of(passage_, *entry).seconds);
  }

  // -- sums and doubts

  void add_up() {
    plan_.complete = !plan_.legs.empty();
    for (const PlannedLeg& leg : plan_.legs) {
      if (leg.problem) plan_.complete = false;
      if (leg.problem && leg.problem->fault == Fault::passage_leg_gone) continue;
      plan_.distance_nm += leg.rhumb.distance_nm;
      if (!leg.problem) plan_.hours += leg.run.hours;
      if (leg.speed_kn == 0) plan_.has_times = false;
    }
  }

  void work_out_doubt(bool by_deck_log) {
    std::vector<DoubtLeg> legs;
    for (const PlannedLeg& leg : plan_.legs) {
      if (leg.problem || leg.speed_kn == 0) break;
      legs.push_back(doubt_of(leg, by_deck_log));
    }
    const std::vector<LegDoubt> doubts = passage_doubt(legs, {.variation_deg = variation_sd_deg(legs.empty() ? nullptr : &plan_.legs.front())});
    for (std::size_t i = 0; i < doubts.size(); ++i) {
      plan_.legs[i].doubt = doubts[i];
      plan_.legs[i].window = time_window(plan_.legs[i].run.arrival_s, doubts[i], plan_.legs[i].run.speed_at_arrival_kn);
    }
  }

  double variation_sd_deg(const PlannedLeg* leg) const {
    return leg ? needs_.variation_of(*drawn_[leg->place]).uncertainty_deg : 0;
  }

  DoubtLeg doubt_of(const PlannedLeg& leg, bool by_deck_log) const {
    DoubtLeg doubt{.track = leg.rhumb.course, .water_track = leg.run.water_track, .through_water_nm = leg.run.through_water_nm, .hours = (leg.run.arrival_s - leg.run.departure_s) / k_seconds_per_hour};
    const std::optional<CompassDirection>& compass = leg.courses.front().compass;
    if (document_.compass && compass) doubt.compass_sd_deg = deviation_sd_deg(*document_.compass, *compass);
    if (leg.stream != StreamEntry::not_entered && !leg.run.gap) doubt.stream_sd_kn = k_stream_sd_kn;
    if (leg.leeway) doubt.leeway_to = leeway_from_wind(leg.run.water_track, TrueDirection(leg.leeway->wind_from_deg), 1).deg < 0 ? -1 : 1;
    const DeckEntry* ended = by_deck_log ? turn_entry(passage_, leg.place + 1) : nullptr;
    if (ended && ended->kind == DeckEntryKind::seen) doubt.seen_sd_nm = k_start_sd_nm;
    return doubt;
  }

  const Document& document_;
  const Passage& passage_;
  const PlanNeeds& needs_;
  const PassagePlan* before_;
  PassagePlan plan_;
  std::vector<const Leg*> drawn_;  // by place; null where there is none any more
  const StreamTimetable* of_passage_ = nullptr;
  double departure_s_ = 0;
};

}  // namespace

Instant instant_of(const Passage& passage, const DeckEntry& entry) { return instant_of(entry.date, entry.time, passage.zone); }

PassagePlan plan_of(const Document& document, const Passage& passage, const PlanNeeds& needs, bool homeward, const PassagePlan* before) {
  PassagePlan plan = Planner(document, passage, needs, homeward, before).run(false);
  if (!homeward || !plan.has_times || plan.problem) return plan;
  const PassagePlan out = plan_of(document, passage, needs);
  if (out.has_times && out.complete && out.legs.back().run.arrival_s > plan.legs.front().run.departure_s) {
    const LocalTime arrival = local_time(nearest_instant(out.legs.back().run.arrival_s), passage.zone);
    plan.problem = Problem{.fault = Fault::home_before_arrival, .texts = {print_clock_time(arrival.time)}};
  }
  return plan;
}

PassagePlan plan_under_way(const Document& document, const Passage& passage, const PlanNeeds& needs) {
  return Planner(document, passage, needs, false, nullptr).run(true);
}

}  // namespace fogsheet
