#include "shell/stream_questions.h"

#include <algorithm>
#include <utility>

#include "core/base/number_text.h"
#include "core/base/quantity_text.h"
#include "core/base/utf8.h"
#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "core/passage/reckoning.h"
#include "core/passage/speed_time_distance.h"
#include "core/positions/position_figures.h"
#include "shell/direction.h"
#include "shell/passage_entries.h"
#include "shell/session.h"
#include "shell/typed_quantity.h"
#include "shell/words.h"
#include "shell/words_of_passage.h"

namespace fogsheet {
namespace {

constexpr double k_minutes_an_hour = 60;
constexpr double k_most_minutes = 72 * 60;

/// A direction by any north, true.
Result<TrueDirection> true_of(const Session& session, const std::string& text) {
  const Result<TypedDirection> typed = parse_direction(text);
  if (!typed) return typed.problem();
  return to_true_direction(session, typed->deg, typed->reference.value_or(Reference::true_north), session.facts().variation);
}

Result<double> minutes_of(const std::string& text) { return parse_plain_number("minutes", text, 0, k_most_minutes); }

/// Reads the fields that a question needs, and keeps whether all are there.
class Typed {
 public:
  explicit Typed(const Session& session) : session_(session) {}

  TrueDirection direction(std::string_view field) {
    return value<TrueDirection>(field, [&](const std::string& text) { return true_of(session_, text); });
  }
  double knots(std::string_view field) { return value<double>(field, typed_knots); }
  double nm(std::string_view field) { return value<double>(field, typed_nm); }
  double hours() { return value<double>("minutes", minutes_of) / k_minutes_an_hour; }
  Stream stream() { return {.set = direction("set"), .drift_kn = knots("drift")}; }
  const Mark* mark(std::string_view field) {
    const std::string text = question_text(session_, field);
    for (const Mark& mark : session_.document().marks)
      if (std::to_string(mark.id.value) == text) return &mark;
    return nullptr;
  }
  bool is_empty(std::string_view field) { return trimmed(question_text(session_, field)).empty(); }
  bool complete() const { return complete_; }

 private:
  template <class Value, class Parse>
  Value value(std::string_view field, Parse parse) {
    const std::string text = question_text(session_, field);
    if (!trimmed(text).empty())
      if (const Result<Value> read = parse(text)) return *read;
    complete_ = false;
    return {};
  }

