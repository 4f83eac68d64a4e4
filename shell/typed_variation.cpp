#include "shell/typed_variation.h"

#include <cmath>

#include "core/base/quantity_text.h"
#include "core/base/utf8.h"
#include "core/directions/direction_text.h"
#include "core/document/document.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

bool has_degrees(std::string_view text) { return text.find("\xC2\xB0") != std::string_view::npos; }

// The text without a sign of minutes behind its figures.
std::string without_minutes_sign(std::string text) {
  for (const std::string_view sign : {"\xE2\x80\xB2", "\xE2\x80\x99", "'", "min"})
    if (const std::size_t at = text.find(sign); at != std::string::npos) text.erase(at, sign.size());
  return text;
}

}  // namespace

Result<double> typed_annual_change_min(const std::string& typed) {
  const std::string text(trimmed(typed));
  if (text.empty()) return 0.0;
  // Read as degrees, minutes typed alone come out as that many degrees.
  const Result<double> read = parse_correction_deg("annual change", has_degrees(text) ? text : without_minutes_sign(text));
  if (!read) return read.problem();
  const double minutes = has_degrees(text) ? *read * 60 : *read;
  if (std::abs(minutes) > k_most_annual_change_min)
    return Problem{.fault = Fault::number_out_of_range, .texts = {"annual change"}, .numbers = {minutes, -k_most_annual_change_min, k_most_annual_change_min}};
  return minutes;
}

Result<PrintedVariation> typed_chart_note(Form& form, const std::string& prefix) {
  const auto read = [&](const char* field, auto parse) {
    const std::string text = form.text(prefix + field);
    auto result = parse(text);
    form.keep(prefix + field, text, result ? "" : words::sentence(result.problem()));
    return result;
  };
  const Result<double> value_deg = read("variation", [](const std::string& text) { return parse_correction_deg("variation", text); });
  const Result<double> year = read("variation-year", [](const std::string& text) { return parse_plain_number("year", text, k_first_sheet_year, k_last_sheet_year); });
  const Result<double> change_min = read("annual-change", typed_annual_change_min);
  for (const Result<double>* each : {&value_deg, &year, &change_min})
    if (!*each) return each->problem();
  return PrintedVariation{.value_deg = *value_deg, .year = static_cast<int>(*year), .annual_change_min = *change_min};
}

}  // namespace fogsheet
