#include "core/exchange/qr_code.h"

#include "core/formats/qr_figure.h"
#include "qrcodegen.hpp"

namespace fogsheet {

std::vector<std::uint8_t> qr_code(std::string_view text) {
  using qrcodegen::QrCode;
  // Its errors are exceptions: what would not fit never gets there.
  if (text.size() > k_most_qr_bytes) return {};
  const std::vector<qrcodegen::QrSegment> segments = {qrcodegen::QrSegment::makeBytes({text.begin(), text.end()})};
  const QrCode::Ecc level = text.size() > k_most_qr_bytes_at_m ? QrCode::Ecc::LOW : QrCode::Ecc::MEDIUM;
  constexpr int k_best_mask = -1;
  const QrCode code = QrCode::encodeSegments(segments, level, QrCode::MIN_VERSION, k_largest_qr_version, k_best_mask, true);
  std::vector<std::uint8_t> modules = {static_cast<std::uint8_t>(code.getSize())};
  for (int y = 0; y < code.getSize(); ++y)
    for (int x = 0; x < code.getSize(); ++x) modules.push_back(code.getModule(x, y) ? 1 : 0);
  return modules;
}

}  // namespace fogsheet
