#include "shell/typed_quantity.h"

#include "core/base/quantity_text.h"

namespace fogsheet {

Result<double> typed_nm(const std::string& text) {
  const Result<Length> length = parse_length(text);
  if (!length) return length.problem();
  return length->nm();
}

Result<double> typed_metres(const std::string& text) {
  const Result<Length> length = parse_length(text, LengthUnit::metres);
  if (!length) return length.problem();
  return length->metres();
}

Result<double> typed_knots(const std::string& text) {
  const Result<Speed> speed = parse_speed(text);
  if (!speed) return speed.problem();
  return speed->knots();
}

}  // namespace fogsheet
