#include "core/exchange/gpx_writer.h"

#include "core/base/number_text.h"
#include "core/base/utf8.h"
#include "core/exchange/gpx_names.h"
#include "core/exchange/gpx_rules.h"

namespace fogsheet {
namespace {

constexpr int k_decimals = 7;  // 0.01 m: a whole 0.0001' comes back as itself

// Characters that XML 1.0 has no way to write are left out: controls, and the two that are no characters.
std::string escaped(std::string_view text) {
  std::string written;
  while (!text.empty()) {
    const std::string_view from = text;
    const char32_t character = next_code_point(text);
    if (character == '&') written += "&amp;";
    else if (character == '<') written += "&lt;";
    else if (character == '>') written += "&gt;";
    else if (character == '"') written += "&quot;";
    else if ((character >= 0x20 && character != 0xFFFE && character != 0xFFFF) || character == '\n' || character == '\t') written += from.substr(0, from.size() - text.size());
  }
  return written;
}

std::string element(std::string_view name, std::string_view text) {
  return "<" + std::string(name) + ">" + escaped(text) + "</" + std::string(name) + ">";
}

// -180 in, 180 out, as quantised positions are.
std::string point(std::string_view element_name, GridPosition at) {
  const Position place = unquantise(at);
  return "<" + std::string(element_name) + " lat=\"" + print_fixed(place.lat_deg, k_decimals) + "\" lon=\"" + print_fixed(place.lon_deg, k_decimals) + "\">";
}

std::string extensions(const FileMark& mark) {
  std::string inside;
  if (mark.radius_nm > 0) inside += element("f:" + std::string(k_radius_element), print_fixed(mark.radius_nm, 3));
  if (mark.height_m > 0) inside += element("f:" + std::string(k_height_element), print_fixed(mark.height_m, 1));
  return inside.empty() ? "" : "<extensions>" + inside + "</extensions>";
}

}  // namespace

std::string gpx_text(const MarksAndLines& all) {
  std::string text = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx xmlns=\"" + std::string(k_gpx_space) + "\" xmlns:f=\"" + std::string(k_extension_space) + "\" version=\"1.1\" creator=\"Fogsheet\">\n";
  if (!all.title.empty()) text += "<metadata>" + element("name", all.title) + "</metadata>\n";
  for (const FileMark& mark : all.marks) {
    text += point("wpt", mark.at) + element("name", mark.name);
    if (!mark.note.empty()) text += element("desc", mark.note);
    text += element("type", mark_kind_name(mark.kind)) + extensions(mark) + "</wpt>\n";
  }
  for (const FileLine& line : all.lines) {
    text += "<rte>" + element("name", line.name) + "\n";
    for (const FilePoint& each : line.points) text += point("rtept", each.at) + (each.name.empty() ? "" : element("name", each.name)) + "</rtept>\n";
    text += "</rte>\n";
  }
  return text + "</gpx>\n";
}

}  // namespace fogsheet
