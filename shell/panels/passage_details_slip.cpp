// What a passage is planned with: speed, times, leeway, stream, high waters; and what else its card tells.
#include "shell/panels/panels.h"
#include "shell/panels/passage_parts.h"
#include "shell/words.h"
#include "shell/words_of_passage.h"

namespace fogsheet {
namespace {

std::string hour_label(int hour) {
  if (hour == 0) return "at high water";
  return std::to_string(std::abs(hour)) + (hour < 0 ? " h before" : " h after");
}

void add_tides(PassageFields& fields, const Passage& passage) {
  for (std::size_t tide = 0; tide <= passage.tides.size() && tide < k_most_tides; ++tide) {
    const bool is_new = tide == passage.tides.size();
    if (!is_new) fields.choice(tide_field_name(tide, "kind"), "Water", {{"high", "high water"}, {"low", "low water"}});
    fields.field(tide_field_name(tide, "time"), is_new ? (tide == 0 ? "High water at" : "Another high or low water at") : "at", {.figures_only = true, .pad = Pad::quantity});
    if (is_new) continue;
    if (!(passage.tides[tide].date == passage.date)) fields.field(tide_field_name(tide, "date"), "on", {.pad = Pad::date});
    fields.field(tide_field_name(tide, "height"), "height", {.unit = "m", .pad = Pad::quantity});
  }
  if (!passage.tides.empty()) fields.field("tide-place", "Place of these waters");
}

}  // namespace

void PassageFields::stream(const std::string& prefix, StreamEntry entry, bool of_leg) {
  std::vector<ChoiceItem::Option> options{{"none", "not entered"}, {"steady", "steady"}, {"hours", "by the hour"}};
  if (of_leg) options.insert(options.begin(), {"passage", "as the passage"});
  choice(prefix + "stream/kind", of_leg ? "Stream on this leg" : "Stream", std::move(options));
  if (of_leg && field_text(passage_, prefix + "stream/kind") == "passage") return;
  if (entry == StreamEntry::steady) {
    field(prefix + "stream/set", "sets towards", {.unit = "°T", .completes_at = 3, .figures_only = true, .pad = Pad::quantity});
    field(prefix + "stream/drift", "drift", {.unit = "kn", .pad = Pad::quantity});
  }
  if (entry == StreamEntry::by_hour) {
    slip_.items.push_back(LineItem{.text = "Each hour from high water as set / drift: 352/0.7. What is left empty is a gap.", .tone = LineTone::soft});
    for (int hour = -k_stream_hours; hour <= k_stream_hours; ++hour) field(prefix + stream_hour_field_name(hour), hour_label(hour).c_str(), {.pad = Pad::stream});
  }
  if (entry != StreamEntry::not_entered) field(prefix + "stream/source", "where that is from");
}

Panel passage_details_slip(const Session& session) {
  const Passage* passage = session.passage();
  if (!passage) return passage_slip(session);
  Panel slip{.name = "passage-details", .label = "Speed, times, stream"};
  PassageFields fields(slip, session, *passage);
  slip.items.push_back(HeadingItem{.text = "Speed, times, stream", .beside = words::passage_title(session.document(), *passage)});
  slip.items.push_back(parts::close_button());
  fields.field("speed", "Speed through the water", {.unit = "kn", .pad = Pad::quantity});
  fields.field("time", passage->is_arrival ? "Arrive at" : "Leave at", {.unit = zone_name(passage->zone), .completes_at = 4, .figures_only = true, .pad = Pad::quantity});
  fields.stream("", passage->stream.entry, false);
  if (passage->stream.entry == StreamEntry::by_hour) add_tides(fields, *passage);
  fields.field("wind", "Wind from", {.unit = "°T", .completes_at = 3, .figures_only = true, .pad = Pad::quantity});
  fields.field("leeway", "Leeway", {.unit = "°", .pad = Pad::quantity});

  slip.items.push_back(HeadingItem{.text = "More of the times", .level = 3});
  fields.choice("times", "The time is that of", {{"departure", "leaving"}, {"arrival", "arriving"}});
  fields.field("date", "Day", {.pad = Pad::date});
  fields.field("zone", "Time zone");
  fields.choice("way", "With the stream", {{"one", "one heading a leg"}, {"hourly", "on the line, hour by hour"}});
  fields.field("home-time", "The way home begins at", {.completes_at = 4, .figures_only = true, .pad = Pad::quantity});
  if (passage->home_time) fields.field("home-date", "on", {.pad = Pad::date});

  slip.items.push_back(HeadingItem{.text = "For the card", .level = 3});
  if (passage->stream.entry != StreamEntry::by_hour) add_tides(fields, *passage);
  fields.field("visibility", "Visibility", {.unit = "nm", .pad = Pad::quantity});
  fields.field("turn-back", "Turn back if", {.multiline = true});
  fields.field("note", "Note", {.multiline = true});
  fields.field("name", "Name of the passage");
  fields.field("plot-every", "DR and EP on the sheet every", {.unit = "min", .figures_only = true, .pad = Pad::quantity});
  slip.items.push_back(ButtonItem{.name = "to-card", .label = "To the card", .look = ButtonLook::main, .on_press = {"close-slip"}});
  return slip;
}

}  // namespace fogsheet
