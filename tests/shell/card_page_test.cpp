// The printed card says what the card has: the same figures, three for a heading, a letter for each deviation, and words where
// there is no answer or more than one.
#include "shell/panels/card_page.h"

#include <algorithm>
#include <cmath>

#include "core/directions/chain.h"
#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "doctest/doctest.h"
#include "tests/shell/sample_cards.h"

using namespace fogsheet;

namespace {

template <class Item>
std::vector<Item> all(const Panel& panel) {
  std::vector<Item> found;
  for (const PanelItem& item : panel.items)
    if (const Item* each = std::get_if<Item>(&item)) found.push_back(*each);
  return found;
}

TableItem table(const Panel& panel, const std::string& name) {
  for (const TableItem& each : all<TableItem>(panel))
    if (each.name == name) return each;
  FAIL("no table " << name);
  return {};
}

bool says(const Panel& panel, const std::string& part) {
  for (const LineItem& line : all<LineItem>(panel))
    if ((line.text + " " + line.value).find(part) != std::string::npos) return true;
  for (const HeadingItem& heading : all<HeadingItem>(panel))
    if ((heading.text + " " + heading.beside).find(part) != std::string::npos) return true;
  return false;
}

double typed_deg(const std::string& text) { return parse_direction(text)->deg; }

}  // namespace

TEST_CASE("the rows by compass are the card's own and add up") {
  for (const char* name : {"swung", "typed", "steep", "part"})
    for (const Rounding rounding : {Rounding::whole_degrees, Rounding::tenths})
      for (const int step_deg : {10, 15}) {
        CAPTURE(name);
        CardPage page = sample::card_named(name);
        page.rounding = rounding;
        page.step_deg = step_deg;
        const DeviationCard card = page.card.card();
        const TableItem rows = table(card_page(page), "by-compass");
        REQUIRE(rows.rows.size() == static_cast<std::size_t>(360 / step_deg));
        for (std::size_t i = 0; i < rows.rows.size(); ++i) {
          const CompassDirection heading(static_cast<double>(i) * step_deg);
          const std::vector<std::string>& row = rows.rows[i];
          CHECK(row[0] == print_direction(heading.deg(), Reference::compass, Rounding::whole_degrees));
          const std::optional<Deviation> deviation = card.at(heading);
          if (!deviation) {
            CHECK(row[1] == "not found");
            CHECK(row[2].empty());
            continue;
          }
          CHECK(row[1] == print_correction(deviation->deg, rounding));
          // magnetic = compass + deviation, of the figures as they stand there
          const double added_deg = typed_deg(row[0]) + *parse_correction_deg("deviation", row[1]);
          CHECK(std::abs(reduce_difference_deg(typed_deg(row[2]) - added_deg)) <= 1e-9);
        }
      }
}

TEST_CASE("the rows by magnetic are the headings that courses are made with") {
  const CardPage page = sample::card_named("swung");
  const DeviationCard card = page.card.card();
  const TableItem rows = table(card_page(page), "by-magnetic");
  REQUIRE(rows.rows.size() == 36);
  for (int i = 0; i < 36; ++i) {
    const std::vector<std::string>& row = rows.rows[static_cast<std::size_t>(i)];
    CHECK(row[0] == print_direction(10 * i, Reference::magnetic, Rounding::whole_degrees));
    // From magnetic to compass and back: to the half degree that each of the two is rounded by.
    const CompassDirection steered(typed_deg(row[1]));
    CHECK(std::abs(reduce_difference_deg(to_magnetic(steered, *card.at(steered)).deg() - 10 * i)) <= 1);
  }
}

TEST_CASE("two answers and none are said in words") {
  const TableItem steep = table(card_page(sample::card_named("steep")), "by-magnetic");
  const auto two = std::count_if(steep.rows.begin(), steep.rows.end(), [](const std::vector<std::string>& row) { return row[1].find(" or ") != std::string::npos; });
  CHECK(two > 0);
  const TableItem part = table(card_page(sample::card_named("part")), "by-magnetic");
  const auto none = std::count_if(part.rows.begin(), part.rows.end(), [](const std::vector<std::string>& row) { return row[1] == "no heading"; });
  CHECK(none >= 12);
}

