#include "shell/typed_entry.h"

#include <cmath>

#include "core/base/number_text.h"
#include "core/directions/direction_figures.h"

namespace fogsheet::typed {

std::string direction_shown(double deg) { return direction_figures(deg, std::abs(deg - std::round(deg)) < 0.05 ? Rounding::whole_degrees : Rounding::tenths); }
std::string direction_shown(const std::optional<double>& deg) { return deg ? direction_shown(*deg) : ""; }

std::string number_shown(const std::optional<double>& value) {
  if (!value) return "";
  std::string text = print_fixed(*value, 3);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace fogsheet::typed
