// All that the application holds, one struct passed down: the document with its past, the desk, the settings, and what the
// page told of itself. What follows from the document is computed once a revision and kept beside it.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/document/facts.h"
#include "core/instruments/straight_edge.h"
#include "core/passage/passage_plan.h"
#include "shell/camera.h"
#include "shell/compass_desk.h"
#include "shell/file_in_hand.h"
#include "shell/form.h"
#include "shell/instruments.h"
#include "shell/key_run.h"
#include "shell/keeper/keeper.h"
#include "shell/keeper/room.h"
#include "shell/photograph.h"
#include "shell/platform.h"
#include "shell/printing.h"
#include "shell/sending.h"
#include "shell/sheets.h"
#include "shell/own_position.h"
#include "shell/style.h"
#include "shell/viewport.h"

namespace fogsheet {

enum class ToolId { none, mark, leg, straight_edge, rose, dividers, note, photograph };
enum class SlipId {
  none,
  first_run,
  straight_edge,
  mark,
  leg,
  more,
  lists,
  new_sheet,
  new_mark,
  sheet,
  settings,
  legend,
  dividers,
  rough_method,
  rose,
  note,
  drawer,
  history,
  keys,
  compass,
  log_entry,
  passage,
  passage_details,
  passage_leg,
  stream,
  next_leg,
  deck_log,
  print,
  file,
  own_position,
  send,
  code,
  link,
  photograph
};

/// The first end of an edge that is being put on, or the first point of dividers.
struct FirstEnd {
  SheetPoint at;
  std::optional<MarkId> on;
};

/// Instruments and camera: kept beside the document, never in its past or in a link.
struct Desk {
  Camera camera;
  bool camera_moved = false;  // by the user: then a change of size does not choose a view anew
  ToolId tool = ToolId::none;
  std::optional<StraightEdge> edge;
  std::optional<FirstEnd> first_end;
  std::optional<EdgeMarks> laid_on;
  Reference write_ring = Reference::true_north;  // whose reading is written on a leg
  std::optional<DirectionSet> direction;  // that the edge was set to, and still lies in
  std::optional<DividersOnSheet> dividers;
  std::optional<FirstEnd> first_point;  // of dividers that are being opened
  RoughMethod rough;
  std::optional<MarkId> selected_mark;
  std::optional<LegId> selected_leg;
  std::optional<RoseId> selected_rose;
  std::optional<NoteId> selected_note;
  std::size_t passage_leg = 0;       // of the passage in hand, whose sum is shown
  bool way_home = false;             // that is what the card shows
  bool small_card = false;           // of A6, when it is printed
  std::optional<Position> new_note;  // where one is being written that has no words yet
  std::optional<MarkId> leg_from;
  Form entries;   // typed into the fields of what is on the sheet, and not taken: "mark/12/position", "sheet/scale"
  Form new_mark;  // a mark being put in by typing
  Form new_leg;   // a leg being put in by choosing its ends
};

struct Settings {
  Palette palette = Palette::day;
  Rounding rounding = Rounding::whole_degrees;
  int text_percent = 100;  // of the panels' text, one of k_text_sizes
  bool bold_lines = false;
  bool loupe = true;          // opens while a finger aims
  bool snap = true;           // points of instruments go onto marks they come near
  int dimmer = 0;             // a step of the dimmer, for the dark palettes
  bool keep_awake = false;    // the screen, while the page is in sight
  bool reduced_motion = false;  // as the system asks when the page comes
  bool single_keys = true;      // letters and signs pressed alone do something

  /// What the dimmer takes away in this palette.
  int dim_step() const { return is_dark(palette) ? dimmer : 0; }
  Legibility legibility(double px_per_mm) const { return legibility_of(palette, bold_lines, dim_step(), px_per_mm); }
};

inline constexpr int k_text_sizes[] = {100, 125, 150};

/// As they were put on this device before; what was never put is as usual.
Settings kept_settings(Platform& platform);

// What a new sheet has until something else is chosen.
inline constexpr const char* k_usual_scale = "100000";
inline constexpr const char* k_usual_paper = "A4-across";

/// What follows from one revision of the document.
struct Facts {
  std::uint64_t revision = 0;
  Rounding rounding = Rounding::whole_degrees;
  std::unique_ptr<Projection> projection;
  VariationInUse variation;  // the sheet's
  std::vector<RoseInReach> roses;
  std::vector<VariationInUse> rose_variations;  // of each in the same order
  bool any_own_place = false;                   // a rose is set to its own place
  std::optional<DeviationCard> card;            // that the boat is steered by
  const DeviationCard* card_or_none() const { return card ? &*card : nullptr; }
  const RoseInReach* rose(std::optional<RoseId> id) const;  // null for none
};

/// What the passage in hand comes to at one revision. Made when first asked for.
struct Plans {
  std::uint64_t revision = 0;
  Rounding rounding = Rounding::whole_degrees;
  std::optional<PassagePlan> out, home, under_way;
  std::optional<PassagePlan> out_before;  // of the revision before, for what has not changed
};

/// Where the marks of one revision lie on the paper. Made when first asked for: most commits of a script never ask.
struct MarkPlaces {
  std::uint64_t revision = 0;
  std::vector<SheetPoint> in_order;                      // in the order of the marks
  std::unordered_map<std::uint32_t, SheetPoint> by_id;
};

/// The last thing said to the user: why something could not be done, or that it was.
struct Message {
  std::string text;
  bool is_caution = false;
  std::string refused = {};  // the command that it is the reason of
};

/// The list of things beside the sheet, a part of it at a time.
struct Outline {
  bool open = false;
  std::size_t from = 0;  // the first thing shown
};

/// What of the drawer is shown, while it is open.
struct DrawerView {
  static constexpr std::size_t k_rows = 30;
  std::string search;
  std::size_t rows = k_rows;   // of its sheets, and of those taken out
  bool damaged_saved = false;  // the damaged records went out as a file
};

struct Session {
  explicit Session(Platform& the_platform);

