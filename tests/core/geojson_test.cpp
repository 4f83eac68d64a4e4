// GeoJSON read as it is met, and written as RFC 7946 has it.
#include <cmath>
#include <string>

#include "core/base/units.h"
#include "core/earth/mercator.h"
#include "core/exchange/exchange.h"
#include "core/exchange/geojson_reader.h"
#include "core/exchange/geojson_writer.h"
#include "doctest/doctest.h"
#include "rapidjson/document.h"
#include "tests/core/random_acts.h"

using namespace fogsheet;

namespace {

MarksAndLines taken(const std::string& bytes) {
  const Result<MarksAndLines> read = read_file(bytes);
  REQUIRE_MESSAGE(read.ok(), bytes.substr(0, 200));
  return *read;
}

const std::string k_point = R"({"type":"Point","coordinates":[-31.2,44.1]})";

std::string feature(const std::string& geometry, const std::string& properties) { return R"({"type":"Feature","geometry":)" + geometry + R"(,"properties":)" + properties + "}"; }

FileLine line_through(std::vector<Position> places) {
  FileLine line{.name = "L"};
  for (const Position& place : places) line.points.push_back({quantise(place)});
  return line;
}

}  // namespace

TEST_CASE("GeoJSON: points become marks, with what their properties tell") {
  const MarksAndLines all = taken("\xEF\xBB\xBF" R"({"type":"FeatureCollection","name":"Sound","features":[)" + feature(k_point, R"({"name":"Gull Rock","kind":"danger","radius_nm":0.4,"note":"awash"})") + "," +
                                  feature(R"({"type":"MultiPoint","coordinates":[[1,2],[3,4,5]]})", "null") + "," + feature(R"({"type":"GeometryCollection","geometries":[)" + k_point + "]}", R"({"name":7})") + "]}");
  CHECK(all.title == "Sound");
  REQUIRE(all.marks.size() == 4);
  CHECK(all.marks[0] == FileMark{.name = "Gull Rock", .kind = MarkKind::danger, .at = quantise({44.1, -31.2}), .radius_nm = 0.4, .note = "awash"});
  CHECK(all.marks[2].at == quantise({4, 3}));
  CHECK(all.marks[3].name == "7");
  CHECK(!all.departure);
  CHECK(all.left_out_count == 0);
}

TEST_CASE("GeoJSON: lines, areas, and what is not as the standard has it") {
  const MarksAndLines all = taken(R"({"type":"FeatureCollection","features":[)" + feature(R"({"type":"LineString","coordinates":[[-31,44],[-31.5,44.2],[-32,44]]})", R"({"name":"Out"})") + "," +
                                  feature(R"({"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]]]})", R"({"name":"Bay"})") + "," + feature("null", "null") + "," +
                                  feature(R"({"type":"LineString","coordinates":[[-31,44]]})", "{}") + "," + feature(R"({"type":"Point","coordinates":["1",2]})", "{}") + "]}");
  REQUIRE(all.lines.size() == 1);
  CHECK(all.lines[0].points.size() == 3);
  REQUIRE(all.left_out.size() == 4);
  CHECK(all.left_out[0] == LeftOut{LeftOutWhy::area, 0, "Bay"});
  CHECK(all.left_out[1].why == LeftOutWhy::no_geometry);
  CHECK(all.left_out[2] == LeftOut{LeftOutWhy::line_too_short, 0, "features[3] LineString"});
  CHECK(all.left_out[3].why == LeftOutWhy::place_unreadable);
  REQUIRE(all.departure);
  CHECK(all.departure->what == "features[3] coordinates");
}

TEST_CASE("GeoJSON: refusals") {
  const auto fault = [](const std::string& bytes) { return read_file(bytes).problem().fault; };
  CHECK(fault("{\"type\":\"Point\",\n\"coordinates\":[1,2]") == Fault::file_broken);
  CHECK(read_file("{\"type\":\"Point\",\n\n\"coordinates\":[1,,2]}").problem().numbers == std::vector<double>{3});
  CHECK(fault("{\"type\":\"Topology\"}") == Fault::file_of_other_kind);
  CHECK(fault("[1,2,3]") == Fault::file_of_other_kind);
  CHECK(fault("{\"type\":\"FeatureCollection\",\"features\":" + std::string(1'000'000, '[')) == Fault::file_too_deep);
  CHECK(fault("[" + std::string(7'000'000, ',')) == Fault::file_too_full);
  CHECK(fault(R"({"type":"Point","coordinates":[1,2],"crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::27700"}}})") == Fault::datum_unknown);
  CHECK(taken(R"({"type":"Point","coordinates":[1,2],"crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:OGC:1.3:CRS84"}}})").marks.size() == 1);
}

