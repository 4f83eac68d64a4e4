#include "shell/words.h"

#include <cmath>

#include "core/base/clock_text.h"
#include "core/base/number_text.h"
#include "core/base/utf8.h"
#include "core/directions/direction_figures.h"
#include "core/positions/position_figures.h"

namespace fogsheet::words {
namespace {

std::string number(double value) {
  if (value == std::round(value)) return (value < 0 ? "−" : "") + std::to_string(static_cast<long long>(std::abs(value)));
  const long long thousandths = std::llround(value * 1000);
  std::string digits = std::to_string(std::abs(thousandths % 1000));
  digits.insert(0, 3 - digits.size(), '0');
  while (digits.back() == '0') digits.pop_back();
  return (thousandths < 0 ? "−" : "") + std::to_string(std::abs(thousandths / 1000)) + "." + digits;
}

/// Thousands parted by a thin blank: "1 : 100 000".
struct LocalTime {
  Date day;
  ClockTime time;
};

LocalTime local_time(std::int64_t at_ms, int minutes_east) {
  constexpr std::int64_t k_minutes_a_day = 1440;
  const std::int64_t minutes = at_ms / 60'000 + minutes_east;
  const std::int64_t day = minutes / k_minutes_a_day - (minutes % k_minutes_a_day < 0);
  return {date_of_unix_day(day), {static_cast<int>(minutes - day * k_minutes_a_day)}};
}

std::string quoted(const std::string& text) { return text.empty() ? "This place" : "“" + text + "”"; }

const std::string& text_of(const Problem& problem, std::size_t i) {
  static const std::string none;
  return i < problem.texts.size() ? problem.texts[i] : none;
}

double number_of(const Problem& problem, std::size_t i) { return i < problem.numbers.size() ? problem.numbers[i] : 0; }

std::string tenths_sd(double deg) { return number(std::round(deg * 10) / 10) + "°"; }

std::string things_off_sheet(const Problem& problem) {
  const std::size_t count = static_cast<std::size_t>(number_of(problem, 0));
  std::string list;
  for (std::size_t i = 0; i < problem.texts.size(); ++i) list += (i == 0 ? "" : i + 1 == count ? " and " : ", ") + quoted(problem.texts[i]);
  if (count > problem.texts.size()) list += " and " + std::to_string(count - problem.texts.size()) + " more";
  return list + " would lie off the sheet: a smaller scale, a larger paper or another middle keeps " + (count == 1 ? "it" : "them") + " on.";
}

}  // namespace

std::string sentence(const Problem& problem) {
  const auto text = [&](std::size_t i) { return text_of(problem, i); };
  const auto value = [&](std::size_t i) { return number(number_of(problem, i)); };
  const std::string likely = problem.suggestion.empty() ? "" : " Did you mean " + problem.suggestion + "?";
  switch (problem.fault) {
    case Fault::latitude_out_of_range: return "Latitude " + value(0) + "° is too far from the equator: a sheet reaches " + value(1) + "° either side.";
    case Fault::longitude_out_of_range: return "Longitude " + value(0) + "° is out of range: up to " + value(1) + "° east or west." + likely;
    case Fault::direction_out_of_range: return value(0) + "° is no direction: from 000 to 359." + likely;
    case Fault::number_out_of_range: return "The " + text(0) + " " + value(0) + " is out of range: from " + value(1) + " to " + value(2) + ".";
    case Fault::number_missing: return "A number is missing: " + text(0) + ".";
    case Fault::reference_not_usable:
      if (text(0) == "compass") return "There is no compass course: deviation is not entered.";
      if (text(0) == "magnetic") return "There is no variation here to make a true direction from a magnetic one.";
      return quoted(text(0)) + " is no kind of direction: true or magnetic.";
    case Fault::entry_empty: return "Nothing was entered for the " + text(0) + ".";
    case Fault::entry_too_long: return "This is too long for a " + text(0) + ".";
    case Fault::entry_unreadable: return quoted(text(1)) + " has no meaning in a " + text(0) + "." + likely;
    case Fault::entry_part_missing: return "The " + text(0) + " lacks its " + text(1) + "." + likely;
    case Fault::entry_part_twice: return "The " + text(0) + " has two of " + text(1) + ": leave one out." + likely;
    case Fault::entry_ambiguous: return "This could be " + text(1) + " or " + text(2) + ": write it so that it is only one.";
    case Fault::minutes_out_of_range: return "Minutes are under " + value(1) + ": " + value(0) + " is too many." + likely;
    case Fault::seconds_out_of_range: return "Seconds are under " + value(1) + ": " + value(0) + " is too many." + likely;
    case Fault::hours_out_of_range: return "Hours are under " + value(1) + ": " + value(0) + " is too many." + likely;
    case Fault::unit_unknown: return quoted(text(1)) + " is no unit of a " + text(0) + " known here.";
    case Fault::datum_unknown: return "Only WGS 84 is read here, not " + quoted(text(0)) + ".";
    case Fault::course_never_there: return "The course " + value(0) + "° never leads to latitude " + value(1) + "°.";
    case Fault::card_heading_twice: return "Heading " + value(0) + "° stands twice in the card: leave one out.";
    case Fault::date_unreadable: return quoted(text(0)) + " is no date: write year, month and day as 2026-06-21.";
    case Fault::date_outside_models:
      return "No variation for the year " + value(0) + ": the models reach from " + value(1) + " to " + value(2) + ". Set another date, or enter the variation printed on your chart.";
    case Fault::place_off_sheet: return quoted(text(0)) + " lies off this sheet: place it inside the border, or make a sheet that reaches it.";
    case Fault::no_marks_to_fit: return "There are no marks on the sheet in hand to fit one to.";
    case Fault::sheet_too_wide: return "This is too wide for one sheet: it would take 1:" + value(0) + ", and 1:" + value(1) + " is the smallest scale. Take a larger paper or places nearer together.";
    case Fault::things_off_sheet: return things_off_sheet(problem);
    case Fault::name_empty: return "A mark needs a name.";
    case Fault::name_too_long: return "The name has " + value(0) + " characters; up to " + value(1) + " fit.";
    case Fault::note_empty: return "A note needs words.";
    case Fault::note_too_long: return "The note has " + value(0) + " characters; up to " + value(1) + " fit.";
    case Fault::mark_already_there: return quoted(text(0)) + " stands at this very place already.";
    case Fault::lines_do_not_cross: return "The lines through " + quoted(text(0)) + " and " + quoted(text(1)) + " run side by side (" + value(0) + "° apart): they cross nowhere that can be trusted.";
    case Fault::mark_unknown: return "There is no such mark on this sheet (" + text(0) + ").";
    case Fault::leg_unknown: return "There is no such leg on this sheet (" + text(0) + ").";
    case Fault::sheet_unknown: return "There is no sheet of that key in the drawer.";
    case Fault::rose_unknown: return "There is no such rose on this sheet (" + text(0) + ").";
    case Fault::note_unknown: return "There is no such note on this sheet (" + text(0) + ").";
    case Fault::nothing_written: return "Nothing is written on this leg.";
    case Fault::leg_ends_missing: return "Choose the mark the leg begins at and the one it ends at.";
    case Fault::leg_of_no_length: return "A leg needs two places: both ends are " + quoted(text(0)) + ".";
    case Fault::leg_already_there: return "There is a leg from " + quoted(text(0)) + " to " + quoted(text(1)) + " already.";
    case Fault::paper_unknown: return quoted(text(0)) + " is no paper known here.";
    case Fault::kind_unknown: return quoted(text(0)) + " is no kind of mark: landmark, light, turn, danger or other.";
    case Fault::radius_missing: return "A danger needs the radius of the ring to keep out of, in nautical miles.";
    case Fault::table_full: return "No more " + text(0) + " fit on a sheet: " + value(0) + " at the most.";
    case Fault::no_edge: return "The straight-edge is not on the sheet: press one end, then the other.";
    case Fault::no_rose: return "There is no rose on this sheet.";
    case Fault::edge_of_no_length: return "The straight-edge needs two places: its ends are too close together.";
    case Fault::edge_not_settled: return "Nothing is read yet: slide the edge to a rose first.";
    case Fault::edge_on_no_leg: return "The edge was not laid along that leg: lay it on the leg's two ends, then slide it to a rose.";
    case Fault::no_line_to_draw: return "Slide the edge to a mark first: the line is drawn from there.";
    case Fault::no_dividers: return "The dividers are not on the sheet: press one point, then the other.";
    case Fault::dividers_shut: return "The dividers need two places: their points are too close together.";
    case Fault::no_leg_to_step: return "The dividers stand at no leg: set a point down on an end of the leg to step along.";
    case Fault::no_undo: return "There is nothing to undo.";
    case Fault::no_redo: return "There is nothing to redo.";
    case Fault::text_empty: return "There is nothing to open: the text is empty. The sheet stays as it was.";
    case Fault::text_not_ours: return "This is no sheet: a sheet's text begins with 1: and has no blanks. The sheet in hand stays as it was.";
    case Fault::text_newer:
      return "This sheet was made by a newer version (format " + value(0) + "; this one reads " + value(1) + "). Load the page anew when you are online. The sheet in hand stays as it was.";
    case Fault::text_bad_character: return "The text is damaged at character " + number(static_cast<double>(problem.begin) + 1) + ". Copy it again, whole. The sheet in hand stays as it was.";
    case Fault::text_too_long: return "The text is too long to be a sheet: " + value(0) + " characters, at most " + value(1) + ". The sheet in hand stays as it was.";
    case Fault::text_cut_short: return "The text ends too early: a part was lost on the way. Copy it again, whole. The sheet in hand stays as it was.";
    case Fault::text_checksum: return "The text is damaged: its check figure does not fit. Copy it again, whole. The sheet in hand stays as it was.";
    case Fault::text_section: return "The text is damaged in its part “" + text(0) + "”. The sheet in hand stays as it was.";
    case Fault::text_missing_section: return "The text lacks its part “" + text(0) + "”. Copy it again, whole. The sheet in hand stays as it was.";
  }
  return "That can't be done.";
}

std::string label_of(const Label& label) {
  switch (label.act) {
    case Act::new_sheet: return "new sheet";
    case Act::open_sheet: return "open a sheet";
    case Act::add_mark: return "add " + label.subject;
    case Act::move_mark: return "move " + label.subject;
    case Act::remove_mark: return "rub out " + label.subject;
    case Act::add_leg: return "leg to " + label.subject;
    case Act::set_date: return "set the date";
    case Act::set_chart_note: return "set the printed variation";
    case Act::clear_chart_note: return "clear the printed variation";
    case Act::reshape_sheet: return "change the sheet's size";
    case Act::describe_sheet: return "describe the sheet";
    case Act::change_mark: return "change " + label.subject;
    case Act::duplicate_mark: return "copy " + label.subject;
    case Act::reorder_mark: return "move " + label.subject + " in the list";
    case Act::insert_mark: return "put " + label.subject + " in a leg";
    case Act::reorder_leg: return "move the leg to " + label.subject + " in the list";
    case Act::reverse_leg: return "turn the leg round, to " + label.subject;
    case Act::remove_leg: return "rub out the leg to " + label.subject;
    case Act::write_on_leg: return "write the reading on the leg to " + label.subject;
    case Act::rub_out_reading: return "rub out the reading of the leg to " + label.subject;
    case Act::add_rose: return "add a rose";
    case Act::move_rose: return "move a rose";
    case Act::change_rose: return "change a rose";
    case Act::remove_rose: return "rub out a rose";
    case Act::add_note: return "write “" + label.subject + "”";
    case Act::change_note: return "change “" + label.subject + "”";
    case Act::move_note: return "move “" + label.subject + "”";
    case Act::remove_note: return "rub out “" + label.subject + "”";
  }
  return "the last step";
}

std::string kind_label(MarkKind kind) {
  switch (kind) {
    case MarkKind::landmark: return "landmark";
    case MarkKind::light: return "light";
    case MarkKind::turn: return "turning point";
    case MarkKind::danger: return "danger";
    case MarkKind::other: return "other";
  }
  return "other";
}

namespace {

// "Turn 3" after "Turn ": 3; nothing for any other name.
std::optional<std::size_t> number_after(const std::string& stem, const std::string& name) {
  constexpr std::size_t k_most_figures = 9;
  if (name.size() <= stem.size() || name.size() > stem.size() + k_most_figures || name.compare(0, stem.size(), stem) != 0) return std::nullopt;
  std::size_t value = 0;
  for (std::size_t i = stem.size(); i < name.size(); ++i) {
    if (name[i] < '0' || name[i] > '9') return std::nullopt;
    value = value * 10 + static_cast<std::size_t>(name[i] - '0');
  }
  return value;
}

// The stem with the least number from `first` on that makes a name no mark has.
std::string with_least_number(const Document& document, const std::string& stem, std::size_t first) {
  std::vector<bool> taken(document.marks.size() + 1);
  for (const Mark& mark : document.marks) {
    const std::optional<std::size_t> number = number_after(stem, mark.name);
    if (number && *number >= first && *number - first < taken.size()) taken[*number - first] = true;
  }
  std::size_t number = first;
  while (taken[number - first]) ++number;
  return stem + std::to_string(number);
}

}  // namespace

std::string unused_name(const Document& document, MarkKind kind) {
  return with_least_number(document, kind == MarkKind::turn ? "Turn " : "Mark ", 1);
}

std::string copy_name(const Document& document, const std::string& name) { return with_least_number(document, name + " ", 2); }

std::string sheet_title(const Document& document) {
  return document.sheet.name.empty() ? position_figures(unquantise(document.sheet.middle), 0) : document.sheet.name;
}

namespace {

RoseNote rose_note(const Document& document, const VariationInUse& variation, Rounding rounding) {
  RoseNote note{.used = variation.used};
  if (!variation.value) {
    note.lines = {"no variation"};
    return note;
  }
  const double change = variation.annual_change_min;
  const long minutes = std::lround(std::abs(change));
  note.lines = {degrees_minutes_text(variation.value->deg) + " " + std::to_string(document.sheet.date.year) + " (" + std::to_string(minutes) + "′" + (minutes == 0 ? "" : change > 0 ? "E" : "W") + ")",
                "used as " + correction_figures(variation.used->deg, rounding) + "°" + east_west(variation.used->deg, rounding)};
  return note;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t start = 0; start < text.size();) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    lines.push_back(text.substr(start, end - start));
    start = end + 1;
  }
  return lines;
}

}  // namespace

