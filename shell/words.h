// Every sentence and label that a user reads. Core gives codes and figures; here they become English, in the trade's words.
#pragma once

#include <span>
#include <string>

#include "core/directions/chain.h"
#include "core/document/history.h"
#include "core/figure/sheet_figure.h"
#include "shell/keeper/keeper.h"
#include "shell/keeper/room.h"
#include "shell/panels/panel.h"
#include "shell/style.h"

namespace fogsheet::words {

/// What is wrong, where, and what to do.
std::string sentence(const Problem& problem);

/// "Undo: add Gull Rock".
std::string label_of(const Label& label);

/// "Mark 3", "Turn 2": the first of its kind that no mark is named.
std::string unused_name(const Document& document, MarkKind kind);
/// "Gull Rock 2": the first that no mark is named.
std::string copy_name(const Document& document, const std::string& name);
std::string kind_label(MarkKind kind);

/// The sheet's name, or its middle where it has none.
std::string sheet_title(const Document& document);
/// What a sheet read off a chart of another or unknown datum says in its margin.
inline std::string datum_remark() { return "not on WGS84: positions may lie some 200 m off those of a satellite receiver"; }
/// @param of_roses  what each rose shows, in their order.
SheetNotes sheet_notes(const Document& document, std::span<const VariationInUse> of_roses, Rounding rounding);

/// A chart's note as it stands in its three fields, and reads back from there: "9°15′W", "2024", "12′E".
struct ChartNoteText {
  std::string value;
  std::string year;
  std::string annual_change;
};
ChartNoteText chart_note_text(const PrintedVariation& note);

/// "9°25′W ± 0.3°"; "none" where there is none. And where it comes from: "by WMM2025 for 2026-06-21".
std::string variation_figures(const VariationInUse& variation);
std::string variation_source(const Document& document, const VariationInUse& variation);
/// Cautions about the variation in use; empty when there is nothing to say.
std::string variation_caution(const VariationInUse& variation);

/// The chain as a column sum, with the reason beside each correction.
/// Why a chain has no row for the deviation; empty where it has one.
std::string no_deviation(const Chain& chain, Rounding rounding);
ColumnSumItem chain_sum(const Chain& chain, Rounding rounding, const VariationInUse& variation);

std::string plain_number(double value);  // "0.25", "23.5"
std::string quoted(const std::string& text);  // "“Gull Rock”"
std::string tenths_sd(double deg);            // "0.3°"
std::string grouped(int number);         // "100 000"
std::string reference_name(Reference reference);  // "true", "magnetic", "compass"
std::string reference_letter(Reference reference);  // "T", "M", "C"
std::string with_letter(double deg, Rounding rounding, Reference reference);  // "096°T"
/// Three figures spoken one by one would be slow: "096 true".
std::string spoken(double deg, Rounding rounding, Reference reference);

/// "leg 2", and with its ends "leg 2, Off Sarn to Off Gannet".
std::string leg_number(const Document& document, LegId leg);
std::string leg_name(const Document& document, LegId leg);

/// A distance as it is read: miles, under a mile cables, under a cable metres.
struct DistanceWords {
  std::string figures;
  std::string unit;
  std::string text() const { return figures + " " + unit; }
};
DistanceWords distance(double distance_nm);

std::string turn_by_tenths();
std::string rings_turned_by_tenths();
std::string to_write();
std::string turned_by(double deg);  // clockwise positive
std::string how_dividers_read(bool on_the_scale);
std::string steps(int count, double step_nm);  // "3 steps of 1.0 nm"

std::string how_rough_method_goes();
std::string mean_of(std::size_t readings);
std::string more_readings_wanted(std::size_t readings);
std::string rough_doubt(double run_nm, double to_either_side_nm);
std::string run_wanted();
std::string readings_cancel();
std::string other_ring(Reference ring_in_use);

std::string no_such_command(const std::string& name);

/// "kept 0612"; while it is under way; and what keeps it from being kept, with what is safe.
std::string kept_at(std::int64_t at_ms, int minutes_east);
std::string being_kept();
std::string not_kept(StoreFault why);
std::string not_kept_advice(StoreFault why);
std::string follows();
std::string onto_a_copy();
/// What kinds of things were found amiss in what was kept: "Found damaged", "Of a newer version".
std::string findings_title(const std::vector<Finding>& found);
/// What they are, sheet by sheet.
std::string findings(const std::vector<Finding>& found, const Sheets& sheets);
/// In the device's own time: "0612" where it is today, "2026-11-24" else.
std::string day_or_time(std::int64_t at_ms, int minutes_east, Date today);
/// "Gull Sound (copy)", cut where a name ends.
std::string copy_of(const std::string& title);
std::string sheet_deleted(const std::string& title);
std::string put_back_for();
/// Where what is in the drawer is, who has it, and for how long.
std::string where_kept(const Keeper& keeper, const Room& room);
std::string further_steps(std::size_t count, bool later);
/// Undo ends where the oldest of so many steps have gone.
std::string oldest_gone();

std::string palette_label(Palette palette);
std::string newer_version_waits();
/// Why the newer version can't be had now.
std::string not_while_unkept();
std::string offline_line(const std::string& state);

std::string status_no_tool();
std::string status_mark_tool();
std::string status_leg_tool(bool has_start);
std::string status_edge_off(bool has_first_end);
std::string status_edge_on();
std::string status_edge_settled();
std::string status_direction(bool set, const std::string& through);
std::string set_here(double deg, Rounding rounding, Reference reference);
std::string set_to_direction(const std::string& through);
std::string write_it_on(const std::string& leg);
std::string read_by_hand();
std::string stale();
std::string reading_stale();
std::string reading_off(double off_deg);
std::string off_by(double off_deg);
std::string read_it_again();
std::string rub_out_reading();
/// As finely as it was read.
Rounding rounding_of(const WrittenReading& written);
std::string draw_line_from(const std::string& name);
std::string own_place_serves();
std::string no_rose_left();
std::string status_rose_tool(std::size_t roses);
std::string status_note_tool();
std::string rose_number(std::size_t place, std::size_t count);  // "1 of 2", or nothing when there is one
std::string status_dividers(bool has_first_point, bool on);

}  // namespace fogsheet::words
