#include "shell/words.h"

#include <cmath>

#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "core/positions/position_figures.h"

namespace fogsheet::words {

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
    case Act::use_card: return "take the card of " + label.subject;
    case Act::drop_card: return "leave out the deviation card";
    case Act::new_boat: return "enter " + label.subject;
    case Act::name_boat: return "name the boat " + label.subject;
    case Act::add_compass: return "enter " + label.subject;
    case Act::change_compass: return "change " + label.subject;
    case Act::remove_compass: return "strike out " + label.subject;
    case Act::add_entry: return "write in the log of " + label.subject;
    case Act::change_entry: return "change the log of " + label.subject;
    case Act::make_passage: return "make a passage";
    case Act::change_passage: return "change the passage";
    case Act::change_in_passage: return "change the passage's " + label.subject;
    case Act::choose_passage: return "take another passage in hand";
    case Act::remove_passage: return "strike the passage out";
    case Act::write_deck_log: return "write in the deck log";
    case Act::take_back_turn: return "go back a leg";
    case Act::remove_entry: return "strike out of the log of " + label.subject;
    case Act::import_marks: return "put in what " + label.subject + " holds";
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
  const std::string minutes = plain_number(std::round(std::abs(change) * 1000) / 1000);
  // In whole minutes as charts print it; a value from elsewhere in degrees, so that it reads back the same.
  const double value_min = note.value_deg * 60;
  const bool whole_minutes = std::abs(value_min - std::round(value_min)) < 1e-6;
  const std::string degrees = plain_number(std::abs(note.value_deg)) + "°" + (note.value_deg < 0 ? "W" : "E");
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

std::string no_deviation(const Chain& chain, Rounding rounding) {
  switch (chain.deviation) {
    case DeviationAnswer::one: return "";
    case DeviationAnswer::not_entered: return "not entered";
    case DeviationAnswer::none: return "the card has none here";
    case DeviationAnswer::several: break;
  }
  std::string candidates;
  for (const CompassDirection heading : chain.candidates) candidates += (candidates.empty() ? "" : ", ") + with_letter(heading.deg(), rounding, Reference::compass);
  return "steep card, no one answer: " + candidates;
}

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
  const std::string deviation = no_deviation(chain, rounding);
  if (!deviation.empty() && variation.value) sum.rows.push_back({.kind = SumRow::correction, .word = "deviation", .beside = deviation});
  return sum;
}

std::string plain_number(double value) {
  value = std::round(value * 1000) / 1000;  // 4.0001 is 4, with no decimals left to write
  if (value == std::round(value)) return (value < 0 ? "−" : "") + std::to_string(static_cast<long long>(std::abs(value)));
  const long long thousandths = std::llround(value * 1000);
  std::string digits = std::to_string(std::abs(thousandths % 1000));
  digits.insert(0, 3 - digits.size(), '0');
  while (digits.back() == '0') digits.pop_back();
  return (thousandths < 0 ? "−" : "") + std::to_string(std::abs(thousandths / 1000)) + "." + digits;
}

std::string quoted(const std::string& text) { return text.empty() ? "This place" : "“" + text + "”"; }

std::string tenths_sd(double deg) { return plain_number(std::round(deg * 10) / 10) + "°"; }

std::string grouped(int value) {
  std::string text = std::to_string(value);
  for (int i = static_cast<int>(text.size()) - 3; i > 0; i -= 3) text.insert(static_cast<std::size_t>(i), " ");
  return text;
}

std::string reference_name(Reference reference) { return reference == Reference::true_north ? "true" : reference == Reference::magnetic ? "magnetic" : "compass"; }
std::string reference_letter(Reference reference) { return reference == Reference::true_north ? "T" : reference == Reference::magnetic ? "M" : "C"; }

std::string with_letter(double deg, Rounding rounding, Reference reference) {
  return print_direction(deg, reference, rounding);
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

std::string no_such_command(const std::string& name) { return "There is no command “" + name + "”."; }

std::string palette_label(Palette palette) {
  switch (palette) {
    case Palette::day: return "Day";
    case Palette::dusk: return "Dusk";
    case Palette::night: return "Night";
    case Palette::high_contrast: return "High contrast";
  }
  return "Day";
}

std::string newer_version_waits() { return "A newer version waits under More."; }

std::string not_while_unkept() { return "The page loads anew for it, and what you did is not kept yet. Save it as a file; the newer version comes by itself when this page is opened again."; }

std::string offline_line(const std::string& state) {
  if (state == "ready") return "Kept for use without a signal.";
  if (state == "waiting") return "A newer version has come and waits for your word.";
  if (state == "unsupported") return "This browser keeps no pages: without a signal the sheet will not open. Copy its link before you leave.";
  if (state == "whole") return "All of it is in this one file, which opens without a signal. A link from it opens only where this file lies: save a sheet as a file to send it.";
  if (state == "failed") return "The page could not be kept for use without a signal. Load it again while online.";
  return "Being kept for use without a signal …";
}

}  // namespace fogsheet::words
