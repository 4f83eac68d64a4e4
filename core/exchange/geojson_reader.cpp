#include "core/exchange/geojson_reader.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include "core/base/utf8.h"
#include "core/exchange/file_text.h"
#include "rapidjson/document.h"

namespace fogsheet {
namespace {

using Json = rapidjson::Value;

constexpr std::size_t k_deepest = 40;             // of brackets
constexpr std::size_t k_most_values = 6'000'000;  // each takes 16 bytes while it is read

double line_at(std::string_view text, std::size_t offset) { return 1 + static_cast<double>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(std::min(offset, text.size())), '\n')); }

// Before anything is built: how deep it goes, and how many values it can have.
std::optional<Problem> out_of_bounds(std::string_view text) {
  std::size_t depth = 0, values = 0;
  bool in_text = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (in_text) {
      if (c == '\\') ++i;
      else if (c == '"') in_text = false;
    } else if (c == '"') {
      in_text = true;
    } else if (c == '[' || c == '{') {
      ++values;
      if (++depth > k_deepest) return Problem{.fault = Fault::file_too_deep, .texts = {"JSON"}, .numbers = {line_at(text, i)}};
    } else if (c == ']' || c == '}') {
      depth -= depth > 0;
    } else if (c == ',' || c == ':') {
      ++values;
    }
  }
  if (values > k_most_values) return Problem{.fault = Fault::file_too_full, .texts = {"JSON"}, .numbers = {static_cast<double>(k_most_values)}};
  return std::nullopt;
}

const Json* member(const Json& object, const char* name) {
  if (!object.IsObject()) return nullptr;
  const auto found = object.FindMember(name);
  return found == object.MemberEnd() ? nullptr : &found->value;
}

std::string_view text_of(const Json* value) { return value && value->IsString() ? std::string_view(value->GetString(), value->GetStringLength()) : std::string_view(); }

double number_of(const Json* value) { return value && value->IsNumber() ? value->GetDouble() : 0; }

// The first of these properties that holds a text, or a number as its text.
std::string first_text(const Json* properties, std::initializer_list<const char*> names) {
  if (!properties) return {};
  for (const char* name : names) {
    const Json* value = member(*properties, name);
    if (!text_of(value).empty()) return std::string(text_of(value));
    if (value && value->IsInt64()) return std::to_string(value->GetInt64());
  }
  return {};
}

class Reader {
 public:
  explicit Reader(std::optional<GeoJsonPosition>& first) : first_(first) {}

  /// @return the type that is none of RFC 7946, section 1.4; empty when all is well.
  std::optional<std::string> whole(const Json& root) {
    const std::string_view type = text_of(member(root, "type"));
    if (!is_type(type)) return std::string(type);
    object(root);
    return std::nullopt;
  }

  MarksAndLines take() { return collector_.take(); }

 private:
  static constexpr std::array<std::string_view, 9> k_types = {"Point", "MultiPoint", "LineString", "MultiLineString", "Polygon", "MultiPolygon", "GeometryCollection", "Feature", "FeatureCollection"};
  static bool is_type(std::string_view type) { return std::find(k_types.begin(), k_types.end(), type) != k_types.end(); }

  void depart(std::string_view what) {
    if (!collector_.departed()) collector_.depart(where_ + std::string(what));
  }

  void object(const Json& json) {
    const std::string_view type = text_of(member(json, "type"));
    if (type == "FeatureCollection") {
      collector_.title(text_of(member(json, "name")));
      const Json* features = member(json, "features");
      if (!features || !features->IsArray()) return depart("features");
      for (rapidjson::SizeType i = 0; i < features->Size(); ++i) {
        where_ = "features[" + std::to_string(i) + "] ";
        object((*features)[i]);
      }
      where_.clear();
    } else if (type == "Feature") {
      feature(json);
    } else {
      geometry(json, nullptr, {});
    }
  }

  void feature(const Json& json) {
    const Json *properties = member(json, "properties"), *shape = member(json, "geometry"), *id = member(json, "id");
    if (!properties || !(properties->IsObject() || properties->IsNull())) depart("properties");
    if (id && !id->IsString() && !id->IsNumber()) depart("id");
    if (!shape || !(shape->IsObject() || shape->IsNull())) depart("geometry");
    const Json* told = properties && properties->IsObject() ? properties : nullptr;
    std::string name = first_text(told, {"name", "Name", "title", "label"});
    if (name.empty()) name = std::string(text_of(id));
    if (!shape || !shape->IsObject()) return collector_.leave_out(LeftOutWhy::no_geometry, name.empty() ? where_ : name);
    geometry(*shape, told, name);
  }

  void geometry(const Json& json, const Json* properties, const std::string& name) {
    const std::string_view type = text_of(member(json, "type"));
    for (const char* stranger : {"geometry", "properties", "features"})
      if (member(json, stranger)) depart(stranger);  // section 7.1
    const auto leave_out = [&](LeftOutWhy why) { collector_.leave_out(why, name.empty() ? where_ + std::string(type) : name); };
    if (type == "GeometryCollection") {
      const Json* parts = member(json, "geometries");
      if (!parts || !parts->IsArray()) return depart("geometries");
      for (const Json& part : parts->GetArray()) geometry(part, properties, name);
      return;
    }
    const Json* coordinates = member(json, "coordinates");
    if (!is_type(type) || !coordinates || !coordinates->IsArray()) {
      depart(is_type(type) ? "coordinates" : "type");
      return leave_out(LeftOutWhy::no_geometry);
    }
    if (type == "Point") mark(*coordinates, properties, name, type);
    else if (type == "MultiPoint") for (const Json& each : coordinates->GetArray()) mark(each, properties, name, type);
    else if (type == "LineString") lines(&*coordinates, 1, name, type);
    else if (type == "MultiLineString") lines(coordinates->Begin(), coordinates->Size(), name, type);
    else if (type == "Polygon" || type == "MultiPolygon") {
      if (type == "Polygon") rings(*coordinates);
      else for (const Json& each : coordinates->GetArray()) rings(each);
      leave_out(LeftOutWhy::area);
    } else {
      depart("type");  // a Feature in place of a geometry
    }
  }

