#include "shell/keeper/desk_record.h"

#include <cmath>
#include <cstring>

#include "core/formats/bytes.h"
#include "shell/commands_desk.h"
#include "shell/tools/tool.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_word_bytes = 200;
constexpr std::uint64_t k_most_readings = 1'000;

// Of what is typed and not yet on the sheet, so much is kept of each form: a longer text is left out, the rest is not.
constexpr std::size_t k_most_typed_bytes = 4'000;
constexpr std::size_t k_most_form_bytes = 20'000;

// -- fields, each in one order for writing and reading

class Writer {
 public:
  void operator()(double value) {
    std::uint64_t bits = 0;
    std::memcpy(&bits, &value, sizeof bits);
    out_.whole(bits);
  }
  void operator()(bool value) { out_.whole(value ? 1 : 0); }
  void operator()(int value) { out_.signed_whole(value); }
  void operator()(std::uint64_t value) { out_.whole(value); }
  void operator()(const std::string& text) { out_.text(text); }
  void typed(const std::string& text) { out_.text(text.size() <= k_most_typed_bytes ? text : std::string()); }
  void typed(const Form& form);
  const StoreBytes& bytes() const { return out_.bytes(); }

 private:
  ByteWriter out_;
};

class Reader {
 public:
  explicit Reader(std::span<const std::uint8_t> bytes) : in_(bytes) {}
  void operator()(double& value) {
    const std::uint64_t bits = in_.whole();
    std::memcpy(&value, &bits, sizeof value);
    if (!std::isfinite(value)) ok_ = false;
  }
  void operator()(bool& value) { value = in_.whole() != 0; }
  void operator()(int& value) { value = static_cast<int>(in_.signed_whole()); }
  void operator()(std::uint64_t& value) { value = in_.whole(); }
  void operator()(std::string& text) { text = in_.text(k_most_word_bytes); }
  void typed(std::string& text) { text = in_.text(k_most_typed_bytes); }
  void typed(Form& form);
  bool ok() const { return ok_ && in_.ok(); }

 private:
  ByteReader in_;
  bool ok_ = true;
};

void Writer::typed(const Form& form) {
  std::size_t bytes = 0;
  for (const auto& [field, entry] : form.all()) {
    if (entry.text.size() > k_most_typed_bytes || entry.error.size() > k_most_typed_bytes || field.size() > k_most_word_bytes || field.empty()) continue;
    bytes += field.size() + entry.text.size() + entry.error.size();
    if (bytes > k_most_form_bytes) break;
    out_.text(field);
    typed(entry.text);
    typed(entry.error);
  }
  out_.text("");
}

void Reader::typed(Form& form) {
  for (std::size_t bytes = 0; ok();) {
    std::string field, text, error;
    (*this)(field);
    if (field.empty()) return;
    typed(text);
    typed(error);
    bytes += field.size() + text.size() + error.size();
    if (bytes > k_most_form_bytes) ok_ = false;
    form.keep(field, std::move(text), std::move(error));
  }
}

template <class Do, class Tag>
void each(Do& go, Id<Tag>& id) {
  std::uint64_t value = id.value;
  go(value);
  id.value = static_cast<std::uint32_t>(value);
}

template <class Do>
void each(Do& go, Position& at) {
  go(at.lat_deg);
  go(at.lon_deg);
}

template <class Do>
void each(Do& go, SheetPoint& point) {
  go(point.x_mm);
  go(point.y_mm);
}

template <class Do, class Thing>
void each(Do& go, std::optional<Thing>& thing) {
  bool is_there = thing.has_value();
  go(is_there);
  if (!is_there) return;
  if (!thing) thing.emplace();
  each(go, *thing);
}

template <class Do>
void each(Do& go, double& value) {
  go(value);
}

template <class Do>
void each(Do& go, Reference& reference) {
  int value = static_cast<int>(reference);
  go(value);
  reference = static_cast<Reference>(value);
}

template <class Do>
void each(Do& go, StraightEdge& edge) {
  each(go, edge.a);
  each(go, edge.b);
  each(go, edge.on_a);
  each(go, edge.on_b);
  go(edge.locked);
  each(go, edge.settled_on);
}

template <class Do>
void each(Do& go, EdgeMarks& marks) {
  each(go, marks.from);
  each(go, marks.to);
}

template <class Do>
void each(Do& go, DividersPlace& place) {
  each(go, place.points.a);
  each(go, place.points.b);
  each(go, place.on_a);
  each(go, place.on_b);
  go(place.hinge_left);
}

