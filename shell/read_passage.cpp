#include "shell/read_passage.h"

#include "shell/words.h"
#include "shell/words_of_passage.h"

namespace fogsheet {
namespace {

std::string id_text(std::uint32_t id) { return std::to_string(id); }

Value iso(double seconds) { return iso_instant(nearest_instant(seconds)); }

Value stream_value(StreamEntry entry, const Stream& stream) {
  if (entry == StreamEntry::not_entered) return "not entered";
  return Value::object({{"set_deg", stream.set.deg()}, {"drift_kn", stream.drift_kn}});
}

Value row_value(const Chain& chain, ChainTerm term) {
  const ChainRow* row = row_of(chain, term);
  return row ? Value(row->exact_deg) : Value();
}

Value leg_value(const Session& session, const Passage& passage, const PassagePlan& plan, const PlannedLeg& leg) {
  const PassageLeg& entered = passage.legs[leg.place];
  Value value = Value::object({{"leg", id_text(entered.leg.value)}, {"from", id_text(leg.from.value)}, {"to", id_text(leg.to.value)}});
  if (leg.problem) {
    value.set("problem", words::sentence(*leg.problem));
    return value;
  }
  const Rounding rounding = session.settings.rounding;
  const HeldCourse& course = leg.courses.front();
  Value shown = Value::object({{"hold", words::course_to_hold(leg, rounding).text()}, {"sum", words::chain_line(course.chain, rounding)}, {"stream", words::stream_words(leg, course.stream)}});
  value.set("course_to_steer_true_deg", course.heading->deg());
  value.set("course_to_steer_magnetic_deg", row_value(course.chain, ChainTerm::magnetic_direction));
  value.set("course_to_steer_compass_deg", course.compass ? Value(course.compass->deg()) : Value());
  value.set("courses", static_cast<double>(leg.courses.size()));
  value.set("distance_nm", leg.rhumb.distance_nm);
  value.set("stream", stream_value(leg.stream, course.stream));
  if (leg.speed_kn > 0) {
    value.set("water_track_deg", leg.run.water_track.deg());
    value.set("speed_kn", leg.speed_kn);
    value.set("speed_over_ground_kn", leg.run.speed_over_ground_kn);
    value.set("hours", leg.run.hours);
    value.set("either_side_nm", to_either_side_nm(leg.doubt));
  }
  if (plan.has_times && leg.speed_kn > 0) {
    value.set("departure", iso(leg.run.departure_s));
    value.set("arrival", iso(leg.run.arrival_s));
    if (leg.window) value.set("window", Value::object({{"from", iso(leg.window->from_s)}, {"to", iso(leg.window->to_s)}}));
    shown.set("expect", words::clock(passage, leg.run.arrival_s));
    shown.set("window", words::window(passage, leg));
  }
  value.set("shown", shown);
  return value;
}

Value plan_value(const Session& session, const Passage& passage, const PassagePlan& plan) {
  Value legs = Value::list();
  for (const PlannedLeg& leg : plan.legs) legs.add(leg_value(session, passage, plan, leg));
  Value value = Value::object({{"legs", legs}, {"distance_nm", plan.distance_nm}, {"hours", plan.complete ? Value(plan.hours) : Value()}});
  if (plan.problem) value.set("problem", words::sentence(*plan.problem));
  return value;
}

}  // namespace

Value passage_value(const Session& session) {
  const Passage* passage = session.passage();
  if (!passage) return Value::object();
  Value value = plan_value(session, *passage, session.plan());
  value.set("id", id_text(passage->id.value));
  value.set("name", words::passage_title(session.document(), *passage));
  value.set("speed_kn", passage->speed_kn ? Value(*passage->speed_kn) : Value());
  if (passage->home_time) value.set("home", plan_value(session, *passage, session.plan(true)));
  const UnderWay state = under_way(*passage);
  value.set("under_way", Value::object({{"departed", state.departed}, {"leg", static_cast<double>(state.leg)}}));
  Value all = Value::list();
  for (const Passage& each : session.document().passages->all) all.add(Value::object({{"id", id_text(each.id.value)}, {"name", words::passage_title(session.document(), each)}}));
  value.set("passages", all);
  return value;
}

}  // namespace fogsheet