SheetNotes sheet_notes(const Document& document, std::span<const VariationInUse> of_roses, Rounding rounding) {
  SheetNotes notes;
  notes.title = sheet_title(document);
  notes.subtitle = "no soundings, no coast: only what is marked";
  notes.made_as = "Mercator, " + document.sheet.datum + " · 1 : " + grouped(document.sheet.scale) + " at " + latitude_figures(unquantise(document.sheet.middle).lat_deg, 1);
  notes.made_as += std::string(" · signs: set ") + (document.sheet.signs == SignSet::b ? "B" : "A");
  notes.remarks = lines_of(document.sheet.note);
  if (document.sheet.datum != "WGS84") notes.remarks.insert(notes.remarks.begin(), datum_remark());
  for (const VariationInUse& variation : of_roses) notes.roses.push_back(rose_note(document, variation, rounding));
  return notes;
}

ChartNoteText chart_note_text(const PrintedVariation& note) {
  const double change = note.annual_change_min;
  const std::string minutes = number(std::round(std::abs(change) * 1000) / 1000);
  // In whole minutes as charts print it; a value from elsewhere in degrees, so that it reads back the same.
  const double value_min = note.value_deg * 60;
  const bool whole_minutes = std::abs(value_min - std::round(value_min)) < 1e-6;
  const std::string degrees = number(std::abs(note.value_deg)) + "°" + (note.value_deg < 0 ? "W" : "E");
  return {.value = whole_minutes ? degrees_minutes_text(note.value_deg) : degrees, .year = std::to_string(note.year),
          .annual_change = change == 0 ? "0" : minutes + "′" + (change > 0 ? "E" : "W")};
}