  Platform& platform;
  Sheets sheets;
  Boats boats;
  Keeper keeper;
  CompassDesk compass_desk;
  Desk desk;                               // of the sheet in hand
  std::map<SheetKey, Desk> desks_put_away;  // of those that were in hand before
  Settings settings;
  SlipId slip = SlipId::first_run;
  bool slip_entered = false;  // the keys go on in it
  Message message;
  Outline outline;
  DrawerView drawer;
  Room room;
  std::optional<Thing> in_focus;  // the thing in the outline that the keys are on
  std::optional<KeyRun> run;   // arrows that move it now
  std::string reading_told;    // what the instruments read when it was last read aloud
  Viewport viewport;
  bool canvas_lost = false;
  bool touch_locked = false;  // everything but one bar is deaf to fingers, pens and mice
  OwnPosition own_position;
  std::string offline_state;
  std::string awake_state;          // of the screen: App::set_awake_state
  bool new_version_wanted = false;  // as soon as all is kept
  DividersForm dividers_form;
  Form new_sheet;  // a sheet being made
  DirectionForm direction_form;
  PrintChoice print;
  bool printing = false;        // the browser is about to, and takes what is on the page for it
  Sending sending;
  std::string open_text;        // as typed, while it could not be opened
  std::string open_text_error;
  std::optional<FileInHand> file;
  std::optional<Photograph> photograph;  // under the sheet in hand
  PhotographsUnderWay photographs;       // into the file of all that is kept, and out of one
  std::vector<std::uint8_t> placing_told;  // of it, to the page
  HalfTyped half_typed;         // when the page was put out of sight
  std::uint64_t panels_revision = 1;
  bool frame_wanted = true;
  double nudged_deg = 0;  // how far the edge was turned by tenths since it was last laid, slid or dragged

  /// Of the sheet in hand. Its undo ends where the sheet was laid down; undo_label() and undo() of `sheets` go on from there.
  History& history() { return sheets.in_hand().history; }
  const History& history() const { return sheets.in_hand().history; }
  const Document& document() const { return history().now(); }
  const Facts& facts() const;  // of the document and rounding in force
  const MarkPlaces& mark_places() const;

  /// What a rose shows, and what serves a leg: the sheet's variation unless a rose is set to its own place.
  const VariationInUse& variation_of(RoseId rose) const;
  const VariationInUse& variation_of(const Leg& leg) const;
  LegFacts facts_of(const Leg& leg) const;
  /// The passage in hand, or null; and what it comes to, out and home, as entered, and from what the deck log has on.
  const Passage* passage() const;
  const PassagePlan& plan(bool homeward = false) const;
  const PassagePlan& plan_under_way() const;
  /// The screen is to stay on: the user says so, or is under way.
  bool awake_wanted() const;
  /// What the clock says in the passage's zone.
  LocalTime now_in(const Passage& of) const;
  /// What the edge is read against: the rose it is settled on, or the sheet.
  const VariationInUse& variation_of_edge() const;

  /// Whether the page may go without loss, or can in a moment, when what is being written has been.
  bool nothing_to_lose() const;

  /// Everything that may show on the canvas or in a panel has changed.
  void touch() {
    ++panels_revision;
    frame_wanted = true;
  }

  /// The canvas that no slip covers; and the whole of it.
  FreeArea free_area() const;
  FreeArea whole_canvas() const;
  bool wide() const { return viewport.width_px >= k_wide_layout_px; }
  bool slip_at_side() const { return wide() || (viewport.width_px >= k_low_layout_least_px && viewport.height_px <= k_low_canvas_px); }
  bool phone() const { return viewport.width_px < k_phone_layout_px; }

  /// Chooses the first view of the sheet in hand.
  void look_at_sheet();

  /// Puts an edge on, or takes it off, and keeps in mind which marks its line came from.
  void set_edge(std::optional<StraightEdge> edge);

  /// Moves the view just so far that a place can be seen clear of its edge.
  void bring_into_view(SheetPoint place);

  /// Says to who can't see it what has come of a key, and what the instruments read now with it.
  void read_aloud(const std::string& text);

  void say(std::string text) { message = {std::move(text), false}; }
  void refuse(const Problem& problem);

  /// After a step of the sheet in hand: lets go of what is no longer there, and of the edge when the sheet itself changed.
  void settle_desk(const Document& before);

  /// After another sheet was taken in hand: puts away the desk of `before` and brings out that of the one in hand, as it
  /// lay; the tool stays in hand.
  void change_desk(SheetKey before);

 private:
  mutable Facts facts_;
  mutable MarkPlaces places_;
  mutable Plans plans_;

  Plans& plans() const;
  PlanNeeds plan_needs() const;
};

}  // namespace fogsheet