template <class Do>
void each(Do& go, SteppedLeg& stepped) {
  each(go, stepped.leg);
  each(go, stepped.from);
  each(go, stepped.towards);
  go(stepped.steps);
  go(stepped.counted);
  go(stepped.rest_mm);
}

template <class Do>
void each(Do& go, DividersOnSheet& dividers) {
  each(go, dividers.lie);
  each(go, dividers.work);
  each(go, dividers.stepped);
}

template <class Do>
void each(Do& go, RoughMethod& rough) {
  std::uint64_t count = std::min<std::uint64_t>(rough.readings_deg.size(), k_most_readings);
  go(count);
  rough.readings_deg.resize(static_cast<std::size_t>(std::min(count, k_most_readings)));
  for (double& reading : rough.readings_deg) go(reading);
  each(go, rough.ring);
  go.typed(rough.run);
  go.typed(rough.run_error);
  go.typed(rough.typed);
  go.typed(rough.typed_error);
}

template <class Do>
void each(Do& go, DirectionSet& direction) {
  go(direction.deg);
  each(go, direction.reference);
  each(go, direction.set_here);
  each(go, direction.through);
  each(go, direction.line_mm);
}

template <class Do>
void each(Do& go, Desk& desk) {
  go(desk.camera.px_per_mm);
  go(desk.camera.origin.x_px);
  go(desk.camera.origin.y_px);
  go(desk.camera_moved);
  each(go, desk.edge);
  each(go, desk.laid_on);
  each(go, desk.dividers);
  each(go, desk.rough);
  each(go, desk.selected_mark);
  each(go, desk.selected_leg);
  each(go, desk.selected_rose);
  each(go, desk.selected_note);
  each(go, desk.new_note);
  each(go, desk.direction);
  each(go, desk.write_ring);
  for (Form* form : {&desk.entries, &desk.new_mark, &desk.new_leg}) go.typed(*form);
}

/// What is typed beside any one sheet.
struct TypedBeside {
  Form new_sheet;
  DirectionForm direction;
  DividersForm dividers;
  std::string open_text, open_text_error;
  HalfTyped half;
};

template <class Do>
void each(Do& go, TypedBeside& beside) {
  go.typed(beside.new_sheet);
  DirectionForm& direction = beside.direction;
  go(direction.open);
  each(go, direction.reference);
  DividersForm& dividers = beside.dividers;
  for (std::string* text : {&direction.text, &direction.error, &direction.length, &direction.length_error, &dividers.distance, &dividers.distance_error, &dividers.steps, &dividers.steps_error,
                            &beside.open_text, &beside.open_text_error, &beside.half.field, &beside.half.text})
    go.typed(*text);
}

template <class Do>
void each(Do& go, CompassDesk& desk) {
  go(desk.boat.value);
  each(go, desk.compass);
  each(go, desk.entry);
  go(desk.card_step_deg);
  go.typed(desk.typed);
}

/// The desk of one sheet, and of which.
struct Placed {
  std::uint64_t sheet = 0;
  Desk desk;
};

constexpr std::uint64_t k_layout = 3;  // of these bytes; others are not read

struct Kept {
  std::uint64_t layout = k_layout;
  std::uint64_t in_hand = 0;
  std::string tool;
  std::string slip;
  double width_px = 0;
  double height_px = 0;
  std::vector<Placed> desks;
  TypedBeside beside;
};

template <class Do>
void each(Do& go, Kept& kept) {
  go(kept.layout);
  go(kept.in_hand);
  go(kept.tool);
  go(kept.slip);
  go(kept.width_px);
  go(kept.height_px);
}

bool is_sound(const Desk& desk) {
  const bool camera = desk.camera.px_per_mm >= k_least_px_per_mm && desk.camera.px_per_mm <= k_most_px_per_mm;
  const bool edge = !desk.edge || distance_mm(desk.edge->a, desk.edge->b) >= k_least_edge_mm;
  const auto is_ring = [](Reference reference) { return reference == Reference::true_north || reference == Reference::magnetic; };
  const std::optional<DirectionSet>& set = desk.direction;
  const bool direction = !set || (desk.edge && (is_ring(set->reference) || set->reference == Reference::compass) && distance_mm(set->set_here.a, set->set_here.b) >= k_least_edge_mm);
  const bool note = !desk.new_note || (std::abs(desk.new_note->lat_deg) < 90 && std::abs(desk.new_note->lon_deg) <= 180);
  return camera && edge && direction && note && is_ring(desk.rough.ring) && is_ring(desk.write_ring);
}

}  // namespace

