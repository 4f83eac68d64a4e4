// The sheet's marks and legs as tables: for who can't see the canvas, and in its place where it can't be drawn.
#include "core/directions/direction_figures.h"
#include "core/positions/position_figures.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_most_rows = 500;  // a page's table past this is slow to lay out and slower to read

TableItem marks_table(const Document& document) {
  TableItem table{.name = "marks", .caption = "Marks", .columns = {{"name"}, {"kind"}, {"position", true}}, .when_empty = "No marks yet: take the mark tool and press where one stands."};
  for (const Mark& mark : document.marks) {
    if (table.rows.size() == k_most_rows) break;
    table.rows.push_back({mark.name, words::kind_label(mark.kind), position_figures(unquantise(mark.at), 2)});
  }
  return table;
}

TableItem legs_table(const Session& session) {
  const Document& document = session.document();
  const Rounding rounding = session.settings.rounding;
  TableItem table{.name = "legs", .caption = "Legs", .columns = {{"from"}, {"to"}, {"true", true}, {"magnetic", true}, {"nm", true}}, .when_empty = "No legs yet: take the leg tool and press from turn to turn."};
  for (const Leg& leg : document.legs) {
    if (table.rows.size() == k_most_rows) break;
    const LegFacts facts = leg_facts(document, leg, session.variation_of(leg), rounding);
    table.rows.push_back({document.marks.find(leg.from)->name, document.marks.find(leg.to)->name, words::with_letter(facts.rhumb.course.deg(), rounding, Reference::true_north),
                          facts.has_magnetic ? words::with_letter(facts.magnetic.deg(), rounding, Reference::magnetic) : "–", distance_figures(facts.rhumb.distance_nm)});
  }
  return table;
}

}  // namespace

Panel lists_panel(const Session& session, PanelPlace place) {
  Panel panel{.name = "lists", .label = "Marks and legs", .place = place};
  panel.items.push_back(HeadingItem{.text = words::sheet_title(session.document()), .beside = "marks and legs"});
  if (place == PanelPlace::slip) panel.items.push_back(parts::close_button());
  if (place == PanelPlace::whole)
    panel.items.push_back(CautionItem{.text = "The sheet can't be drawn here", .advice = "This browser offers no WebGL2, or has lost it. Marks, legs and sums below still work; another browser, or loading the page again, may draw the sheet."});
  parts::add_variation(panel, session);
  panel.items.push_back(legs_table(session));
  panel.items.push_back(marks_table(session.document()));
  return panel;
}

}  // namespace fogsheet
