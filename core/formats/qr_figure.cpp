#include "core/formats/qr_figure.h"

namespace fogsheet {
namespace {

// As two figures of a colour: 0 to 255 as 00 to FF.
std::string hexadecimal(int level) {
  constexpr char k_figures[] = "0123456789ABCDEF";
  return {k_figures[level / 16], k_figures[level % 16]};
}

}  // namespace

std::string qr_svg(std::span<const std::uint8_t> modules, int light_percent) {
  const std::size_t side = modules.empty() ? 0 : modules[0];
  if (side == 0 || modules.size() != side * side + 1) return {};
  const std::string level = hexadecimal(255 * light_percent / 100), all = std::to_string(side + 2 * k_qr_quiet_zone);
  std::string svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"qr\" viewBox=\"0 0 " + all + " " + all + "\"><rect width=\"" + all + "\" height=\"" + all + "\" fill=\"#" + level + level + level +
                    "\"/><path fill=\"#000000\" d=\"";
  for (std::size_t y = 0; y < side; ++y)
    for (std::size_t x = 0; x < side; ++x) {
      // Dark ones that touch are one bar, without a seam.
      std::size_t width = 0;
      while (x + width < side && modules[1 + y * side + x + width] != 0) ++width;
      if (width > 0) svg += "M" + std::to_string(x + k_qr_quiet_zone) + " " + std::to_string(y + k_qr_quiet_zone) + "h" + std::to_string(width) + "v1h-" + std::to_string(width) + "z";
      x += width;
    }
  return svg + "\"/></svg>";
}

}  // namespace fogsheet