std::string variation_figures(const VariationInUse& variation) {
  return variation.value ? degrees_minutes_text(variation.value->deg) + " ± " + tenths_sd(variation.uncertainty_deg) : "none";
}

std::string variation_source(const Document& document, const VariationInUse& variation) {
  const std::string day = iso_date(document.sheet.date);
  if (!variation.value) return "for " + day;
  if (variation.source == VariationSource::printed) return "as printed on your chart, carried to " + day;
  return (decimal_year(document.sheet.date) >= k_wmm2025_from_year ? "by the World Magnetic Model (WMM2025) for " : "by the reference field IGRF-14 for ") + day;
}

std::string variation_caution(const VariationInUse& variation) {
  if (variation.problem) return sentence(*variation.problem);
  if (variation.zone == FieldZone::blackout) return "A magnetic compass can't be relied on here: the field's horizontal part is under 2 000 nT. No variation is shown.";
  if (variation.zone == FieldZone::caution) return "A magnetic compass is sluggish here: the field's horizontal part is under 6 000 nT. Take the variation with caution.";
  return "";
}

namespace {

std::string reason_of(const ChainRow& row) {
  const bool east = row.exact_deg > 0;
  if (row.applied_sign == 0) return "nought";
  const std::string act = row.applied_sign > 0 ? "add" : "subtract";
  switch (row.term) {
    case ChainTerm::variation:
    case ChainTerm::deviation: return (east ? "east: " : "west: ") + std::string(east ? "reads less, " : "reads more, ") + act;
    case ChainTerm::leeway: return act;
    default: return "";
  }
}

struct TermWords {
  const char* word;
  const char* letter;
};

TermWords words_of(ChainTerm term) {
  switch (term) {
    case ChainTerm::ground_track: return {"ground track", "°T"};
    case ChainTerm::stream: return {"stream", "°"};
    case ChainTerm::water_track: return {"water track", "°T"};
    case ChainTerm::leeway: return {"leeway", "°"};
    case ChainTerm::true_direction: return {"true", "°T"};
    case ChainTerm::variation: return {"variation", "°"};
    case ChainTerm::magnetic_direction: return {"magnetic", "°M"};
    case ChainTerm::deviation: return {"deviation", "°"};
    case ChainTerm::compass_direction: return {"compass", "°C"};
  }
  return {"", ""};
}

bool is_correction(ChainTerm term) {
  return term == ChainTerm::stream || term == ChainTerm::leeway || term == ChainTerm::variation || term == ChainTerm::deviation;
}

}  // namespace

