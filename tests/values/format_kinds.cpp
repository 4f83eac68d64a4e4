// Texts that are valid, with what they hold, or not.
#include "core/exchange/geojson_reader.h"
#include "core/exchange/gpx_reader.h"
#include "core/formats/base64url.h"
#include "core/positions/geo_uri.h"
#include "core/positions/iso6709.h"
#include "tests/values/kinds.h"

namespace fogsheet::values {

namespace {

const Outputs k_not_valid = {{"valid", "no"}};

Outputs position_outputs(Position position) {
  return {{"valid", "yes"}, {"lat_deg", in_full(position.lat_deg)}, {"lon_deg", in_full(position.lon_deg)}};
}

// `equal_to` is another text: it comes out as wanted when the two compare equal.
Outputs geo_uri(const Inputs& in) {
  const Result<GeoUri> uri = parse_geo_uri(in.text("text"));
  if (!uri.ok()) return k_not_valid;
  Outputs outputs = position_outputs(uri->position);
  if (uri->altitude_m) outputs["altitude_m"] = in_full(*uri->altitude_m);
  if (uri->uncertainty_m) outputs["uncertainty_m"] = in_full(*uri->uncertainty_m);
  for (const Wanted& wanted : in.wanted()) {
    if (wanted.name != "equal_to") continue;
    const Result<GeoUri> other = parse_geo_uri(wanted.value);
    outputs["equal_to"] = other.ok() && equal(*uri, *other) ? wanted.value : "another";
  }
  return outputs;
}

Outputs iso6709(const Inputs& in) {
  const Result<Iso6709> read = parse_iso6709(in.text("text"));
  if (!read.ok()) return k_not_valid;
  Outputs outputs = position_outputs(read->position);
  if (read->height_m) outputs["height_m"] = in_full(*read->height_m);
  return outputs;
}

Outputs base64url(const Inputs& in) {
  const Result<std::vector<std::uint8_t>> bytes = base64url_decode(in.text("text"));
  if (!bytes.ok()) return k_not_valid;
  constexpr char k_digits[] = "0123456789abcdef";
  std::string hex;
  for (const std::uint8_t byte : *bytes) {
    hex += k_digits[byte >> 4];
    hex += k_digits[byte & 15];
  }
  return {{"valid", "yes"}, {"hex", hex}};
}

// What the reader takes is more than what is valid: where it departs from the schema it says so.
Outputs gpx(const Inputs& in) {
  GpxCounts counts;
  const Result<MarksAndLines> read = read_gpx(in.text("text"), counts);
  if (!read.ok() || read->departure || read->broken_past > 0) return k_not_valid;
  const auto figure = [](std::size_t count) { return std::to_string(count); };
  return {{"valid", "yes"}, {"wpt_count", figure(counts.wpt)}, {"rte_count", figure(counts.rte)}, {"rtept_count", figure(counts.rtept)}, {"trk_count", figure(counts.trk)}, {"trkpt_count", figure(counts.trkpt)}};
}

Outputs geojson(const Inputs& in) {
  std::optional<GeoJsonPosition> first;
  const Result<MarksAndLines> read = read_geojson(in.text("text"), first);
  if (!read.ok() || read->departure) return k_not_valid;
  Outputs outputs = first ? position_outputs({first->lat_deg, first->lon_deg}) : Outputs{{"valid", "yes"}};
  if (first && first->height_m) outputs["height_m"] = in_full(*first->height_m);
  return outputs;
}

}  // namespace

KindTable format_kinds() { return {{"geo-uri", geo_uri}, {"iso6709", iso6709}, {"base64url", base64url}, {"gpx", gpx}, {"geojson", geojson}}; }

}  // namespace fogsheet::values
