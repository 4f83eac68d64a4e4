#include "core/exchange/gpx_rules.h"

#include <algorithm>
#include <cstdint>
#include <optional>

#include "core/base/number_text.h"
#include "core/base/utf8.h"

namespace fogsheet {

// What an element's text may be. `none`: it holds elements alone.
enum class Text : std::uint8_t { none, any, latitude, longitude, decimal, degrees, time, year, whole, station, fix, version };

struct GpxPart {
  std::string_view name;
  const GpxElement* element;  // of a child; null for an attribute
  bool many = false;          // a child may stand there more than once
  Text text = Text::any;      // of an attribute
  bool required = false;      // an attribute
};

struct GpxElement {
  Text text = Text::none;
  std::vector<GpxPart> children = {};
  std::vector<GpxPart> attributes = {};
  bool foreign = false;  // holds whatever is of another namespace
};

// A dozen rows that point to each other.
struct GpxSchema {
  static GpxElement leaf(Text text) { return {.text = text}; }
  GpxElement any = leaf(Text::any), decimal = leaf(Text::decimal), degrees = leaf(Text::degrees), time = leaf(Text::time), year = leaf(Text::year), whole = leaf(Text::whole),
             station = leaf(Text::station), fix = leaf(Text::fix);
  GpxElement extensions = {.foreign = true};
  GpxElement link = {.children = {{"text", &any}, {"type", &any}}, .attributes = {{.name = "href", .required = true}}};
  GpxElement email = {.attributes = {{.name = "id", .required = true}, {.name = "domain", .required = true}}};
  GpxElement person = {.children = {{"name", &any}, {"email", &email}, {"link", &link}}};
  GpxElement copyright = {.children = {{"year", &year}, {"license", &any}}, .attributes = {{.name = "author", .required = true}}};
  GpxElement bounds = {.attributes = {{.name = "minlat", .text = Text::latitude, .required = true},
                                      {.name = "minlon", .text = Text::longitude, .required = true},
                                      {.name = "maxlat", .text = Text::latitude, .required = true},
                                      {.name = "maxlon", .text = Text::longitude, .required = true}}};
  GpxElement metadata = {.children = {{"name", &any}, {"desc", &any}, {"author", &person}, {"copyright", &copyright}, {"link", &link, true}, {"time", &time}, {"keywords", &any}, {"bounds", &bounds}, {"extensions", &extensions}}};
  GpxElement point = {.children = {{"ele", &decimal}, {"time", &time}, {"magvar", &degrees}, {"geoidheight", &decimal}, {"name", &any}, {"cmt", &any}, {"desc", &any}, {"src", &any}, {"link", &link, true}, {"sym", &any}, {"type", &any}, {"fix", &fix}, {"sat", &whole}, {"hdop", &decimal}, {"vdop", &decimal}, {"pdop", &decimal}, {"ageofdgpsdata", &decimal}, {"dgpsid", &station}, {"extensions", &extensions}},
                      .attributes = {{.name = "lat", .text = Text::latitude, .required = true}, {.name = "lon", .text = Text::longitude, .required = true}}};
  GpxElement segment = {.children = {{"trkpt", &point, true}, {"extensions", &extensions}}};
  GpxElement route = {.children = {{"name", &any}, {"cmt", &any}, {"desc", &any}, {"src", &any}, {"link", &link, true}, {"number", &whole}, {"type", &any}, {"extensions", &extensions}, {"rtept", &point, true}}};
  GpxElement track = {.children = {{"name", &any}, {"cmt", &any}, {"desc", &any}, {"src", &any}, {"link", &link, true}, {"number", &whole}, {"type", &any}, {"extensions", &extensions}, {"trkseg", &segment, true}}};
  GpxElement gpx = {.children = {{"metadata", &metadata}, {"wpt", &point, true}, {"rte", &route, true}, {"trk", &track, true}, {"extensions", &extensions}},
                    .attributes = {{.name = "version", .text = Text::version, .required = true}, {.name = "creator", .required = true}}};
};

namespace {

constexpr std::string_view k_instance_space = "http://www.w3.org/2001/XMLSchema-instance";

bool all_digits(std::string_view text) { return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; }); }

// xsd:decimal: no exponent, no INF, no NaN; a sign and a bare leading or trailing point are allowed.
std::optional<double> decimal(std::string_view text) {
  if (text.empty() || text.find_first_not_of("+-.0123456789") != std::string_view::npos) return std::nullopt;
  const bool minus = text.front() == '-';
  if (minus || text.front() == '+') text.remove_prefix(1);
  const std::size_t point = text.find('.');
  if (point != std::string_view::npos && text.find('.', point + 1) != std::string_view::npos) return std::nullopt;
  if (text.find_first_of("+-") != std::string_view::npos || text.find_first_of("0123456789") == std::string_view::npos) return std::nullopt;
  const std::string with_nought = (text.front() == '.' ? "0" : "") + std::string(text) + (text.back() == '.' ? "0" : "");
  const std::optional<double> value = parse_number(with_nought);
  return value && minus ? -*value : value;
}