ColumnSumItem chain_sum(const Chain& chain, Rounding rounding, const VariationInUse& variation) {
  ColumnSumItem sum{.name = "chain", .caption = "The sum"};
  for (const ChainRow& row : chain.rows) {
    const TermWords term = words_of(row.term);
    ColumnSumItem::Row line{.word = term.word};
    if (is_correction(row.term)) {
      const std::string side = east_west(row.shown_deg, rounding);
      line.kind = SumRow::correction;
      line.reason = reason_of(row);
      line.sign = row.applied_sign > 0 ? "+" : row.applied_sign < 0 ? "−" : "";
      line.figures = correction_figures(row.shown_deg, rounding);
      line.letter = std::string(term.letter) + (row.term == ChainTerm::variation || row.term == ChainTerm::deviation ? side : "");
    } else {
      line.kind = sum.rows.empty() ? SumRow::direction : SumRow::result;
      line.figures = direction_figures(row.shown_deg, rounding);
      line.letter = term.letter;
      if (row.by_tenths_deg) line.beside = direction_figures(*row.by_tenths_deg, Rounding::tenths) + " by tenths";
    }
    sum.rows.push_back(std::move(line));
  }
  if (!variation.value) sum.rows.push_back({.kind = SumRow::correction, .word = "variation", .beside = "none here"});
  if (!chain.deviation_entered && variation.value) sum.rows.push_back({.kind = SumRow::correction, .word = "deviation", .beside = "not entered"});
  return sum;
}

