// The sheet's marks and legs as tables: to find one, to change it, to put in another; also for who can't see the canvas, and
// in its place where it can't be drawn.
#include <algorithm>

#include "core/directions/direction_figures.h"
#include "core/positions/position_figures.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/form_words.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_rows = 500;  // a page's table past this is slow to lay out and slower to read

template <class RowId>
Press select(const char* command, RowId id) { return {command, Value::object({{"id", std::to_string(id.value)}})}; }

TableItem marks_table(const Document& document) {
  TableItem table{.name = "marks", .caption = words::marks_caption(document.marks.size()), .columns = {{"name"}, {"kind"}, {"position", true}, {"note"}}, .when_empty = words::no_marks_yet()};
  for (const Mark& mark : document.marks) {
    if (table.rows.size() == k_most_rows) break;
    table.rows.push_back({mark.name, words::kind_option(mark.kind), position_figures(unquantise(mark.at), 2), words::mark_remark(mark)});
    table.row_presses.push_back(select("select-mark", mark.id));
  }
  return table;
}

TableItem legs_table(const Session& session) {
  const Document& document = session.document();
  const Rounding rounding = session.settings.rounding;
  TableItem table{.name = "legs", .caption = words::legs_caption(document.legs.size()), .columns = {{"leg"}, {"from"}, {"to"}, {"true", true}, {"magnetic", true}}, .when_empty = words::no_legs_yet()};
  const bool has_card = session.facts().card.has_value();
  if (has_card) table.columns.push_back({"compass", true});
  table.columns.push_back({"nm", true});
  const bool any_written = std::any_of(document.legs.begin(), document.legs.end(), [](const Leg& leg) { return leg.written.has_value(); });
  if (any_written) table.columns.push_back({"read by hand", true});
  for (const Leg& leg : document.legs) {
    if (table.rows.size() == k_most_rows) break;
    const LegFacts facts = session.facts_of(leg);
    table.rows.push_back({std::to_string(table.rows.size() + 1), document.marks.find(leg.from)->name, document.marks.find(leg.to)->name,
                          words::with_letter(facts.rhumb.course.deg(), rounding, Reference::true_north),
                          facts.has_magnetic ? words::with_letter(facts.magnetic.deg(), rounding, Reference::magnetic) : "–"});
    const ChainRow* compass = row_of(facts.chain, ChainTerm::compass_direction);
    if (has_card) table.rows.back().push_back(compass ? words::with_letter(compass->shown_deg, rounding, Reference::compass) : "–");
    table.rows.back().push_back(distance_figures(facts.rhumb.distance_nm));
    if (any_written) table.rows.back().push_back(parts::written_cell(session, leg));
    table.row_presses.push_back(select("select-leg", leg.id));
  }
  return table;
}

void add_new_leg(Panel& panel, const Session& session) {
  const Document& document = session.document();
  if (document.marks.size() < 2) return;
  const Form& form = session.desk.new_leg;
  const auto fill = [](const char* field) { return Press{"fill-new-leg", Value::object({{"field", field}})}; };
  panel.items.push_back(HeadingItem{.text = words::draw_a_leg(), .level = 3});
  panel.items.push_back(parts::mark_choice(document, "leg-from", words::leg_from(), form.text("from"), fill("from")));
  panel.items.push_back(parts::mark_choice(document, "leg-to", words::leg_to(), form.text("to"), fill("to")));
  panel.items.push_back(ButtonItem{.name = "make-new-leg", .label = words::draw_the_leg(), .on_press = {"make-new-leg"}});
}

}  // namespace

Panel lists_panel(const Session& session, PanelPlace place) {
  Panel panel{.name = "lists", .label = words::marks_and_legs(), .place = place};
  panel.items.push_back(HeadingItem{.text = words::sheet_title(session.document()), .beside = words::marks_and_legs()});
  if (place == PanelPlace::slip) panel.items.push_back(parts::close_button());
  if (place == PanelPlace::whole)
    panel.items.push_back(CautionItem{.text = "The sheet can't be drawn here", .advice = "This browser offers no WebGL2, or has lost it. Marks, legs and sums below still work; another browser, or loading the page again, may draw the sheet."});
  parts::add_variation(panel, session);
  panel.items.push_back(legs_table(session));
  add_new_leg(panel, session);
  panel.beside_from = panel.items.size();
  panel.items.push_back(marks_table(session.document()));
  panel.items.push_back(ButtonItem{.name = "add-mark", .label = words::new_mark_title(), .look = ButtonLook::main, .on_press = {"open-slip", Value::object({{"slip", "new-mark"}})}});
  return panel;
}

}  // namespace fogsheet
