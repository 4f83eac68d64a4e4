// Texts from outside: whatever they hold, decoding gives a document or a reason; a document that was believed is written
// as a text that gives it again. Half the inputs get a right checksum, so that what lies behind it is reached.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <vector>

#include "core/formats/base64url.h"
#include "core/formats/crc32.h"
#include "core/formats/document_text.h"

using namespace fogsheet;

namespace {

std::string with_checksum(const std::uint8_t* data, std::size_t size) {
  std::vector<std::uint8_t> bytes(data, data + size);
  const std::uint32_t checksum = crc32(bytes);
  for (int shift = 0; shift < 32; shift += 8) bytes.push_back(static_cast<std::uint8_t>(checksum >> shift));
  return "1:" + base64url_encode(bytes);
}

void must_come_back(const std::string& text) {
  const Result<Document> decoded = decode_document(text);
  if (!decoded) return;
  const Result<Document> again = decode_document(encode_document(*decoded));
  if (!again || !(*again == *decoded)) std::abort();
}

}  // namespace

// The first byte says which half an input belongs to.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const bool raw = data[0] & 1;
  must_come_back(raw ? std::string(data + 1, data + size) : with_checksum(data + 1, size - 1));
  return 0;
}