bool within(std::string_view text, double least, double most, bool most_too) {
  const std::optional<double> value = decimal(text);
  return value && *value >= least && (most_too ? *value <= most : *value < most);
}

// Two figures at a place, up to a bound.
bool two_figures(std::string_view text, std::size_t at, int most) {
  return text.size() >= at + 2 && all_digits(text.substr(at, 2)) && (text[at] - '0') * 10 + (text[at + 1] - '0') <= most;
}

// xsd:dateTime: 2026-11-25T10:00:00.5Z
bool is_time(std::string_view text) {
  if (text.starts_with('-')) text.remove_prefix(1);
  const std::size_t year = text.find('-');
  if (year == std::string_view::npos || year < 4 || !all_digits(text.substr(0, year))) return false;
  text.remove_prefix(year);
  constexpr std::string_view k_form = "-00-00T00:00:00";
  if (text.size() < k_form.size()) return false;
  for (std::size_t i = 0; i < k_form.size(); ++i)
    if (k_form[i] != '0' && text[i] != k_form[i]) return false;
  if (!two_figures(text, 1, 12) || !two_figures(text, 4, 31) || !two_figures(text, 7, 24) || !two_figures(text, 10, 59) || !two_figures(text, 13, 59)) return false;
  text.remove_prefix(k_form.size());
  if (text.starts_with('.')) {
    const std::size_t end = std::min(text.find_first_not_of("0123456789", 1), text.size());
    if (end == 1) return false;
    text.remove_prefix(end);
  }
  return text.empty() || text == "Z" || (text.size() == 6 && (text[0] == '+' || text[0] == '-') && text[3] == ':' && two_figures(text, 1, 14) && two_figures(text, 4, 59));
}

bool fits(Text kind, std::string_view given) {
  const std::string_view text = trimmed(given);
  switch (kind) {
    case Text::none: return text.empty();
    case Text::any: return true;
    case Text::latitude: return within(text, -90, 90, true);
    case Text::longitude: return within(text, -180, 180, false);
    case Text::decimal: return decimal(text).has_value();
    case Text::degrees: return within(text, 0, 360, false);
    case Text::time: return is_time(text);
    case Text::year: return text.size() >= 4 && all_digits(text.substr(0, 4));
    case Text::whole: return all_digits(text.starts_with('+') ? text.substr(1) : text);
    case Text::station: return all_digits(text) && within(text, 0, 1023, true);
    case Text::fix: return text == "none" || text == "2d" || text == "3d" || text == "dgps" || text == "pps";
    case Text::version: return given == "1.1";
  }
  return false;
}

bool attributes_fit(const GpxElement& element, const std::vector<XmlAttribute>& attributes) {
  std::size_t required = 0;
  for (const XmlAttribute& given : attributes) {
    if (given.name.space == k_instance_space) continue;
    const auto part = std::find_if(element.attributes.begin(), element.attributes.end(), [&](const GpxPart& each) { return each.name == given.name.local; });
    if (!given.name.space.empty() || part == element.attributes.end() || !fits(part->text, given.value)) return false;
    required += part->required;
  }
  return required == static_cast<std::size_t>(std::count_if(element.attributes.begin(), element.attributes.end(), [](const GpxPart& each) { return each.required; }));
}

}  // namespace

GpxRules::GpxRules() : schema_(std::make_unique<const GpxSchema>()) {}
GpxRules::~GpxRules() = default;

void GpxRules::begin() { frames_.clear(); }

bool GpxRules::open(XmlName name, const std::vector<XmlAttribute>& attributes) {
  const bool is_ours = name.space == k_gpx_space;
  const GpxElement* found = nullptr;
  bool in_place = false;
  if (frames_.empty()) {
    found = is_ours && name.local == "gpx" ? &schema_->gpx : nullptr;
    in_place = found != nullptr;
  } else if (Frame& parent = frames_.back(); !parent.element) {
    in_place = true;
  } else if (parent.element->foreign) {
    in_place = !is_ours && !name.space.empty();
  } else {
    const std::vector<GpxPart>& children = parent.element->children;
    const auto part = std::find_if(children.begin(), children.end(), [&](const GpxPart& each) { return is_ours && each.name == name.local; });
    if (part != children.end()) {
      const auto at = static_cast<std::size_t>(part - children.begin());
      found = part->element;
      in_place = at > parent.child || (at == parent.child && (part->many || !parent.child_taken));
      if (in_place) parent = {parent.element, at, true};
    }
  }
  frames_.push_back({found});
  return in_place && (!found || attributes_fit(*found, attributes));
}

bool GpxRules::close(std::string_view text) {
  const Frame frame = frames_.back();
  frames_.pop_back();
  return !frame.element || fits(frame.element->text, text);
}

}  // namespace fogsheet