TEST_CASE("a swung card says whose, when, where, how and how good") {
  const CardPage page = sample::card_named("swung");
  const Panel panel = card_page(page);
  CHECK(panel.place == PanelPlace::page);
  for (const char* part : {"Small Hours", "steering compass", "swung 2026-05-12", "off Pellow Quay", "Tolver Light, 3.1 nm off", "12 readings counted, of which 1 does not belong; 1 left out", "9.42°W ± 0.4°, by WMM2025 for 2026-05-12",
                           "23412 nT", "59.3°", "over 15 %", "10°", "By 2028-05-12 at the latest", "Heeling error was not measured", "licensed", "hatched", "diamond", "cross"})
    CHECK_MESSAGE(says(panel, part), part);
  const SwingFit& fit = page.swing->fit;
  CHECK(says(panel, "± " + correction_figures(fit.reading_sd_deg, Rounding::tenths) + "°"));
  for (const Coefficient which : k_coefficients) {
    const std::string size = correction_figures(fit.coefficient_deg(which), Rounding::tenths) + "° ± " + correction_figures(of(fit.se_deg, which), Rounding::tenths) + "°";
    CHECK_MESSAGE(says(panel, (fit.coefficient_deg(which) < 0 ? "−" : "+") + size), size);
  }
  REQUIRE(all<FigureItem>(panel).size() == 1);
  CHECK(all<FigureItem>(panel)[0].text.find("largest") != std::string::npos);
}

TEST_CASE("what was not found says why") {
  CardPage page = sample::card_named("part");
  const Panel part = card_page(page);
  CHECK(says(part, "not found: too few headings") == std::any_of(k_coefficients.begin(), k_coefficients.end(), [&](Coefficient which) { return !page.swing->fit.coefficients_deg[static_cast<std::size_t>(which)]; }));
  page = sample::card_named("swung");
  page.swing->fit.a_found = false;
  page.swing->fit.coefficients_deg[0].reset();
  page.swing->fit.coefficients_deg[4].reset();
  CHECK(says(card_page(page), "A, constant not found: bearing not known"));
  CHECK(says(card_page(page), "E, greatest on N, E, S, W not found: too few headings"));
}

TEST_CASE("a card that was not swung here claims nothing of a swing") {
  const Panel typed = card_page(sample::card_named("typed"));
  for (const char* part : {"adjuster's card of 2024-02-29", "an adjuster in Pellow", "was not stated", "By 2026-02-28 at the latest"}) CHECK_MESSAGE(says(typed, part), part);
  for (const char* part : {"readings", "Variation used", "A, constant", "hatched", "nT"}) CHECK_FALSE_MESSAGE(says(typed, part), part);
  CardPage nought{.card = {.boat = "Small Hours", .compass = "steering compass", .date = {.year = 2026, .month = 5, .day = 12}, .source = CardSource::nought, .points = {{.heading_deg = 0}, {.heading_deg = 90}, {.heading_deg = 180}, {.heading_deg = 270}}}};
  nought.curve = curve_of(nought.card);
  CHECK(says(card_page(nought), "Not measured"));
  CHECK(table(card_page(nought), "by-compass").rows[9] == std::vector<std::string>{"090°C", "0°", "090°M"});
}

TEST_CASE("what gives no card gives no page, and where bearings were magnetic no variation is claimed") {
  Boat boat{.name = "Small Hours", .compasses = {{.id = CompassId{1}, .name = "steering compass", .log = {{EntryId{2}, {}, Remark{.text = "new radio"}}}}}, .next_id = 3};
  CHECK_FALSE(card_page_of(boat, boat.compasses[0], boat.compasses[0].log[0], "").ok());
  Swing swing{.object_deg = 148, .rows = eight_headings()};
  swing.method = SwingMethod::relative_bearing;
  for (SwingRow& row : swing.rows) row.read_deg = CompassDirection(148 - row.heading_deg).deg();
  boat.compasses[0].log[0].what = swing;
  const Result<CardPage> page = card_page_of(boat, boat.compasses[0], boat.compasses[0].log[0], "by WMM2025");
  REQUIRE(page.ok());
  CHECK(says(card_page(*page), "No variation went into it"));
  CHECK_FALSE(says(card_page(*page), "WMM2025"));
  CHECK(says(card_page(*page), "8 readings counted."));
}

TEST_CASE("a card is due two years after it was made") {
  CHECK(card_due({.year = 2026, .month = 5, .day = 12}) == Date{.year = 2028, .month = 5, .day = 12});
  CHECK(card_due({.year = 2024, .month = 2, .day = 29}) == Date{.year = 2026, .month = 2, .day = 28});
}
