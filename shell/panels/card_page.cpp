#include "shell/panels/card_page.h"

#include <utility>

#include "core/base/check.h"
#include "core/directions/chain.h"
#include "core/directions/direction_text.h"
#include "core/formats/svg.h"
#include "shell/words_of_compass.h"

namespace fogsheet {
namespace {

/// Heading by compass, its deviation, and the magnetic heading that is: they add up.
TableItem by_compass(const CardPage& page, const DeviationCard& card) {
  TableItem table{.name = "by-compass", .caption = "By compass heading", .columns = {{"compass"}, {"deviation", true}, {"magnetic", true}}};
  for (int deg = 0; deg < 360; deg += page.step_deg) {
    const std::string heading = print_direction(deg, Reference::compass, Rounding::whole_degrees);
    const std::optional<Deviation> deviation = card.at(CompassDirection(deg));
    if (!deviation) {
      table.rows.push_back({heading, words::no_deviation_there(), ""});
      continue;
    }
    const double shown_deg = round_correction_deg(deviation->deg, page.rounding);
    table.rows.push_back({heading, print_correction(shown_deg, page.rounding), print_direction(deg + shown_deg, Reference::magnetic, page.rounding)});
  }
  return table;
}

/// As the chain has it.
TableItem by_magnetic(const CardPage& page, const DeviationCard& card) {
  TableItem table{.name = "by-magnetic", .caption = "To steer", .columns = {{"magnetic"}, {"by compass", true}}};
  for (int deg = 0; deg < 360; deg += page.step_deg) {
    const Chain chain = chain_to_compass(MagneticDirection(deg), {.card = &card}, page.rounding);
    table.rows.push_back({print_direction(deg, Reference::magnetic, Rounding::whole_degrees), words::heading_to_steer(chain, page.rounding)});
  }
  return table;
}

class PageWriter {
 public:
  explicit PageWriter(Panel& panel) : panel_(panel) {}
  void part(const char* title) { panel_.items.push_back(HeadingItem{.text = title, .level = 3}); }
  void line(std::string text, std::string value = "", LineTone tone = LineTone::body) {
    if (!text.empty()) panel_.items.push_back(LineItem{.text = std::move(text), .value = std::move(value), .tone = tone});
  }

 private:
  Panel& panel_;
};

}  // namespace

Result<CardPage> card_page_of(const Boat& boat, const Compass& compass, const LogEntry& entry, std::string variation_source) {
  Result<KeptCard> card = card_from(boat, compass, entry);
  if (!card) return card.problem();
  CardPage page{.card = std::move(card).value()};
  page.curve = curve_of(page.card);
  if (const auto* typed = std::get_if<TypedCard>(&entry.what)) page.by = typed->by;
  const auto* swing = std::get_if<Swing>(&entry.what);
  if (!swing) return page;
  Result<SwingWorked> worked = work_out(*swing);
  SHEET_CHECK(worked.ok(), "a swing that gave a card is worked out again");
  page.curve = curve_of(*swing, *worked);
  page.swing = SwingUsed{.method = swing->method, .place = swing->place, .object = swing->object, .object_nm = swing->object_nm, .variation_source = std::move(variation_source), .fit = worked->fit};
  if (swing->method == SwingMethod::satellite || (swing->method != SwingMethod::unknown_object && swing->reference == Reference::true_north)) {
    page.swing->variation_deg = swing->variation_deg;
    page.swing->variation_sd_deg = swing->variation_sd_deg;
  }
  return page;
}

Date card_due(Date made) {
  const Date due{.year = made.year + k_card_good_for_years, .month = made.month, .day = made.day};
  return is_valid(due) ? due : Date{.year = due.year, .month = due.month, .day = due.day - 1};
}

Panel card_page(const CardPage& page) {
  const KeptCard& kept = page.card;
  const DeviationCard card = kept.card();
  Panel panel{.name = "card-page", .label = "Deviation card", .place = PanelPlace::page};
  PageWriter write(panel);

  panel.items.push_back(HeadingItem{.text = "Deviation card", .beside = kept.boat + " · " + kept.compass + " · " + words::card_made(page)});
  const SheetRect view{0, 0, k_printed_curve.width, k_printed_curve.height};
  panel.items.push_back(FigureItem{.name = "curve", .text = words::curve_said(page), .svg = panel_svg(deviation_curve(page.curve, k_printed_curve), view)});
  panel.items.push_back(by_compass(page, card));
  panel.items.push_back(by_magnetic(page, card));

  write.part("How it was made");
  write.line(words::how_card_made(page));
  if (page.swing) {
    write.line(words::readings_counted(page.curve));
    write.line(words::variation_used(*page.swing));
  }
  write.line(words::curve_key(page.curve), "", LineTone::soft);

  write.part("How good it is");
  write.line("largest deviation", words::largest_deviation(kept));
  if (page.swing) {
    const SwingFit& fit = page.swing->fit;
    write.line("one reading", words::reading_worth(fit));
    for (const Coefficient which : k_coefficients) write.line(words::coefficient_name(which), words::coefficient_figures(fit, which));
    write.line(words::what_doubt_is(), "", LineTone::soft);
  } else {
    write.line(words::worth_not_known());
  }
  write.line(words::heeling_not_measured());

  write.part("Swing again");
  write.line(words::swing_again_after());
  if (kept.field) write.line(words::field_there(*kept.field) + " " + words::swing_again_away());
  write.line(words::swing_again_by(card_due(kept.date)));

  write.part("Before you rely on it");
  write.line(words::card_cautions());
  return panel;
}

}  // namespace fogsheet
