#include "shell/session.h"

#include <algorithm>

#include "shell/demo.h"
#include "shell/dividers.h"
#include "shell/direction.h"
#include "shell/things.h"
#include "shell/words.h"
#include "shell/words_of_things.h"

namespace fogsheet {
namespace {

// What a slip may cover at the most; first views keep the work clear of it though none is open yet.
constexpr double k_slip_width_px = 330;
constexpr double k_slip_share_of_height = 0.5;  // of the canvas

}  // namespace

Settings kept_settings(Platform& platform) {
  Settings settings;
  if (const std::optional<Palette> kept = palette_named(platform.setting("palette"))) settings.palette = *kept;
  if (platform.setting("rounding") == "tenths") settings.rounding = Rounding::tenths;
  settings.bold_lines = platform.setting("lines") == "bold";
  settings.loupe = platform.setting("loupe") != "off";
  settings.snap = platform.setting("snap") != "off";
  settings.keep_awake = platform.setting("screen") == "awake";
  settings.reduced_motion = platform.setting("motion") == "reduced";
  for (int step = 1; step <= k_dimmest; ++step)
    if (platform.setting("dimmer") == std::to_string(step)) settings.dimmer = step;
  settings.single_keys = platform.setting("single-keys") != "off";
  for (const int percent : k_text_sizes)
    if (platform.setting("text-size") == std::to_string(percent)) settings.text_percent = percent;
  return settings;
}

Session::Session(Platform& the_platform) : platform(the_platform), sheets(demo_sheet(), the_platform.now_ms(), the_platform.key_lane()), boats(the_platform.key_lane()) {}

bool Session::nothing_to_lose() const {
  const Keeping keeping = keeper.keeping();
  return (keeping != Keeping::failed && keeping != Keeping::off) || sheets.untouched();
}

const Facts& Session::facts() const {
  if (facts_.projection && facts_.revision == history().revision() && facts_.rounding == settings.rounding) return facts_;
  const Document& now = document();
  facts_.revision = history().revision();
  facts_.rounding = settings.rounding;
  facts_.projection = std::make_unique<Projection>(projection_of(now));
  facts_.variation = fogsheet::variation_of(now, settings.rounding);
  facts_.roses.clear();
  facts_.rose_variations.clear();
  facts_.any_own_place = false;
  facts_.card.reset();
  if (now.compass) facts_.card = now.compass->card();
  for (const Rose& rose : now.roses) {
    facts_.roses.push_back({rose.id, facts_.projection->to_sheet(unquantise(rose.at)), rose.radius_mm});
    facts_.rose_variations.push_back(variation_at(now, rose, facts_.variation, settings.rounding));
    facts_.any_own_place = facts_.any_own_place || rose.own_place;
  }
  return facts_;
}

const RoseInReach* Facts::rose(std::optional<RoseId> id) const {
  for (const RoseInReach& each : roses)
    if (each.id == id) return &each;
  return nullptr;
}

const MarkPlaces& Session::mark_places() const {
  if (places_.revision == history().revision()) return places_;
  places_ = {.revision = history().revision()};
  for (const Mark& mark : document().marks) {
    places_.in_order.push_back(facts().projection->to_sheet(unquantise(mark.at)));
    places_.by_id[mark.id.value] = places_.in_order.back();
  }
  return places_;
}

const VariationInUse& Session::variation_of(RoseId rose) const {
  const Facts& known = facts();
  for (std::size_t i = 0; i < known.roses.size(); ++i)
    if (known.roses[i].id == rose) return known.rose_variations[i];
  return known.variation;
}

const VariationInUse& Session::variation_of(const Leg& leg) const {
  if (!facts().any_own_place) return facts().variation;
  const Rose* rose = rose_serving(document(), leg, *facts().projection);
  return rose ? variation_of(rose->id) : facts().variation;
}

LegFacts Session::facts_of(const Leg& leg) const {
  return leg_facts(document(), leg, variation_of(leg), settings.rounding, facts().card_or_none());
}

const Passage* Session::passage() const {
  const Shared<Passages>& passages = document().passages;
  return passages ? find(*passages, passages->in_hand) : nullptr;
}

Plans& Session::plans() const {
  if (plans_.revision != history().revision() || plans_.rounding != settings.rounding) plans_ = {.revision = history().revision(), .rounding = settings.rounding, .out_before = plans_.out ? std::move(plans_.out) : std::move(plans_.out_before)};
  return plans_;
}

PlanNeeds Session::plan_needs() const {
  return {.variation_of = [this](const Leg& leg) -> const VariationInUse& { return variation_of(leg); }, .card = facts().card_or_none(), .rounding = settings.rounding};
}

const PassagePlan& Session::plan(bool homeward) const {
  std::optional<PassagePlan>& plan = homeward ? plans().home : plans().out;
  const std::optional<PassagePlan>& before = plans_.out_before;
  if (!plan) plan = plan_of(document(), *passage(), plan_needs(), homeward, before && !homeward ? &*before : nullptr);
  return *plan;
}

bool Session::awake_wanted() const {
  const Passage* running = passage();
  const UnderWay state = running ? fogsheet::under_way(*running) : UnderWay{};
  return settings.keep_awake || (state.departed && state.leg < running->legs.size());
}

LocalTime Session::now_in(const Passage& of) const { return local_time({.seconds = platform.now_ms() / 1000}, of.zone); }

const PassagePlan& Session::plan_under_way() const {
  std::optional<PassagePlan>& plan = plans().under_way;
  if (!plan) plan = fogsheet::plan_under_way(document(), *passage(), plan_needs());
  return *plan;
}

const VariationInUse& Session::variation_of_edge() const {
  return desk.edge && desk.edge->settled_on ? variation_of(*desk.edge->settled_on) : facts().variation;
}

FreeArea Session::free_area() const {
  return {std::max(1.0, viewport.width_px - viewport.covered_right_px), std::max(1.0, viewport.height_px - viewport.covered_bottom_px)};
}

FreeArea Session::whole_canvas() const { return {std::max(1.0, viewport.width_px), std::max(1.0, viewport.height_px)}; }

void Session::look_at_sheet() {
  const FreeArea canvas = whole_canvas();
  FreeArea clear = canvas;
  if (slip_at_side()) clear.width_px -= k_slip_width_px;
  else clear.height_px *= 1 - k_slip_share_of_height;

  // The work: the first leg's ends, or what there is, and the first rose.
  const Document& now = document();
  const PaperSize paper = paper_size(now.sheet.paper);
  SheetRect focus{paper.width_mm, paper.height_mm, 0, 0};
  const auto take_in = [&](SheetPoint p, double around_mm) {
    focus = {std::min(focus.left_mm, p.x_mm - around_mm), std::min(focus.top_mm, p.y_mm - around_mm), std::max(focus.right_mm, p.x_mm + around_mm),
             std::max(focus.bottom_mm, p.y_mm + around_mm)};
  };
  constexpr double k_around_mark_mm = 12;
  for (std::size_t i = 0; i < std::min<std::size_t>(2, now.marks.size()); ++i) take_in(facts().projection->to_sheet(unquantise(now.marks.at(i).at)), k_around_mark_mm);
  // Of a rose its centre must be seen, and as much of its rings as there is room for.
  if (!facts().roses.empty()) take_in(facts().roses.front().centre, 0.5 * facts().roses.front().radius_mm);
  if (focus.width_mm() <= 0 || now.marks.empty()) focus = {0, 0, paper.width_mm, paper.height_mm};
  desk.camera = opening(paper, canvas, clear, focus);
  desk.camera_moved = false;
  touch();
}

void Session::set_edge(std::optional<StraightEdge> edge) {
  desk.edge = std::move(edge);
  nudged_deg = 0;
  desk.first_end.reset();
  if (!desk.edge) desk.laid_on.reset();
  else if (desk.edge->on_a && desk.edge->on_b) desk.laid_on = EdgeMarks{*desk.edge->on_a, *desk.edge->on_b};
  else if (!desk.edge->locked) desk.laid_on.reset();  // turned, or lined up by eye
  if (desk.direction && (!desk.edge || !lies_as_set(*desk.edge, *desk.direction))) desk.direction.reset();
  if (!desk.direction && (!desk.edge || desk.laid_on)) direction_form.open = false;  // let go, or laid on a line to be read
  touch();
}

void Session::bring_into_view(SheetPoint place) {
  constexpr double k_clear_px = 84;
  const FreeArea area = free_area();
  const ScreenPoint at = desk.camera.to_screen(place);
  const auto back = [&](double px, double size_px) {
    const double clear = std::min(k_clear_px, size_px / 2);
    return std::clamp(px, clear, size_px - clear) - px;
  };
  const ScreenPoint by{back(at.x_px, area.width_px), back(at.y_px, area.height_px)};
  if (by.x_px == 0 && by.y_px == 0) return;
  desk.camera = panned(desk.camera, by);
  desk.camera_moved = true;
}

void Session::read_aloud(const std::string& text) {
  reading_told = words::instruments_read(*this);
  platform.read_aloud(text);
}

void Session::refuse(const Problem& problem) {
  message = {words::sentence(problem), true};
  touch();
}

void Session::settle_desk(const Document& before) {
  const Document& now = document();
  if (desk.selected_mark && !now.marks.find(*desk.selected_mark)) desk.selected_mark.reset();
  if (desk.selected_leg && !now.legs.find(*desk.selected_leg)) desk.selected_leg.reset();
  if (desk.leg_from && !now.marks.find(*desk.leg_from)) desk.leg_from.reset();
  if (desk.selected_rose && !now.roses.find(*desk.selected_rose)) desk.selected_rose.reset();
  if (desk.selected_note && !now.text_notes.find(*desk.selected_note)) desk.selected_note.reset();
  if (slip == SlipId::note && !desk.selected_note && !desk.new_note) slip = SlipId::none;
  if ((slip == SlipId::file && !file) || (slip == SlipId::link && !sending.arrived)) slip = SlipId::none;
  if ((slip == SlipId::mark && !desk.selected_mark) || (slip == SlipId::leg && !desk.selected_leg)) slip = SlipId::none;
  if (desk.laid_on && (!now.marks.find(desk.laid_on->from) || !now.marks.find(desk.laid_on->to))) desk.laid_on.reset();
  if (desk.edge) {
    // It stays settled only while the rose is where its edge lies.
    const RoseInReach* rose = facts().rose(desk.edge->settled_on);
    if (!rose || std::abs(across_mm(*desk.edge, rose->centre)) > 1e-6) desk.edge->settled_on.reset();
    // An end stays on its mark only while the mark is where the end is.
    const auto still_on = [&](std::optional<MarkId> on, SheetPoint end) {
      const Mark* mark = on ? now.marks.find(*on) : nullptr;
      return mark && distance_mm(facts().projection->to_sheet(unquantise(mark->at)), end) < 1e-6;
    };
    if (!still_on(desk.edge->on_a, desk.edge->a)) desk.edge->on_a.reset();
    if (!still_on(desk.edge->on_b, desk.edge->b)) desk.edge->on_b.reset();
  }
  const bool other_sheet = now.sheet.middle != before.sheet.middle || now.sheet.scale != before.sheet.scale || now.sheet.paper != before.sheet.paper;
  settle_dividers(*this, other_sheet);
  settle_direction(*this);
  if (other_sheet) {
    set_edge(std::nullopt);
    look_at_sheet();
  }
  if (in_focus && !place_among_things(*this, *in_focus)) in_focus.reset();
  sheets.tidy();
  message = {};
  touch();
}

void Session::change_desk(SheetKey before) {
  const ToolId tool = desk.tool;
  in_focus.reset();
  run.reset();
  outline.from = 0;
  desk.first_end.reset();
  desks_put_away.insert_or_assign(before, std::move(desk));
  const auto kept = desks_put_away.find(sheets.in_hand().key);
  const bool was_out = kept != desks_put_away.end();
  desk = was_out ? std::move(kept->second) : Desk{};
  if (was_out) desks_put_away.erase(kept);
  desk.tool = tool;
  if (slip == SlipId::mark || slip == SlipId::leg || slip == SlipId::note) slip = SlipId::none;
  if (was_out && desk.camera_moved) desk.camera = held(desk.camera, paper_size(document().sheet.paper), free_area());
  else look_at_sheet();
  message = {};
  touch();
}

}  // namespace fogsheet