  const Session& session_;
  bool complete_ = true;
};

std::string true_text(TrueDirection direction) { return print_direction(direction.deg(), Reference::true_north, Rounding::whole_degrees); }
std::string knots_text(double kn) { return print_fixed(kn, 1) + " kn"; }

Chain chain_of(const Session& session, TrueDirection heading) {
  return chain_from_true(heading, session.facts().variation.used, session.settings.rounding, session.facts().card_or_none());
}

StreamAnswer steered(const Session& session) {
  Typed typed(session);
  const TrueDirection track = typed.direction("track");
  const double speed_kn = typed.knots("speed");
  const Stream stream = typed.stream();
  StreamAnswer found;
  if (!typed.complete()) return found;
  const Result<CourseToSteer> steer = course_to_steer(track, speed_kn, stream);
  if (!steer) {
    found.problem = steer.problem();
    return found;
  }
  const double stream_deg = reduce_difference_deg(track.deg() - steer->water_track.deg());
  if (const std::optional<Variation>& variation = session.facts().variation.used)
    found.chain = chain_to_compass(track, {.stream_deg = stream_deg, .variation = *variation, .card = session.facts().card_or_none()}, session.settings.rounding);
  found.lines = {{"steer", true_text(steer->water_track), true}, {"speed over ground", knots_text(steer->speed_over_ground_kn)}};
  return found;
}

StreamAnswer made_good_of(const Session& session) {
  Typed typed(session);
  const Motion through_water{.course = typed.direction("heading"), .speed_kn = typed.knots("speed")};
  const Stream stream = typed.stream();
  StreamAnswer found;
  if (!typed.complete()) return found;
  const Motion ground = made_good(through_water, stream);
  found.lines = {{"over the ground", true_text(ground.course), true}, {"speed over ground", knots_text(ground.speed_kn)}};
  found.chain = chain_of(session, through_water.course);
  if (typed.is_empty("minutes")) return found;
  const double hours = typed.hours();
  if (!typed.complete()) return found;
  found.lines.push_back({"run over the ground", words::distance(ground.speed_kn * hours).text()});
  const Mark* from = typed.mark("from");
  if (!from) return found;
  const Result<Position> place = estimated_position(unquantise(from->at), through_water, stream, hours);
  if (!place) {
    found.problem = place.problem();
    return found;
  }
  found.place = *place;
  found.lines.push_back({"estimated position", position_figures(*place, 2), true});
  return found;
}

StreamAnswer stream_found(const Session& session) {
  Typed typed(session);
  const Motion through_water{.course = typed.direction("heading"), .speed_kn = typed.knots("speed")};
  const double hours = typed.hours();
  const Mark* from = typed.mark("from");
  const Mark* fix = typed.mark("fix");
  StreamAnswer found;
  if (!typed.complete() || !from || !fix) return found;
  const Result<Stream> stream = set_and_drift(unquantise(from->at), through_water, unquantise(fix->at), hours);
  if (!stream) {
    found.problem = stream.problem();
    return found;
  }
  found.stream = *stream;
  found.lines = {{"set", true_text(stream->set), true}, {"drift", knots_text(stream->drift_kn), true}};
  return found;
}

/// Any two give the third: the one that is empty.
StreamAnswer run_found(const Session& session) {
  Typed typed(session);
  StreamAnswer found;
  const bool no_distance = typed.is_empty("distance"), no_speed = typed.is_empty("speed"), no_time = typed.is_empty("minutes");
  if (no_distance + no_speed + no_time != 1) return found;
  const double nm = no_distance ? 0 : typed.nm("distance"), kn = no_speed ? 0 : typed.knots("speed"), hours = no_time ? 0 : typed.hours();
  if (!typed.complete()) return found;
  const Result<double> third = no_distance ? distance_run_nm(kn, hours) : no_speed ? speed_needed_kn(nm, hours) : hours_taken(nm, kn);
  if (!third) found.problem = third.problem();
  else if (no_distance) found.lines = {{"distance", print_fixed(*third, 2) + " nm", true}};
  else if (no_speed) found.lines = {{"speed", print_fixed(*third, 1) + " kn", true}};
  else found.lines = {{"time", words::minutes_between(0, *third * k_seconds_per_hour), true}};
  return found;
}

struct Question {
  std::string_view name;
  StreamAnswer (*answer)(const Session& session);
  std::vector<std::string_view> fields;
};

const std::vector<Question>& questions() {
  static const std::vector<Question> all = {
      {"steer", steered, {"track", "speed", "set", "drift"}},
      {"made-good", made_good_of, {"heading", "speed", "set", "drift", "minutes", "from"}},
      {"stream", stream_found, {"from", "heading", "speed", "minutes", "fix"}},
      {"run", run_found, {"distance", "speed", "minutes"}},
  };
  return all;
}

const Question& question_named(const std::string& name) {
  const auto found = std::find_if(questions().begin(), questions().end(), [&](const Question& each) { return each.name == name; });
  return found == questions().end() ? questions().front() : *found;
}

/// What there is already: the selected leg's track and distance, the passage's speed and stream.
std::string standing(const Session& session, std::string_view field) {
  const Passage* passage = session.passage();
  if (passage && (field == "speed" || field == "set" || field == "drift")) {
    const bool is_steady = passage->stream.entry == StreamEntry::steady;
    return field == "speed" ? field_text(*passage, "speed") : is_steady ? field_text(*passage, "stream/" + std::string(field)) : "";
  }
  const Leg* leg = session.desk.selected_leg ? session.document().legs.find(*session.desk.selected_leg) : nullptr;
  if (leg && field == "track") return direction_figures(session.facts_of(*leg).rhumb.course.deg(), Rounding::tenths);
  return "";
}

}  // namespace

std::string question_in_hand(const Session& session) { return session.desk.entries.text("question/which", std::string(k_questions[0])); }

std::string question_text(const Session& session, std::string_view field) {
  return session.desk.entries.text("question/" + std::string(field), question_in_hand(session) == "run" ? "" : standing(session, field));
}

std::vector<std::string_view> fields_of(const std::string& question) { return question_named(question).fields; }

std::optional<Problem> question_fault(const Session& session, std::string_view field) {
  const std::string text = question_text(session, field);
  if (trimmed(text).empty() || field == "from" || field == "fix") return std::nullopt;
  const auto fault = [](const auto& read) { return read ? std::nullopt : std::optional(read.problem()); };
  if (field == "speed" || field == "drift") return fault(typed_knots(text));
  if (field == "minutes") return fault(minutes_of(text));
  if (field == "distance") return fault(typed_nm(text));
  return fault(true_of(session, text));
}

StreamAnswer answer(const Session& session) { return question_named(question_in_hand(session)).answer(session); }

}  // namespace fogsheet
