#include "core/exchange/geojson_writer.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/base/number_text.h"
#include "core/base/units.h"
#include "core/base/utf8.h"
#include "core/earth/mercator.h"

namespace fogsheet {
namespace {

constexpr int k_decimals = 6;  // 0.1 m (section 11.2): a whole 0.0001' comes back as itself
constexpr int k_most_pieces = 2'000;

std::string quoted(std::string_view text) {
  constexpr char k_digits[] = "0123456789abcdef";
  std::string written = "\"";
  for (const char c : repaired_utf8(text)) {
    if (c == '"' || c == '\\') (written += '\\') += c;
    else if (static_cast<unsigned char>(c) >= ' ') written += c;
    else ((written += "\\u00") += k_digits[c >> 4]) += k_digits[c & 15];
  }
  return written + "\"";
}

// Longitude runs on past 180 within a line.
struct Place {
  double lat_deg = 0, lon_deg = 0;
};

std::string written(Place at) { return "[" + print_fixed(at.lon_deg, k_decimals) + "," + print_fixed(at.lat_deg, k_decimals) + "]"; }

// On the rhumb line, straight on Mercator's projection. @param share of the way, [0, 1]
Place between(Place from, Place to, double share) {
  const double from_psi = isometric_latitude(from.lat_deg), to_psi = isometric_latitude(to.lat_deg);
  return {latitude_from_isometric_deg(from_psi + share * (to_psi - from_psi)), from.lon_deg + share * (to.lon_deg - from.lon_deg)};
}

// Into how many pieces the rhumb line is parted so that none leaves its chord by more than the tolerance, which falls with the
// square of their number.
int pieces_of(Place from, Place to) {
  const double middle_deg = between(from, to, 0.5).lat_deg;
  const double along_east_m = (to.lon_deg - from.lon_deg) * k_degree_rad * parallel_radius_m(middle_deg);
  const double along_north_m = (to.lat_deg - from.lat_deg) * k_degree_rad * meridian_radius_m(middle_deg);
  const double length_m = std::hypot(along_east_m, along_north_m);
  if (length_m == 0) return 1;
  const double off_m = std::abs(middle_deg - (from.lat_deg + to.lat_deg) / 2) * k_degree_rad * meridian_radius_m(middle_deg) * std::abs(along_east_m) / length_m;
  return std::clamp(static_cast<int>(std::ceil(std::sqrt(off_m / k_geojson_tolerance_m))), 1, k_most_pieces);
}

std::vector<Place> with_points_between(const std::vector<FilePoint>& points) {
  std::vector<Place> line;
  for (const FilePoint& point : points) {
    const Position at = unquantise(point.at);
    if (line.empty()) {
      line.push_back({at.lat_deg, at.lon_deg});
      continue;
    }
    const Place from = line.back(), to{at.lat_deg, from.lon_deg + reduce_longitude_deg(at.lon_deg - from.lon_deg)};
    const int pieces = pieces_of(from, to);
    for (int i = 1; i < pieces; ++i) line.push_back(between(from, to, static_cast<double>(i) / pieces));
    line.push_back(to);
  }
  return line;
}

// The line in pieces that stay between -180 and 180.
class Cutter {
 public:
  explicit Cutter(Place first) : turns_(std::floor((first.lon_deg + 180) / 360)) { add(first); }

  void go_to(Place to) {
    for (const double edge_deg : {-180.0, 180.0}) {
      const bool past = edge_deg > 0 ? to.lon_deg - 360 * turns_ > edge_deg : to.lon_deg - 360 * turns_ < edge_deg;
      if (!past) continue;
      const double at_deg = edge_deg + 360 * turns_;
      Place cut = between(last_, to, (at_deg - last_.lon_deg) / (to.lon_deg - last_.lon_deg));
      cut.lon_deg = at_deg;
      add(cut);
      pieces_.emplace_back();
      turns_ += edge_deg > 0 ? 1 : -1;
      add(cut);
      break;
    }
    add(to);
  }

  std::vector<std::vector<std::string>> take() {
    std::erase_if(pieces_, [](const std::vector<std::string>& piece) { return piece.size() < 2; });
    return std::move(pieces_);
  }

 private:
  void add(Place at) {
    last_ = at;
    std::string text = written({at.lat_deg, at.lon_deg - 360 * turns_});
    if (pieces_.back().empty() || pieces_.back().back() != text) pieces_.back().push_back(std::move(text));
  }

  double turns_;  // round the earth
  Place last_;
  std::vector<std::vector<std::string>> pieces_ = {{}};
};

std::string joined(const std::vector<std::string>& parts) {
  std::string all = "[";
  for (std::size_t i = 0; i < parts.size(); ++i) all += (i > 0 ? "," : "") + parts[i];
  return all + "]";
}

std::string feature(const std::string& type, const std::string& coordinates, const std::string& properties) {
  return "{\"type\":\"Feature\",\"geometry\":{\"type\":\"" + type + "\",\"coordinates\":" + coordinates + "},\"properties\":{" + properties + "}}";
}

std::string point(const FileMark& mark) {
  const Position at = unquantise(mark.at);
  std::string properties = "\"name\":" + quoted(mark.name) + ",\"kind\":" + quoted(mark_kind_name(mark.kind));
  if (mark.radius_nm > 0) properties += ",\"radius_nm\":" + print_fixed(mark.radius_nm, 3);
  if (mark.height_m > 0) properties += ",\"height_m\":" + print_fixed(mark.height_m, 1);
  if (!mark.note.empty()) properties += ",\"note\":" + quoted(mark.note);
  return feature("Point", written({at.lat_deg, at.lon_deg}), properties);
}

// Empty for a line whose points all lie on one place.
std::string line(const FileLine& line) {
  const std::vector<Place> places = with_points_between(line.points);
  Cutter cutter(places.front());
  for (std::size_t i = 1; i < places.size(); ++i) cutter.go_to(places[i]);
  std::vector<std::string> pieces;
  for (const std::vector<std::string>& piece : cutter.take()) pieces.push_back(joined(piece));
  if (pieces.empty()) return {};
  return feature(pieces.size() == 1 ? "LineString" : "MultiLineString", pieces.size() == 1 ? pieces.front() : joined(pieces), "\"name\":" + quoted(line.name));
}

}  // namespace

std::string geojson_text(const MarksAndLines& all) {
  std::string features;
  const auto add = [&](std::string feature) {
    if (!feature.empty()) features += (features.empty() ? "\n" : ",\n") + feature;
  };
  for (const FileMark& mark : all.marks) add(point(mark));
  for (const FileLine& each : all.lines) add(line(each));
  return "{\"type\":\"FeatureCollection\",\"features\":[" + features + "\n]}\n";
}

}  // namespace fogsheet
