#include "shell/canvas/distance_field.h"

#include <algorithm>
#include <cmath>

namespace fogsheet {
namespace {

constexpr double k_far = 1e12;

/// Squared distances along one line, in place: the lower envelope of parabolas.
struct LineTransform {
  std::vector<double> f, boundary;
  std::vector<int> vertex;

  explicit LineTransform(int longest) : f(longest), boundary(longest + 1), vertex(longest) {}

  void run(double* grid, int offset, int stride, int length) {
    for (int i = 0; i < length; ++i) f[i] = grid[offset + i * stride];
    int k = 0;
    vertex[0] = 0;
    boundary[0] = -k_far;
    boundary[1] = k_far;
    for (int q = 1; q < length; ++q) {
      double s;
      do {
        const int r = vertex[k];
        s = (f[q] - f[r] + static_cast<double>(q) * q - static_cast<double>(r) * r) / (2.0 * (q - r));
      } while (s <= boundary[k] && --k > -1);
      ++k;
      vertex[k] = q;
      boundary[k] = s;
      boundary[k + 1] = k_far;
    }
    k = 0;
    for (int q = 0; q < length; ++q) {
      while (boundary[k + 1] < q) ++k;
      const int r = vertex[k];
      grid[offset + q * stride] = f[r] + static_cast<double>(q - r) * (q - r);
    }
  }
};

void transform(std::vector<double>& grid, int width, int height, LineTransform& line) {
  for (int x = 0; x < width; ++x) line.run(grid.data(), x, width, height);
  for (int y = 0; y < height; ++y) line.run(grid.data(), y * width, 1, width);
}

}  // namespace

std::vector<std::uint8_t> distance_field(const std::vector<std::uint8_t>& coverage, int width, int height, int range_px) {
  const std::size_t count = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
  std::vector<double> outside(count), inside(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double a = coverage[i] / 255.0;
    // How far the outline runs from an edge texel's middle follows from how much of it is covered.
    const double out = std::max(0.0, 0.5 - a), in = std::max(0.0, a - 0.5);
    outside[i] = a >= 1 ? 0 : a <= 0 ? k_far : out * out;
    inside[i] = a >= 1 ? k_far : a <= 0 ? 0 : in * in;
  }
  LineTransform line(std::max(width, height));
  transform(outside, width, height, line);
  transform(inside, width, height, line);
  std::vector<std::uint8_t> field(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double inward_px = std::sqrt(inside[i]) - std::sqrt(outside[i]);
    field[i] = static_cast<std::uint8_t>(std::clamp(std::lround(128 + 127 * inward_px / range_px), 0L, 255L));
  }
  return field;
}

}  // namespace fogsheet
