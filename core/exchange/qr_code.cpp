#include "core/exchange/qr_code.h"

#include <algorithm>

#include "core/formats/qr_figure.h"
#include "qrcodegen.h"

namespace fogsheet {

std::vector<std::uint8_t> qr_code(std::string_view text) {
  std::vector<std::uint8_t> bytes(qrcodegen_BUFFER_LEN_FOR_VERSION(k_largest_qr_version)), code(bytes.size());
  if (text.size() > k_most_qr_bytes) return {};
  std::copy(text.begin(), text.end(), bytes.begin());
  const qrcodegen_Ecc level = text.size() > k_most_qr_bytes_at_m ? qrcodegen_Ecc_LOW : qrcodegen_Ecc_MEDIUM;
  if (!qrcodegen_encodeBinary(bytes.data(), text.size(), code.data(), level, qrcodegen_VERSION_MIN, k_largest_qr_version, qrcodegen_Mask_AUTO, true)) return {};
  const int size = qrcodegen_getSize(code.data());
  std::vector<std::uint8_t> modules = {static_cast<std::uint8_t>(size)};
  for (int y = 0; y < size; ++y)
    for (int x = 0; x < size; ++x) modules.push_back(qrcodegen_getModule(code.data(), x, y) ? 1 : 0);
  return modules;
}

}  // namespace fogsheet