std::string plain_number(double value) { return number(value); }

std::string grouped(int value) {
  std::string text = std::to_string(value);
  for (int i = static_cast<int>(text.size()) - 3; i > 0; i -= 3) text.insert(static_cast<std::size_t>(i), " ");
  return text;
}

std::string reference_name(Reference reference) { return reference == Reference::true_north ? "true" : reference == Reference::magnetic ? "magnetic" : "compass"; }

std::string with_letter(double deg, Rounding rounding, Reference reference) {
  const char* letter = reference == Reference::true_north ? "°T" : reference == Reference::magnetic ? "°M" : "°C";
  return direction_figures(deg, rounding) + letter;
}

std::string spoken(double deg, Rounding rounding, Reference reference) {
  const char* word = reference == Reference::true_north ? " true" : reference == Reference::magnetic ? " magnetic" : " compass";
  return direction_figures(deg, rounding) + word;
}

std::string leg_number(const Document& document, LegId leg) {
  int number = 0;
  for (const Leg& each : document.legs) {
    ++number;
    if (each.id == leg) break;
  }
  return "leg " + std::to_string(number);
}

std::string leg_name(const Document& document, LegId leg) {
  const Leg& found = *document.legs.find(leg);
  return leg_number(document, leg) + ", " + document.marks.find(found.from)->name + " to " + document.marks.find(found.to)->name;
}

