// All that is kept as one file, in tests: what is saved into one, and a page that opens it.
#pragma once

#include <algorithm>

#include "core/base/random.h"
#include "shell/keeper/restore.h"
#include "tests/core/random_acts.h"
#include "tests/shell/kept_page.h"
#include "tests/shell/visit.h"

namespace fogsheet {

inline constexpr std::int64_t k_made_ms = 1'795'700'000'000;

/// Sheets with pasts, one of them taken out, and a boat.
struct KeptDesk {
  Sheets sheets{sheet_named("demo"), k_start_ms};
  Boats boats;

  explicit KeptDesk(std::uint64_t seed, int count = 4) {
    Random random(seed);
    for (int i = 0; i < count; ++i) {
      sheets.lay_down(random_document(random, 3), {Act::new_sheet, random_name(random)}, k_start_ms + i);
      for (int act = 0; act < 5; ++act) do_random_act(random, sheets.in_hand().history);
      if (i % 2 == 1) sheets.in_hand().history.undo();
    }
    if (count > 1) sheets.remove(sheets.all()[1]->key, k_start_ms + 50);
    BoatHistory& boat = boats.find(boats.add({.name = "Small Hours"}, k_start_ms))->history;
    boat.commit({.name = "Small Hours II"}, {Act::name_boat, "Small Hours II"});
  }

  std::vector<std::uint8_t> file() { return backup_bytes(rows_of(sheets, boats, Keeper()), k_made_ms); }
};

inline const Value k_backup_sheet = Value::object({{"mid_lat_deg", 44}, {"mid_lon_deg", -31}, {"scale", 100'000}, {"paper", "A4-across"}, {"name", "Gull"}});

/// The page's own file, as it was saved.
inline std::vector<std::uint8_t> saved(Visit& visit, const std::vector<PhotographInFile>& photographs = {}) {
  visit.done("save-all");
  CHECK(visit.platform.saved_files.empty());  // not before the page has told what photographs there are
  REQUIRE(visit.platform.photographs_asked_for == 1);
  for (const PhotographInFile& each : photographs) visit.app.photograph_listed(each);
  visit.app.photographs_listed(true);
  REQUIRE(visit.platform.saved_files.size() == 1);
  CHECK(visit.platform.saved_files.begin()->first == "Fogsheet 2026-11-25.fogsheets");
  const std::string& text = visit.platform.saved_files.begin()->second;
  return {text.begin(), text.end()};
}

inline std::string_view head_of(const std::vector<std::uint8_t>& file) { return {reinterpret_cast<const char*>(file.data()), std::min<std::size_t>(200, file.size())}; }

/// @param file  all of it
inline void open(Visit& visit, const std::vector<std::uint8_t>& file) {
  REQUIRE(visit.app.file_chosen("all.fogsheets", static_cast<double>(file.size()), head_of(file)) == FileRoad::all);
  visit.app.backup_read(std::span(file).first(static_cast<std::size_t>(visit.app.backup_bytes_wanted())));
  REQUIRE(visit.panel("file"));
}

inline bool says(const Panel& panel, const std::string& words) {
  for (const PanelItem& item : panel.items) {
    if (const auto* line = std::get_if<LineItem>(&item); line && line->text.find(words) != std::string::npos) return true;
    if (const auto* caution = std::get_if<CautionItem>(&item); caution && (caution->text + caution->advice).find(words) != std::string::npos) return true;
  }
  return false;
}

}  // namespace fogsheet