  // Longitude first: section 3.1.1.
  ReadPlace place(const Json& position) {
    if (!position.IsArray() || position.Size() < 2) {
      depart("coordinates");
      return {};
    }
    for (const Json& part : position.GetArray())
      if (!part.IsNumber()) {
        depart("coordinates");
        return {};
      }
    const ReadPlace at{position[1].GetDouble(), position[0].GetDouble()};
    if (std::abs(*at.lat_deg) > 90 || std::abs(*at.lon_deg) > 180) depart("coordinates");
    return at;
  }

  void mark(const Json& position, const Json* properties, const std::string& name, std::string_view type) {
    const ReadPlace at = place(position);
    if (!first_ && at.lat_deg) {
      first_ = GeoJsonPosition{*at.lat_deg, *at.lon_deg, std::nullopt};
      if (position.Size() > 2) first_->height_m = position[2].GetDouble();
    }
    const Json none;
    const Json& told = properties ? *properties : none;
    collector_.mark({.name = name,
                     .kind = mark_kind_named(text_of(member(told, "kind"))).value_or(MarkKind::other),
                     .radius_nm = number_of(member(told, "radius_nm")),
                     .height_m = number_of(member(told, "height_m")),
                     .note = first_text(properties, {"note", "description", "desc", "comment"})},
                    at, where_ + std::string(type));
  }

  // What was cut at 180 deg goes on where it was cut: sections 3.1.9.
  void lines(const Json* pieces, rapidjson::SizeType count, const std::string& name, std::string_view type) {
    const Json* before = nullptr;
    for (rapidjson::SizeType i = 0; i < count; ++i) {
      const Json& piece = pieces[i];
      if (!piece.IsArray() || piece.Size() < 2) depart("coordinates");
      const bool goes_on = before && is_cut(*before, piece);
      if (!goes_on) {
        if (before) collector_.end_line();
        collector_.begin_line(LineOrigin::line, where_ + std::string(type));
        collector_.line_name(name);
      }
      if (piece.IsArray())
        for (rapidjson::SizeType k = goes_on ? 1 : 0; k < piece.Size(); ++k) collector_.point(place(piece[k]), {});
      before = &piece;
    }
    if (before) collector_.end_line();
  }

  static bool is_cut(const Json& before, const Json& piece) {
    if (!before.IsArray() || !piece.IsArray() || before.Empty() || piece.Empty()) return false;
    const Json &last = before[before.Size() - 1], &first = piece[0];
    const auto is_place = [](const Json& at) { return at.IsArray() && at.Size() >= 2 && at[0].IsNumber() && at[1].IsNumber(); };
    return is_place(last) && is_place(first) && std::abs(last[0].GetDouble()) == 180 && last[0].GetDouble() == -first[0].GetDouble() && last[1].GetDouble() == first[1].GetDouble();
  }

  // Only whether they are as section 3.1.6 has them.
  void rings(const Json& polygon) {
    if (!polygon.IsArray()) return depart("coordinates");
    for (const Json& ring : polygon.GetArray()) {
      if (!ring.IsArray() || ring.Size() < 4 || ring[0] != ring[ring.Size() - 1]) return depart("coordinates");
      for (const Json& position : ring.GetArray()) place(position);
    }
  }

  std::optional<GeoJsonPosition>& first_;
  Collector collector_;
  std::string where_;  // "features[3] "
};

// The system of a `crs` member as GeoJSON had it in 2008; empty where there is none, or the usual one.
std::string other_system(const Json& root) {
  const Json* system = member(root, "crs");
  if (!system || !system->IsObject()) return {};
  const Json* properties = member(*system, "properties");
  const std::string_view name = properties ? text_of(member(*properties, "name")) : std::string_view();
  for (const std::string_view usual : {"CRS84", "4326", "4979", "CRS84h"})
    if (name.ends_with(usual)) return {};
  return name.empty() ? "?" : std::string(fitting(name, 100));
}

}  // namespace

Result<MarksAndLines> read_geojson(std::string_view bytes, std::optional<GeoJsonPosition>& first) {
  const std::string text = text_of_file(bytes);
  if (std::optional<Problem> problem = out_of_bounds(text)) return *problem;
  rapidjson::Document json;
  json.Parse<rapidjson::kParseIterativeFlag>(text.data(), text.size());
  if (json.HasParseError()) return Problem{.fault = Fault::file_broken, .texts = {"JSON"}, .numbers = {line_at(text, json.GetErrorOffset())}};
  if (const std::string system = other_system(json); !system.empty()) return Problem{.fault = Fault::datum_unknown, .texts = {system}};
  Reader reader(first);
  if (const std::optional<std::string> type = reader.whole(json)) return Problem{.fault = Fault::file_of_other_kind, .texts = {"JSON", std::string(fitting(repaired_utf8(*type), 100))}};
  return reader.take();
}

Result<MarksAndLines> read_geojson(std::string_view bytes) {
  std::optional<GeoJsonPosition> first;
  return read_geojson(bytes, first);
}

}  // namespace fogsheet