DistanceWords distance(double distance_nm) {
  constexpr double k_cables_per_nm = 10, k_metres_per_nm = 1852;
  // What rounds to a whole mile or cable is one.
  if (distance_nm >= 0.995) return {distance_figures(distance_nm), "nm"};
  if (distance_nm >= 0.0995) return {print_fixed(distance_nm * k_cables_per_nm, 1), "cables"};
  return {print_fixed(distance_nm * k_metres_per_nm, 0), "m"};
}

std::string how_dividers_read(bool on_the_scale) {
  return on_the_scale ? "On the latitude scale, level with the work: count the minutes between the points." : "As the latitude scale has it level with the work.";
}

std::string steps(int count, double step_nm) { return std::to_string(count) + (count == 1 ? " step of " : " steps of ") + distance(step_nm).text(); }

std::string how_rough_method_goes() { return "Look along the line and read its direction off a ring by eye, several times, quickly and each as if it were the first."; }
std::string mean_of(std::size_t readings) { return readings == 1 ? "one reading" : "mean of " + std::to_string(readings); }
std::string more_readings_wanted(std::size_t readings) { return readings == 1 ? "Two more at the least, to see how far they lie apart." : "One more at the least, to see how far they lie apart."; }
std::string rough_doubt(double run_nm, double to_either_side_nm) {
  // Beside a distance in miles it is in miles too, unless there would be nothing left of it.
  constexpr double k_least_tenth_nm = 0.05;
  const std::string side = to_either_side_nm >= k_least_tenth_nm ? distance_figures(to_either_side_nm) + " nm" : distance(to_either_side_nm).text();
  return "Over " + distance(run_nm).text() + " that is " + side + " to either side, two times in three.";
}
std::string run_wanted() { return "Enter the distance to run to see what that means at its end."; }
std::string readings_cancel() { return "These readings point all ways: no direction is their mean. Take them again."; }
std::string other_ring(Reference ring_in_use) {
  return std::string("The readings so far are of the ") + (ring_in_use == Reference::true_north ? "true" : "magnetic") + " ring: read all of them off one.";
}