// RFC 7946, section 3.1.9, has this very cut in its example.
TEST_CASE("GeoJSON: a line over 180 deg is cut there, and is one again when read") {
  MarksAndLines all;
  all.lines.push_back(line_through({{-17, 179}, {-17.4, -179}}));
  const std::string text = geojson_text(all);
  rapidjson::Document json;
  REQUIRE(!json.Parse(text.c_str()).HasParseError());
  const auto& geometry = json["features"][0]["geometry"];
  CHECK(std::string(geometry["type"].GetString()) == "MultiLineString");
  const auto& pieces = geometry["coordinates"];
  REQUIRE(pieces.Size() == 2);
  const auto& west = pieces[0][pieces[0].Size() - 1];
  CHECK(west[0].GetDouble() == 180);
  CHECK(pieces[1][0][0].GetDouble() == -180);
  CHECK(west[1].GetDouble() == pieces[1][0][1].GetDouble());
  CHECK(std::abs(west[1].GetDouble() + 17.2) < 1e-3);
  const MarksAndLines read = taken(text);
  CHECK(!read.departure);
  REQUIRE(read.lines.size() == 1);
  CHECK(read.lines[0].points.front().at == all.lines[0].points.front().at);
  CHECK(read.lines[0].points.back().at == all.lines[0].points.back().at);
  CHECK(read.lines[0].points.size() == 2);
}

TEST_CASE("GeoJSON: lines that touch 180 deg, run along it, or begin there") {
  for (const std::vector<Position>& places : {std::vector<Position>{{10, -180}, {10, 179}}, {{10, -180}, {10, -179}}, {{10, 179}, {10, -180}}, {{10, -180}, {12, -180}}, {{10, 179}, {10, -180}, {10, -179}}, {{10, 179}, {10, -180}, {10, 178}}}) {
    MarksAndLines all;
    all.lines.push_back(line_through(places));
    const std::string text = geojson_text(all);
    CAPTURE(text);
    rapidjson::Document json;
    REQUIRE(!json.Parse(text.c_str()).HasParseError());
    const auto& geometry = json["features"][0]["geometry"];
    const auto check_piece = [](const rapidjson::Value& piece) {
      CHECK(piece.Size() >= 2);
      for (rapidjson::SizeType i = 0; i < piece.Size(); ++i) {
        CHECK(std::abs(piece[i][0].GetDouble()) <= 180);
        if (i > 0) CHECK(std::abs(piece[i][0].GetDouble() - piece[i - 1][0].GetDouble()) <= 180);
      }
    };
    if (std::string(geometry["type"].GetString()) == "LineString") check_piece(geometry["coordinates"]);
    else for (const auto& piece : geometry["coordinates"].GetArray()) check_piece(piece);
    const MarksAndLines read = taken(text);
    REQUIRE(read.lines.size() == 1);
    CHECK(read.lines[0].points.front().at == all.lines[0].points.front().at);
    CHECK(read.lines[0].points.back().at == all.lines[0].points.back().at);
  }
}

TEST_CASE("GeoJSON: a long leg gets points in between, until the chords lie on the rhumb line") {
  MarksAndLines all;
  all.lines.push_back(line_through({{58, 2}, {61, 8}}));
  rapidjson::Document json;
  REQUIRE(!json.Parse(geojson_text(all).c_str()).HasParseError());
  const auto& places = json["features"][0]["geometry"]["coordinates"];
  CHECK(places.Size() > 10);
  double worst_m = 0;
  for (rapidjson::SizeType i = 0; i + 1 < places.Size(); ++i)
    for (const double share : {0.25, 0.5, 0.75}) {
      const double lon = places[i][0].GetDouble() + share * (places[i + 1][0].GetDouble() - places[i][0].GetDouble());
      const double lat = places[i][1].GetDouble() + share * (places[i + 1][1].GetDouble() - places[i][1].GetDouble());
      // On the rhumb line at that longitude: straight on Mercator's projection.
      const double psi = isometric_latitude(58) + (lon - 2) / 6 * (isometric_latitude(61) - isometric_latitude(58));
      worst_m = std::max(worst_m, std::abs(lat - latitude_from_isometric_deg(psi)) * k_degree_rad * meridian_radius_m(lat));
    }
  CHECK(worst_m < 2 * k_geojson_tolerance_m);  // along the meridian, which is more than across the line
}

TEST_CASE("GeoJSON: any sheet comes back, its legs between the same places") {
  for (int seed = 1; seed <= 60; ++seed) {
    Random random(static_cast<std::uint64_t>(seed));
    const MarksAndLines all = marks_and_lines_of(random_document(random, 60));
    const std::string text = geojson_text(all);
    CAPTURE(text);
    const Result<MarksAndLines> read = read_geojson(text);
    REQUIRE(read.ok());
    CHECK(!read->departure);
    REQUIRE(read->marks.size() == all.marks.size());
    for (std::size_t i = 0; i < all.marks.size(); ++i) {
      CHECK(read->marks[i].at == all.marks[i].at);
      CHECK(read->marks[i].kind == all.marks[i].kind);
    }
    REQUIRE(read->lines.size() == all.lines.size());
    for (std::size_t i = 0; i < all.lines.size(); ++i) {
      std::vector<GridPosition> there, back;
      for (const FilePoint& point : all.lines[i].points) there.push_back(point.at);
      for (const FilePoint& point : read->lines[i].points) back.push_back(point.at);
      CHECK(there == back);
    }
  }
}
