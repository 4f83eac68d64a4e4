#include "core/magnetic/coefficients.h"

#include <array>
#include <cstdint>

#include "core/base/check.h"

namespace fogsheet {

namespace {

struct WmmRow {
  int degree, order;
  double g, h, g_change, h_change;
};

constexpr WmmRow k_wmm2025_rows[] = {
#include "generated/wmm2025.inc"
};

struct IgrfRow {
  int degree, order;
  double values[k_igrf14_epochs + 1];  // the epochs, then the change a year
};

constexpr IgrfRow k_igrf14_g_rows[] = {
#include "generated/igrf14_g.inc"
};

constexpr IgrfRow k_igrf14_h_rows[] = {
#include "generated/igrf14_h.inc"
};

constexpr int k_wmm2025_degree = 12;

// The rows above live in the compiler alone; the program carries these: to 1995 the model is given in whole nT, later to
// 0.01 nT. A quarter of the size of doubles, and every web page loads it.
constexpr int k_whole_epochs = 20;
constexpr double k_per_nt = 100;

consteval std::int32_t hundredths(double value_nt) { return static_cast<std::int32_t>(value_nt * k_per_nt + (value_nt < 0 ? -0.5 : 0.5)); }

template <int count>
struct CompactIgrf {
  std::array<std::array<std::int16_t, k_whole_epochs>, count> whole_nt = {};
  std::array<std::array<std::int32_t, k_igrf14_epochs + 1 - k_whole_epochs>, count> hundredths_nt = {};
  std::array<std::int8_t, count> degree = {};
  std::array<std::int8_t, count> order = {};
};

template <int count>
consteval CompactIgrf<count> compact(const IgrfRow (&rows)[count]) {
  CompactIgrf<count> compacted;
  for (int row = 0; row < count; ++row) {
    compacted.degree[row] = static_cast<std::int8_t>(rows[row].degree);
    compacted.order[row] = static_cast<std::int8_t>(rows[row].order);
    for (int column = 0; column <= k_igrf14_epochs; ++column) {
      if (column < k_whole_epochs) {
        compacted.whole_nt[row][column] = static_cast<std::int16_t>(rows[row].values[column]);
      } else {
        compacted.hundredths_nt[row][column - k_whole_epochs] = hundredths(rows[row].values[column]);
      }
    }
  }
  return compacted;
}

constexpr auto k_igrf14_g = compact(k_igrf14_g_rows);
constexpr auto k_igrf14_h = compact(k_igrf14_h_rows);

template <int count>
double value_nt(const CompactIgrf<count>& table, int row, int column) {
  return column < k_whole_epochs ? table.whole_nt[row][column] : table.hundredths_nt[row][column - k_whole_epochs] / k_per_nt;
}

// The change a year from an epoch on.
template <int count>
double change_nt(const CompactIgrf<count>& table, int row, int epoch) {
  const double next = value_nt(table, row, epoch + 1);
  return epoch + 1 == k_igrf14_epochs ? next : (next - value_nt(table, row, epoch)) / k_igrf14_epoch_years;
}

}  // namespace

HarmonicTable wmm2025() {
  HarmonicTable table{.degree = k_wmm2025_degree};
  for (const WmmRow& row : k_wmm2025_rows) table.at(row.degree, row.order) = {row.g, row.h, row.g_change, row.h_change};
  return table;
}

HarmonicTable igrf14(int epoch) {
  SHEET_CHECK(epoch >= 0 && epoch < k_igrf14_epochs, "an epoch that IGRF-14 does not have");
  HarmonicTable table;
  for (int row = 0; row < static_cast<int>(k_igrf14_g.degree.size()); ++row) {
    HarmonicTerm& term = table.at(k_igrf14_g.degree[row], k_igrf14_g.order[row]);
    term.g = value_nt(k_igrf14_g, row, epoch);
    term.g_change = change_nt(k_igrf14_g, row, epoch);
  }
  for (int row = 0; row < static_cast<int>(k_igrf14_h.degree.size()); ++row) {
    HarmonicTerm& term = table.at(k_igrf14_h.degree[row], k_igrf14_h.order[row]);
    term.h = value_nt(k_igrf14_h, row, epoch);
    term.h_change = change_nt(k_igrf14_h, row, epoch);
  }
  return table;
}

}  // namespace fogsheet