std::string no_such_command(const std::string& name) { return "There is no command “" + name + "”."; }
std::string link_copied() { return "The link is copied: paste it into a message to yourself or to your crew."; }
std::string link_not_copied() { return "The link could not be copied. It stands under More: select it and copy it by hand."; }

std::string day_or_time(std::int64_t at_ms, int minutes_east, Date today) {
  const LocalTime at = local_time(at_ms, minutes_east);
  return at.day == today ? print_clock_time(at.time) : iso_date(at.day);
}

std::string kept_at(std::int64_t at_ms, int minutes_east) { return "kept " + print_clock_time(local_time(at_ms, minutes_east).time); }

std::string being_kept() { return "keeping"; }

std::string not_kept(StoreFault why) {
  switch (why) {
    case StoreFault::none: break;
    case StoreFault::missing: return "Nothing is kept here: this browser gives the page no room, as private windows do";
    case StoreFault::silent: return "Nothing is kept yet: the browser's store does not answer";
    case StoreFault::full: return "Not kept: the device has no room left for it";
    case StoreFault::refused: return "Not kept: the browser could not write it";
    case StoreFault::taken:
    case StoreFault::elsewhere: return "Open in another tab: what is changed here is not kept";
  }
  return "Not kept";
}

std::string not_kept_advice(StoreFault why) {
  if (why == StoreFault::elsewhere || why == StoreFault::taken) return "Go on in the other tab, or save this sheet as a file or its link before you leave.";
  if (why == StoreFault::missing || why == StoreFault::silent) return "Save the sheet as a file or copy its link before you leave.";
  return "It is tried again by itself. Until then save the sheet as a file, or copy its link.";
}

std::string findings(const std::vector<Finding>& found, const Sheets& sheets) {
  std::string all;
  for (const Finding& each : found) {
    const SheetInDrawer* sheet = sheets.find(each.sheet);
    const std::string name = sheet ? sheet_title(sheet->history.now()) : "";
    if (!all.empty()) all += " ";
    switch (each.kind) {
      case Finding::Kind::newer: all += "A sheet was kept by a newer version of this page: it is left as it is, load the page again to open it."; break;
      case Finding::Kind::past_lost: all += name + " was damaged where it is kept: it is here as it was, without its past. The damaged record is kept too."; break;
      case Finding::Kind::steps_lost: all += "The last steps of " + name + " were damaged where they are kept: the sheet is here as it was before them. The damaged records are kept too."; break;
      case Finding::Kind::unreadable: all += "A kept sheet is damaged and can't be read: it is left as it is."; break;
    }
  }
  return all;
}

std::string copy_of(const std::string& title) {
  const std::string copy = " (copy)";
  std::string_view kept(title);
  while (kept.size() + copy.size() > k_most_name_bytes || !is_utf8(kept)) kept.remove_suffix(1);
  return std::string(kept) + copy;
}

std::string sheet_deleted(const std::string& title) { return quoted(title) + " is out of the drawer. It can be put back for 30 days."; }

std::string file_name(const Document& document) {
  // What some file system or other does not take in a name.
  constexpr std::string_view k_awkward = "\\/:*?\"<>|";
  std::string name;
  for (const char c : sheet_title(document)) {
    if (static_cast<unsigned char>(c) < ' ' || c == 0x7F) continue;
    name += k_awkward.find(c) == std::string_view::npos ? c : '-';
  }
  return name + ".fogsheet";
}

std::string put_back_for() { return "for 30 days"; }

std::string where_kept(const Keeper& keeper) {
  const Keeping keeping = keeper.keeping();
  if (keeping == Keeping::failed || keeping == Keeping::off) return not_kept(keeper.fault()) + ".";
  return "Kept in this browser, on this device, and nowhere else: clearing its data takes them away. Save what matters as files.";
}

