// A leg's triangle by hand: the steps with their figures, and what a settled edge reads beside what was worked out.
#include <cmath>

#include "doctest/doctest.h"
#include "shell/plotted_passage.h"
#include "shell/session.h"
#include "shell/words_of_triangle.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

void type(Visit& visit, const std::string& field, const std::string& text) { visit.done("type-passage", Value::object({{"field", field}, {"text", text}})); }

/// The demo's legs at 5 kn from 0640, in a stream of 352 0.7; the second with its triangle.
void plan_demo(Visit& visit) {
  visit.done("make-passage");
  for (const auto& [field, text] : {std::pair{"speed", "5"}, {"time", "0640"}, {"zone", "UTC+1"}, {"stream/kind", "steady"}, {"stream/set", "352"}, {"stream/drift", "0.7"}, {"leg/1/triangle", "yes"}})
    type(visit, field, text);
  visit.done("open-passage-leg", Value::object({{"leg", 1.0}}));
}

std::string lines(Visit& visit) {
  const Panel* slip = visit.panel("passage-leg");
  REQUIRE(slip);
  std::string all;
  for (const PanelItem& item : slip->items)
    if (const LineItem* line = std::get_if<LineItem>(&item)) all += line->text + "\n";
  return all;
}

}  // namespace

TEST_CASE("a leg's slip tells how its triangle is laid off, with the figures") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  const std::string told = lines(visit);
  // Half an hour of 0.7 kn and of 5 kn; of 096.4 the law of sines makes 104.2.
  CHECK(told.find("From Off Sarn lay off the stream of ½ h: 0.35 nm towards 352°T.") != std::string::npos);
  CHECK(told.find("the run of ½ h, 2.50 nm,") != std::string::npos);
  CHECK(told.find("it reads the water track, worked out 104.2°T.") != std::string::npos);
  CHECK(told.find("The edge reads") == std::string::npos);
  type(visit, "leg/1/triangle", "no");
  CHECK(lines(visit).find("lay off") == std::string::npos);
}

TEST_CASE("an edge beside what was worked out: the difference, either way round, and nothing where it lies some other way") {
  const LaidTriangle triangle{.minutes = 30, .stream = {TrueDirection(352), 0.7}, .water_track = TrueDirection(104.3), .speed_kn = 5};
  const auto beside = [&](double edge_deg) { return words::edge_beside_worked_out(triangle, TrueDirection(edge_deg), Rounding::whole_degrees).value_or(""); };
  CHECK(beside(103) == "The edge reads 103°T, worked out 104.3°T: 1.3° less.");
  CHECK(beside(286) == "The edge reads 106°T, worked out 104.3°T: 1.7° more.");
  CHECK(beside(104.3) == "The edge reads 104°T, worked out 104.3°T: they agree.");
  CHECK(beside(60).empty());
  CHECK(beside(352).empty());
}