StoreBytes desk_bytes(const Session& session) {
  Writer out;
  Kept kept{.in_hand = session.sheets.in_hand().key.value,
            .tool = tool_row(session.desk.tool).name,
            .slip = slip_name(session.slip),
            .width_px = session.viewport.width_px,
            .height_px = session.viewport.height_px};
  each(out, kept);
  Desk in_hand = session.desk;
  out(session.sheets.in_hand().key.value);
  each(out, in_hand);
  for (const auto& [key, put_away] : session.desks_put_away) {
    if (!session.sheets.find(key)) continue;
    Desk desk = put_away;
    out(key.value);
    each(out, desk);
  }
  out(std::uint64_t{0});
  TypedBeside beside{session.new_sheet, session.direction_form, session.dividers_form, session.open_text, session.open_text_error, session.half_typed};
  each(out, beside);
  CompassDesk compass = session.compass_desk;
  each(out, compass);
  return out.bytes();
}

void restore_desk(Session& session, std::span<const std::uint8_t> bytes, bool is_kept) {
  Reader in(bytes);
  Kept kept;
  each(in, kept);
  if (kept.layout != k_layout) return;
  while (in.ok()) {
    Placed placed;
    in(placed.sheet);
    if (placed.sheet == 0) break;
    each(in, placed.desk);
    if (in.ok() && is_sound(placed.desk)) kept.desks.push_back(std::move(placed));
  }
  each(in, kept.beside);
  CompassDesk compass;
  each(in, compass);
  const Reference by = kept.beside.direction.reference;
  if (!in.ok() || (by != Reference::true_north && by != Reference::magnetic && by != Reference::compass)) return;

  const bool in_a_field = !kept.beside.half.field.empty();  // its slip comes back with it
  if (is_kept) session.sheets.take({kept.in_hand});
  for (Placed& placed : kept.desks) {
    if (!is_kept && placed.sheet == kept.in_hand) {
      Desk& desk = session.desk;
      desk.entries = std::move(placed.desk.entries);
      desk.new_mark = std::move(placed.desk.new_mark);
      desk.new_leg = std::move(placed.desk.new_leg);
      desk.rough = std::move(placed.desk.rough);
      if (in_a_field) {
        desk.selected_mark = placed.desk.selected_mark;
        desk.selected_leg = placed.desk.selected_leg;
        desk.selected_rose = placed.desk.selected_rose;
        desk.selected_note = placed.desk.selected_note;
      }
    }
    if (!is_kept || !session.sheets.find({placed.sheet})) continue;
    if (SheetKey{placed.sheet} == session.sheets.in_hand().key) session.desk = std::move(placed.desk);
    else session.desks_put_away.insert_or_assign(SheetKey{placed.sheet}, std::move(placed.desk));
  }
  for (const ToolRow& row : tool_table())
    if (is_kept && kept.tool == row.name) session.desk.tool = row.id;
  session.new_sheet = std::move(kept.beside.new_sheet);
  session.direction_form = std::move(kept.beside.direction);
  session.dividers_form = std::move(kept.beside.dividers);
  session.open_text = std::move(kept.beside.open_text);
  session.open_text_error = std::move(kept.beside.open_text_error);
  if (compass.card_step_deg != 10) compass.card_step_deg = 15;
  session.compass_desk = std::move(compass);
  session.half_typed = std::move(kept.beside.half);
  const std::optional<SlipId> slip = slip_named(kept.slip);
  const bool is_of_no_sheet = slip == SlipId::new_mark || slip == SlipId::new_sheet || slip == SlipId::compass || slip == SlipId::log_entry;
  if (is_kept || in_a_field) session.slip = slip.value_or(SlipId::none);
  else if (is_of_no_sheet) session.slip = *slip;
  session.settle_desk(session.document());
  settle_compass_desk(session);
  if (!is_kept) return;
  const bool same_size = kept.width_px == session.viewport.width_px && kept.height_px == session.viewport.height_px;
  if (!same_size && !session.desk.camera_moved) session.look_at_sheet();
  else if (!same_size) session.desk.camera = held(session.desk.camera, paper_size(session.document().sheet.paper), session.free_area());
}

}  // namespace fogsheet