std::string further_steps(std::size_t count, bool later) { return std::to_string(count) + (count == 1 ? " step " : " steps ") + (later ? "further on." : "further back."); }

std::string oldest_gone() { return "Only the last 10 000 steps can be undone: the oldest have gone."; }

std::string palette_label(Palette palette) {
  switch (palette) {
    case Palette::day: return "Day";
    case Palette::dusk: return "Dusk";
    case Palette::night: return "Night";
    case Palette::high_contrast: return "High contrast";
  }
  return "Day";
}

std::string offline_line(const std::string& state) {
  if (state == "ready") return "Kept for use without a signal.";
  if (state == "waiting") return "A newer version has come and waits for your word.";
  if (state == "unsupported") return "This browser keeps no pages: without a signal the sheet will not open. Copy its link before you leave.";
  if (state == "failed") return "The page could not be kept for use without a signal. Load it again while online.";
  return "Being kept for use without a signal …";
}

std::string status_no_tool() { return "Press a mark or a leg for what is known of it. Drag to move the paper."; }
std::string status_mark_tool() { return "Press where the mark stands."; }
std::string status_leg_tool(bool has_start) { return has_start ? "Press the next turn." : "Press where the leg begins."; }
std::string status_edge_off(bool has_first_end) { return has_first_end ? "Press the other end." : "Press one end of the line, then the other."; }
std::string status_edge_on() { return "Slide it to the rose: drag its body. Drag an end to line it up."; }
std::string status_direction(bool set, const std::string& through) {
  if (!set) return "Type the direction: three figures, with the ring it is read on.";
  return through.empty() ? "Slide the edge to a mark: it stops there." : "Drag the line's end, or type how far it goes.";
}
std::string set_here(double deg, Rounding rounding, Reference reference) { return "set here: " + with_letter(deg, rounding, reference); }
std::string set_to_direction(const std::string& through) { return through.empty() ? "set to a direction" : "set to a direction, slid to " + through; }
std::string write_it_on(const std::string& leg) { return "Write it on " + leg; }
std::string read_by_hand() { return "read by hand"; }
std::string stale() { return "stale"; }
std::string reading_stale() { return "An end has moved since it was read"; }
std::string reading_off(double off_deg) { return "The hand read " + tenths_sd(std::abs(off_deg)) + (off_deg > 0 ? " more" : " less") + " than is worked out"; }
std::string off_by(double off_deg) { return tenths_sd(std::abs(off_deg)) + " out"; }
std::string read_it_again() { return "Lay the edge on the leg and read it again. The course worked out from the marks is the one to steer by."; }
std::string rub_out_reading() { return "Rub out the reading"; }

Rounding rounding_of(const WrittenReading& written) { return written.bearing_deg == std::round(written.bearing_deg) ? Rounding::whole_degrees : Rounding::tenths; }

std::string draw_line_from(const std::string& name) { return "Draw the line from " + name; }
std::string own_place_serves() { return "By the model, at this rose: it serves the legs that are nearest to it."; }
std::string no_rose_left() { return "There is no rose left to read on: press where one is to stand."; }
std::string status_rose_tool(std::size_t roses) {
  if (roses == 0) return "Press where a rose is to stand.";
  return "Drag the rose, or press where it is to stand. The handle on its ring sizes it.";
}
std::string status_note_tool() { return "Press where the words are to begin."; }
std::string rose_number(std::size_t place, std::size_t count) { return count < 2 ? "" : std::to_string(place + 1) + " of " + std::to_string(count); }
std::string status_dividers(bool has_first_point, bool on) {
  if (has_first_point) return "Press the second point.";
  return on ? "Drag a leg to move its point, the hinge to carry them." : "Press one point, then the other.";
}
std::string status_edge_settled() { return "Read where it cuts both rings. The arrow shows the way you go: press it to turn round."; }

}  // namespace fogsheet::words
