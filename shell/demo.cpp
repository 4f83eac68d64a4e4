#include "shell/demo.h"

#include "core/base/check.h"
#include "core/document/actions.h"

namespace fogsheet {
namespace {

// An invented place in open water; marks to a tenth of a minute, turning points to a hundredth, as they would be read off.
struct DemoMark {
  const char* name;
  double lat_deg, lat_min;
  double lon_deg, lon_min;  // west
  MarkKind kind;
  double radius_nm;
};

constexpr DemoMark k_marks[] = {
    {"Off Sarn", 44, 10.51, 31, 22.30, MarkKind::turn, 0},
    {"Off Gannet", 44, 10.09, 31, 17.13, MarkKind::turn, 0},
    {"Off Pellow", 44, 8.49, 31, 27.18, MarkKind::turn, 0},
    {"Off Tolver", 44, 13.16, 31, 12.98, MarkKind::turn, 0},
    {"Pellow Quay", 44, 8.3, 31, 27.4, MarkKind::landmark, 0},
    {"Sarn Beacon", 44, 10.9, 31, 22.4, MarkKind::landmark, 0},
    {"Gannet Post", 44, 9.7, 31, 17.0, MarkKind::landmark, 0},
    {"Tolver Light", 44, 12.8, 31, 12.5, MarkKind::light, 0},
    {"Morna Perch", 44, 13.1, 31, 19.6, MarkKind::landmark, 0},
    {"The Kettle", 44, 10.8, 31, 14.2, MarkKind::danger, 0.20},
    {"Hask Rock", 44, 11.8, 31, 25.9, MarkKind::danger, 0.25},
};

}  // namespace

Document demo_sheet() {
  const Result<Document> made = made_sheet({.name = "The Sunder Ground",
                                            .mid_lat_deg = 44 + 8.9 / 60,
                                            .mid_lon_deg = -(31 + 18.6 / 60),
                                            .scale = 100'000,
                                            .paper = Paper::a4_across,
                                            .date = {.year = 2026, .month = 6, .day = 21}});
  SHEET_CHECK(made.ok(), "the demo sheet can be made");
  History history(*made);
  MarkId marks[std::size(k_marks)];
  for (std::size_t i = 0; i < std::size(k_marks); ++i) {
    const DemoMark& mark = k_marks[i];
    const Result<MarkId> added = add_mark(history, {.name = mark.name, .lat_deg = mark.lat_deg + mark.lat_min / 60, .lon_deg = -(mark.lon_deg + mark.lon_min / 60),
                                                    .kind = mark.kind, .radius_nm = mark.radius_nm});
    SHEET_CHECK(added.ok(), "the demo's marks lie on its sheet");
    marks[i] = *added;
  }
  // Pellow to Sarn to Gannet to Tolver.
  const std::pair<int, int> legs[] = {{2, 0}, {0, 1}, {1, 3}};
  for (const auto& [from, to] : legs) SHEET_CHECK(add_leg(history, marks[from], marks[to]).ok(), "the demo's legs join its marks");

  Document demo = history.now();
  Rose rose = demo.roses.at(0);
  // Below the middle leg, clear of it by more than the straight-edge is wide.
  rose.at = quantise(projection_of(demo).to_position({126, 150}));
  demo.roses = demo.roses.replaced(rose);
  return demo;
}

}  // namespace fogsheet
